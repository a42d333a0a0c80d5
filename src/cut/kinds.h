/* cut/kinds.h - the pieces of a cutting task as kinds of equal length, without kerf or trim.
 *
 * With every piece and every board a kerf longer, pieces lie end to end: n pieces fit where the sum
 * of their sizes is at most the board's room (exact; end trim is taken off the room). All sizes
 * are divided by what they have in common. For src/cut only.
 */
#ifndef CUT_KINDS_H
#define CUT_KINDS_H

#include "cut/boards.h"

struct kinds {
    size_t count;
    int64_t *size; /* longest first, no two equal */
    int *demand;   /* pieces of each */
    int **pieces;  /* their numbers in the task, ascending */
    /* stocks worth buying: each longer one dearer, none that holds nothing */
    size_t stock_count;
    int64_t *room; /* ascending */
    int64_t *cost; /* ascending; divided by what the costs have in common */
    int *stock;    /* number in the task */
    int64_t cost_unit;
};

/* Pieces that no stock holds are left out and listed. */
struct kinds kinds_of(struct arena *arena, const struct board_task *task, struct board_plan *plan);

/* One way to cut a board of stock `stock`, and how often it is cut. */
struct take {
    int kind, count; /* count over 0 */
};
struct pattern {
    int stock;
    struct take *takes; /* longest first */
    size_t take_count;
    int times; /* in a layout */
};
struct layout {
    struct pattern *items;
    size_t count, capacity;
    int64_t cost; /* in units of kinds.cost_unit */
};

/* count[k] pieces of kind k. */
struct pattern pattern_of(struct arena *arena, const struct kinds *kinds, int stock,
                          const int *count);

/* Cut a pattern so often. */
void layout_add(struct arena *arena, struct layout *layout, const struct kinds *kinds,
                struct pattern pattern, int times);

/* The cheapest stock that holds pieces of this size altogether. */
int kinds_stock_for(const struct kinds *kinds, int64_t size);

#endif
