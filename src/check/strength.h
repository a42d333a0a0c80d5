/* check/strength.h - a strength after its factors (NDS 2018 Table 4.3.1), for the checks.
 *
 * Stresses Pa. Own numbers take the duration factor alone.
 */
#ifndef CHECK_STRENGTH_H
#define CHECK_STRENGTH_H

#include "check/rating.h"
#include "lumber/lumber.h"

/* Notes CD; the strengths below use it by that symbol. */
double strength_duration(enum duration duration, struct working *working);

/* Ft', Fv', Fcp' (without Cb) and Fcs (Fc with every factor but CP) by `property`. Notes each
 * factor and the product. False where there is no value. */
bool strength(const struct lumber *lumber, enum property property,
              const struct conditions *conditions, struct working *working, double *out);

/* Bending: the product of the factors that both directions share is noted once, then Fbs (edgewise,
 * every factor but CL) and, with the flat-use factor, Fb2' (flatwise). Pass NULL for one that is
 * not wanted. */
bool strength_bending(const struct lumber *lumber, const struct conditions *conditions,
                      struct working *working, double *edgewise, double *flatwise);

#endif
