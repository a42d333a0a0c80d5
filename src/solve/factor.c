#include "solve/kernel.h"
#include "solve/sparse.h"

#include <math.h>
#include <string.h>

struct factoring {
    const struct blocks *blocks;
    double *items;
    struct loose_pivots *loose;
    struct pivots pivots;
    double *start;  /* the diagonal before anything was taken off it */
    double *pivot;  /* of the block at work */
    double *shares; /* L D of some rows, turned over */
    double *taken;  /* what a block takes off another */
    size_t *place;  /* rows of the other block that it is taken off */
};

/* A pivot as it is divided by; 0 where that is impossible. */
static double settle_pivot(struct factoring *at, size_t unknown, double pivot) {
    double start = at->start[unknown], ratio = pivot / start;
    struct loose_pivots *loose = at->loose;
    if (!(ratio >= at->pivots.least))
        at->pivots.least = ratio;
    if (loose) {
        bool kept = loose->barred && loose->barred[unknown] && pivot > 0.0;
        loose->fixed[unknown] = !(pivot > loose->share * start) && !kept;
        if (loose->fixed[unknown]) {
            loose->found++;
            pivot = fmax(start, loose->least_diagonal);
            if (!(pivot > 0.0))
                pivot = 1.0; /* no stiffness at all: 0/0 would spoil the rest */
        }
    }
    if (!isfinite(pivot))
        return 0.0;
    at->pivots.negative += pivot < 0.0;
    return pivot;
}

/* Columns first to last - 1 of a block, what earlier ones take off them done. */
static bool factor_columns(struct factoring *at, const struct block *block, size_t first,
                           size_t last) {
    double *panel = at->items + block->start;
    size_t tall = block->tall;
    for (size_t c = first; c < last; c++) {
        double *column = panel + c * tall;
        for (size_t k = first; k < c; k++)
            kernel_take_share(column + c, panel + k * tall + c, panel[k * tall + c] * at->pivot[k],
                              tall - c);
        double pivot = settle_pivot(at, block->first + c, column[c]);
        if (pivot == 0.0)
            return false;
        column[c] = at->pivot[c] = pivot;
        kernel_scale(column + c + 1, 1.0 / pivot, tall - c - 1);
    }
    return true;
}

/* Rows first to first + count - 1 of L D, turned over: `depth` rows of `count` numbers. */
static void turn_over(struct factoring *at, const struct block *block, size_t first, size_t count,
                      size_t depth) {
    const double *panel = at->items + block->start + first;
    for (size_t k = 0; k < depth; k++)
        for (size_t j = 0; j < count; j++)
            at->shares[k * count + j] = panel[k * block->tall + j] * at->pivot[k];
}

static size_t whole_rows(size_t row) {
    return row / KERNEL_ROWS * KERNEL_ROWS;
}

static bool factor_block(struct factoring *at, const struct block *block) {
    double *panel = at->items + block->start;
    for (size_t first = 0; first < block->width; first += KERNEL_COLUMNS) {
        size_t last = first + KERNEL_COLUMNS < block->width ? first + KERNEL_COLUMNS : block->width;
        size_t from = whole_rows(first);
        turn_over(at, block, first, last - first, first);
        if (first > 0)
            kernel_take_off(panel + first * block->tall + from, block->tall, panel + from,
                            block->tall, at->shares, block->tall - from, last - first, first,
                            false);
        if (!factor_columns(at, block, first, last))
            return false;
    }
    return true;
}

/* Where the rows below a block from the `first` on stand in another block. */
static void find_places(struct factoring *at, const struct block *block, size_t first,
                        const struct block *other) {
    size_t k = 0, end = other->first + other->width;
    for (size_t i = first; i < block->below_count; i++) {
        size_t row = (size_t)block->below[i];
        if (row < end) {
            at->place[i] = row - other->first;
            continue;
        }
        while ((size_t)other->below[k] < row)
            k++;
        at->place[i] = other->width + k;
    }
}

/* Add what was taken, run by run of rows that follow one another in both. */
static void spread(struct factoring *at, const struct block *block, size_t first, size_t columns,
                   size_t skip, size_t rows, const struct block *other) {
    double *panel = at->items + other->start;
    for (size_t i = first; i < block->below_count;) {
        size_t last = i + 1;
        while (last < block->below_count && at->place[last] == at->place[last - 1] + 1)
            last++;
        for (size_t j = 0; j < columns; j++)
            kernel_add(panel + at->place[first + j] * other->tall + at->place[i],
                       at->taken + j * rows + skip + (i - first), last - i);
        i = last;
    }
}

/* What a finished block takes off the blocks that it reaches. */
static void take_off_others(struct factoring *at, const struct block *block) {
    for (size_t first = 0; first < block->below_count;) {
        const struct block *other = &at->blocks->items[at->blocks->block_of[block->below[first]]];
        size_t last = first;
        while (last < block->below_count &&
               (size_t)block->below[last] < other->first + other->width)
            last++;
        size_t top = block->width + first, from = whole_rows(top), rows = block->tall - from;
        turn_over(at, block, top, last - first, block->width);
        kernel_take_off(at->taken, rows, at->items + block->start + from, block->tall, at->shares,
                        rows, last - first, block->width, true);
        find_places(at, block, first, other);
        spread(at, block, first, last - first, top - from, rows, other);
        first = last;
    }
}

struct pivots sparse_factor(struct arena *arena, const struct sparse *sparse,
                            struct loose_pivots *loose) {
    const struct blocks *blocks = sparse->blocks;
    struct arena_mark mark = arena_mark(arena);
    struct factoring at = {
        .blocks = blocks,
        .items = sparse->items,
        .loose = loose,
        .pivots = {.sound = true, .least = 1.0},
        .start = arena_room(arena, blocks->unknowns, sizeof(double)),
        .pivot = arena_room(arena, blocks->widest, sizeof(double)),
        .shares = arena_room(arena, blocks->widest * blocks->widest, sizeof(double)),
        .taken = arena_room(arena, blocks->widest * blocks->tallest, sizeof(double)),
        .place = arena_room(arena, blocks->tallest, sizeof(size_t))};
    for (size_t i = 0; i < blocks->unknowns; i++)
        at.start[i] = *sparse_diagonal(sparse, i);
    if (loose)
        loose->found = 0;
    for (size_t b = 0; b < blocks->count && at.pivots.sound; b++) {
        at.pivots.sound = factor_block(&at, &blocks->items[b]);
        if (at.pivots.sound)
            take_off_others(&at, &blocks->items[b]);
    }
    arena_rewind(arena, mark);
    return at.pivots;
}
