/* lumber/by_eye.h - what knots and slope of grain leave of a stick's strength (ASTM D245 [memory]).
 *
 * The strength ratio is the share of clear-wood strength left: the lower of what the knot and what
 * the grain leave, never their product. A grade stands for a ratio too (No.2: 0.45), so an ungraded
 * stick is raised to No.2 x min(1, its ratio / that of No.2). Fb, Ft and Fc only; never lower than
 * ungraded, never above No.2. The numbers are rows of tables/strength-ratios.tsv.
 */
#ifndef LUMBER_BY_EYE_H
#define LUMBER_BY_EYE_H

#include "lumber/lumber.h"

/* Share left by a knot of diameter `knot` on the edge of the wide face or on the narrow face,
 * whichever is worse; m. 0 where the knot takes it all. */
double knot_ratio(double knot, double thickness, double width);

/* Share left by grain that runs out `slope` (rise over run), for bending and pull or for push.
 * False where it is steeper than any published. */
bool grain_ratio(double slope, bool push, double *ratio);

/* Raise the values of an ungraded stick (or a plain board); others stay as they are. */
void raise_by_eye(struct lumber *lumber, double knot, double slope);

#endif
