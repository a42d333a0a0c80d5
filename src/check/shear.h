/* check/shear.h - shear along the grain (NDS 2018 3.4). Forces N; the stress Pa.
 *
 * In a rectangle both directions peak in the middle of the section and stand at right angles, so
 * two shears combine as the root of the sum of squares.
 */
#ifndef CHECK_SHEAR_H
#define CHECK_SHEAR_H

#include "check/rating.h"
#include "check/section.h"
#include "lumber/lumber.h"

struct shear_input {
    const struct lumber *lumber;
    struct conditions conditions;
    struct section section;
    double edgewise; /* N along the wide face */
    double flatwise; /* N across it */
};
struct rating check_shear(const struct shear_input *input, struct working *working);

/* A stick that hangs on fastenings (NDS 3.4.3.3): only the part between the edge that the
 * fastenings push towards and the fastening farthest from it counts (`effective`, de; not known
 * which edge: the smaller). Nearer than 5 depths to the end the strength falls with (de/d)^2. */
struct hang_input {
    const struct lumber *lumber;
    struct conditions conditions;
    double force;                     /* N across the stick */
    double breadth, depth, effective; /* m */
    double to_end;                    /* m from the fastening to the stick's end */
};
struct rating check_hang(const struct hang_input *input, struct working *working);

#endif
