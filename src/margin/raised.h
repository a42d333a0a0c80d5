/* margin/raised.h - the frame under another amount of a load, for the search and for the plot. */
#ifndef MARGIN_RAISED_H
#define MARGIN_RAISED_H

#include "base/arena.h"
#include "result/margin_answer.h"

/* Where to begin if the description gives none of a load: the trays once, 20 psf, 40 m/s. */
extern const double MARGIN_START[MARGIN_COUNT];

/* `value` as in struct margin. */
struct frame margin_raised(const struct frame *described, enum margin_load load, double value);

/* Where `excess` passes 0 between two loads of different sign, to 1e-10 of the load (GSL, Brent).
 * NAN: not found. */
double margin_root(struct arena *arena, double (*excess)(double load, void *params), void *params,
                   double low, double high);

#endif
