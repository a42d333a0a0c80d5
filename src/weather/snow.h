/* weather/snow.h - from ground snow to the snow on a roof.
 *
 * ASCE 7: flat pf = 0.7 Ce Ct Is pg (7-22 without Is: its map holds the risk), sloped ps = Cs pf on
 * the horizontal projection, and for slopes under 15 degrees a minimum that is a case of its own.
 * Roofs under 3 ft high take 1.0 for 0.7 and Ce at least 1, because the snow on the ground simply
 * covers them [trade]. Factors: tables/snow-factors.tsv. Pressures Pa, angles rad. Pure functions.
 */
#ifndef WEATHER_SNOW_H
#define WEATHER_SNOW_H

#include "tables/tables.h"
#include "working/working.h"

#include <stdbool.h>

/* ORDER SNOW: how freely the wind clears the roof, and how warm it is. */
enum snow_exposure { SNOW_FULLY_EXPOSED, SNOW_PARTIAL, SNOW_SHELTERED, SNOW_EXPOSURE_COUNT };
enum snow_thermal {
    SNOW_HEATED,
    SNOW_JUST_ABOVE_FREEZING,
    SNOW_UNHEATED,
    SNOW_GREENHOUSE, /* heated all winter, roof of glass or plastic */
    SNOW_THERMAL_COUNT
};
const char *snow_exposure_name(enum snow_exposure exposure); /* "fully-exposed" ... */
const char *snow_thermal_name(enum snow_thermal thermal);    /* "heated" ... */

struct snow_question {
    enum edition edition;
    double ground; /* Pa, of the map: pg */
    char terrain;  /* 'B' 'C' 'D' */
    enum snow_exposure exposure;
    enum snow_thermal thermal;
    int risk;      /* category, 1 to 4 */
    double slope;  /* rad, 0 to a right angle */
    bool slippery; /* smooth, and its snow can slide clear */
    bool low;      /* under 3 ft above the ground */
};

struct roof_snow {
    double Ce, Ct, Is, Cs; /* Is is 1 in 7-22 */
    double flat, sloped;   /* Pa */
    double minimum;        /* Pa; NAN from 15 degrees up: there is none */
};

/* `working` may be NULL. */
struct roof_snow snow_on_roof(const struct snow_question *question, struct working *working);

/* What a winter rain adds to the sloped snow, Pa: on roofs flatter than W/50 degrees (W in ft, from
 * the highest edge to the eave), where the ground snow is small. 0 where the rule does not ask for
 * it. */
double snow_rain(const struct snow_question *question, double width);

/* 20 psf (7-16) or the value of the risk category (7-22): the ground snow up to which the minimum
 * follows it, Pa. */
struct cited snow_minimum_ground(enum edition edition, int risk);

#endif
