/* cut/one_board.h - the patterns that are worth trying for the board of the longest piece left.
 *
 * Left out are those that lose more than may still be lost, and those on which a longer piece that
 * is left over would fit, beside the others or in the place of one (Martello and Toth's dominance).
 * For src/cut only.
 */
#ifndef CUT_ONE_BOARD_H
#define CUT_ONE_BOARD_H

#include "cut/remainder.h"

struct looking {
    size_t width;   /* patterns kept for one board, the tightest */
    long most;      /* steps */
    long steps;     /* pieces laid, in all */
    bool cut_short; /* some pattern was left out only because of these limits */
};

/* The patterns that hold the kind `first`, the longest left, the tightest first; returns how many.
 */
size_t one_board_patterns(struct arena *arena, const struct remainder *remainder, size_t first,
                          struct looking *looking, struct candidate **candidates);

#endif
