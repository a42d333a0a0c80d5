/* weather/wind.h - from a wind speed to its pressure.
 *
 * q = 0.00256 Kz Kd V^2 (psf, mph), level ground (Kzt 1), Kd 0.85 once, ASCE 7 chapter 26. Near the
 * ground Kz is 0.70, 0.85, 1.03 in exposure B, C, D (to 30, 15, 15 ft); above by the power law of
 * the edition. A map speed gives strength level: allowable stress takes 0.6 of it. SI: m/s, m, Pa.
 */
#ifndef WEATHER_WIND_H
#define WEATHER_WIND_H

#include "tables/tables.h"
#include "units/quantity.h"
#include "working/working.h"

struct wind_question {
    enum edition edition;
    double speed;           /* m/s, gust of three seconds at 33 ft over open land */
    char exposure;          /* 'B' 'C' 'D' */
    double height;          /* m above the ground */
    enum unit_system units; /* of the working */
};

struct wind_answer {
    double Kz;
    double q; /* Pa */
};
struct wind_answer wind_pressure(const struct wind_question *question, struct working *working);

/* Kz alone. */
struct cited wind_height_factor(enum edition edition, char exposure, double height);

#endif
