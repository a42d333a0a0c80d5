/* margin/curves.h - how the ratios of the checks that fail first grow with a load.
 *
 * The worst check of each kind at the load at which the first one fails (without a load of which
 * nothing fails, at twice the load as described), the three worst of them. Each point is a
 * judgement of its own; where a ratio passes 1 is found as `margin` finds it.
 */
#ifndef MARGIN_CURVES_H
#define MARGIN_CURVES_H

#include "base/arena.h"
#include "result/margin_answer.h"

/* Fill `plot` of every load of the frame. GSL's error handler must be off. */
void margin_curves(struct arena *arena, struct margin_answer *answer);

#endif
