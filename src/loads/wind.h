/* loads/wind.h - the wind of the site on the panels of a frame, from four sides.
 *
 * Net coefficients of the envelope for low boxes (tables/wind-factors.tsv), gust included, times q.
 * For each side the wind presses in two ways, each a case of its own:
 *   in   the wall it meets is pressed in, roofs are pressed down, the wall behind takes what the
 *        push on the whole box lacks; the walls beside are sucked out
 *   out  walls beside and behind are sucked out, roofs are lifted, the wall it meets takes nothing
 * and both once more with every panel that opens standing open: a flat plate of its own, pressed
 * to either side, while the other panels take the coefficients of a box with a hole. A box that
 * lacks one wall of four always takes those. A roof without any wall is a free roof (ASCE 7 Figure
 * 27.3-4). Pa, m.
 */
#ifndef LOADS_WIND_H
#define LOADS_WIND_H

#include "loads/covers.h"
#include "weather/wind.h"

/* ORDER WIND: as the cases wind-left, wind-right, wind-front, wind-back. */
enum wind_from { WIND_FROM_LEFT, WIND_FROM_RIGHT, WIND_FROM_FRONT, WIND_FROM_BACK, WIND_SIDES };
enum wind_way { WIND_IN, WIND_OUT, WIND_OPEN, WIND_OPEN_OUT, WIND_WAY_COUNT };
const char *wind_way_name(enum wind_way way); /* "" "out" "open" "open-out" */

/* Where the wind goes, a unit vector. */
const double *wind_direction(enum wind_from from);

struct site_wind {
    bool given;
    bool real;            /* a gust that was typed or named, not a map speed */
    struct cited share;   /* of W in combinations: 0.6 of a map speed, 1 of a real gust */
    struct cited service; /* of W for lean: 0.42, 0.7 */
    struct wind_question question;
    double q; /* Pa */
};
struct site_wind site_wind_of(const struct site *site, double height, enum unit_system units);

/* What the panels make together. */
struct wind_box {
    bool covered; /* some panel meets the wind */
    bool walls;
    size_t opens; /* how many panels can stand open */
    bool gapes;   /* a roof and walls on three sides of four */
};
struct wind_box wind_box_of(const struct cover *covers, size_t count, bool beside_house);

/* Does this way occur? */
bool wind_way_occurs(const struct wind_box *box, enum wind_way way);

/* Force on a panel that is shut, N, global directions. */
void wind_on_cover(const struct site_wind *wind, const struct wind_box *box,
                   const struct cover *cover, enum wind_from from, enum wind_way way,
                   double force[3]);

/* Does the panel stand open in this way? */
bool wind_stands_open(const struct cover *cover, enum wind_way way);

/* A hinged panel that stands open: the force on it at its hinges and, as a pair that turns alike,
 * at its other two corners. Both N, global; for both joints of each edge together. */
void wind_on_plate(const struct site_wind *wind, const struct cover *cover, enum wind_from from,
                   enum wind_way way, double at_hinges[3], double at_edge[3]);

/* The worst pressures that a panel itself must take, Pa, of q as it stands: in, out on average, out
 * at its edges; with where the coefficient comes from. */
struct cover_wind {
    struct cited in, out, edge; /* coefficients */
};
struct cover_wind wind_worst_on_cover(const struct wind_box *box, const struct cover *cover);

#endif
