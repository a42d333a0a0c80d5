/* fold/tightens.h - does a way to fold tighten as soon as it moves?
 *
 * Sticks can be stretched against each other (a self-stress: forces t along them with B't = 0).
 * Where one stiffens every way to fold, sum over sticks of (t/L) |difference of the ends'
 * movements|^2 of one sign for all of them, the ways are of first order only: the frame gives a
 * little, then holds (Pellegrino and Calladine 1986). Told only of frames whose sticks have two
 * joints each, and of at most a few hundred sticks; anything not settled counts as a real way to
 * fold.
 */
#ifndef FOLD_TIGHTENS_H
#define FOLD_TIGHTENS_H

#include "fold/ways.h"

bool fold_tightens(struct arena *arena, const struct model *model, const struct bar *bars,
                   size_t bar_count, const struct fold_ways *ways);

#endif
