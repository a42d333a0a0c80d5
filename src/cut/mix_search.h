/* cut/mix_search.h - several stocks: the cost says little about the boards, so each choice of
 * boards is looked at by itself, the cheapest first. For src/cut only.
 */
#ifndef CUT_MIX_SEARCH_H
#define CUT_MIX_SEARCH_H

#include "cut/relaxation.h"

/* A cheaper plan into `best` where there is one; returns the bound, which was at least `bound`. */
int64_t search_mixes(struct arena *arena, const struct kinds *kinds, struct columns *columns,
                     int64_t bound, struct layout *best);

#endif
