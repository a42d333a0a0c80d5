/* cut/first_fit.h - quick plans: the longest piece first, into the first board, or the fullest one,
 * that has room for it. For src/cut only.
 */
#ifndef CUT_FIRST_FIT_H
#define CUT_FIRST_FIT_H

#include "cut/kinds.h"

/* The best of first fit and best fit, over every choice of one stock for all boards; each board is
 * then the cheapest that holds its pieces. `demand` may be less than that of the kinds. */
struct layout first_fit(struct arena *arena, const struct kinds *kinds, const int *demand);

#endif
