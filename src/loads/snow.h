/* loads/snow.h - the snow of the site on roofs and open shelves.
 *
 * On the level area, the same all over a roof. Several ways to lie, each a case of its own: even
 * (the sloped snow with its rain, or the minimum where that is more); blown onto one side of a
 * gable; drifted against the house; slid from the house. A depth typed by a person lies on the roof
 * already: no factor. Shelves that nothing covers take it too. Pa, m.
 */
#ifndef LOADS_SNOW_H
#define LOADS_SNOW_H

#include "loads/covers.h"
#include "weather/snow_shapes.h"

/* ORDER SNOW WAYS */
enum snow_way {
    SNOW_EVEN,
    SNOW_ON_FRONT, /* blown onto that side of a gable */
    SNOW_ON_BACK,
    SNOW_ON_LEFT,
    SNOW_ON_RIGHT,
    SNOW_DRIFT,
    SNOW_SLID,
    SNOW_WAY_COUNT
};
/* "" "front" "back" "left" "right" "drift" "slid" */
const char *snow_way_name(enum snow_way way);

struct site_snow {
    bool given;
    bool by_depth;                 /* typed as depth and kind */
    double depth_load;             /* Pa, of that */
    struct cited share;            /* of S in combinations: 1, or 0.7 of a map load of 7-22 */
    struct snow_question question; /* of the map load; slope and low are those of each roof */
    bool beside_house;
    double eave;           /* m above the ground, of the house */
    struct snow_step step; /* height is that of each roof */
    bool roof_heated;      /* heated: yes */
};

struct site_snow site_snow_of(const struct site *site);

/* Pressure on the level area of a roof, Pa; 0 where nothing lies. With working: how the even snow
 * comes about. */
double snow_on_cover(const struct site_snow *snow, const struct cover *covers, size_t count,
                     size_t cover, enum snow_way way, struct working *working);

/* On a shelf under the open sky, `height` above the ground and `width` across, Pa. */
double snow_on_shelf(const struct site_snow *snow, double height, double width, enum snow_way way);

#endif
