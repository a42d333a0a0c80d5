/* cut/bounds.h - bounds that need no relaxation: by length, and by pieces that cannot share a board
 * (Martello and Toth's L2). For src/cut only.
 */
#ifndef CUT_BOUNDS_H
#define CUT_BOUNDS_H

#include "cut/kinds.h"

/* No boards for all pieces cost less; in units of kinds.cost_unit. */
int64_t bound_by_length(const struct kinds *kinds);

/* L2 for boards that all are as long as the longest stock and cost as much as the cheapest. */
int64_t bound_by_halves(const struct kinds *kinds);

#endif
