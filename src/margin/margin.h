/* margin/margin.h - the command `margin`: tray weight, snow and wind raised, one at a time, until
 * the first check fails.
 *
 * The whole judgement is a function of the load; its worst ratio less one has its zero bracketed by
 * doubling, then found by Brent's method (GSL) to 1e-10 of the load. Checks without a published
 * rule are left out and counted.
 */
#ifndef MARGIN_MARGIN_H
#define MARGIN_MARGIN_H

#include "base/arena.h"
#include "result/margin_answer.h"

/* GSL's error handler must be off. */
struct margin_answer *margin_find(struct arena *arena, const struct frame *frame);

#endif
