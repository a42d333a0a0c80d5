/* cut/boards.h - pieces out of boards: the fewest boards, or the least cost, and how sure that is.
 *
 * Plain numbers, whole nanometres (1/64 in is 396 875 of them), so that what fits exactly fits. Of
 * a board `trim` comes off both ends; n pieces then need their sum and n - 1 kerfs.
 *
 * The order of it: first fit and best fit, longest first; lower bounds by length, by halves
 * (Martello and Toth's L2) and by the linear relaxation over cutting patterns (Gilmore and Gomory);
 * that relaxation rounded; then a search over the patterns that hold the longest piece left; with
 * several stocks one for each choice of boards, the cheapest first, after a relaxation of its own.
 * Nothing depends on time: every step is limited by how much it looks at, so the same pieces give
 * the same boards everywhere.
 */
#ifndef CUT_BOARDS_H
#define CUT_BOARDS_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct board_stock {
    int64_t length; /* nm */
    int64_t cost;   /* over 0, in any unit; 1 each where boards are counted */
};
struct board_task {
    const int64_t *lengths; /* nm, over 0; a number for each piece */
    size_t count;
    const struct board_stock *stocks;
    size_t stock_count;
    int64_t kerf, trim; /* nm, 0 or more */
};

struct board {
    int stock;
    const int *pieces; /* longest first */
    size_t count;
    int64_t left; /* nm beyond the pieces, the kerfs between them and the trims */
};
struct board_plan {
    struct board *boards; /* longest pieces first */
    size_t board_count;
    int64_t cost;
    int64_t bound; /* no plan costs less */
    bool proved;   /* cost == bound */
    int *too_long; /* pieces that no stock holds; they are on no board */
    size_t too_long_count;
};

struct board_plan boards_cut(struct arena *arena, const struct board_task *task);

#endif
