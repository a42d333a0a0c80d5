/* cut/mixes.h - how many boards of each stock to buy: every choice of a cost between two others
 * that is long enough altogether. For src/cut only.
 */
#ifndef CUT_MIXES_H
#define CUT_MIXES_H

#include "cut/kinds.h"

enum { MIXES_MOST = 3000 };

struct mix_of_stocks {
    int64_t cost;
    int number;  /* as found */
    int *boards; /* per stock */
};

/* Cheapest first. Where there are more than MIXES_MOST, *most is lowered until there are not. False
 * where there are too many even of one cost. */
bool mixes_between(struct arena *arena, const struct kinds *kinds, int64_t least, int64_t *most,
                   struct mix_of_stocks **mixes, size_t *count);

#endif
