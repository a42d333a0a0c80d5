#include "solve/blocks.h"

/* Widest block: what its columns take from one another then still fits the nearest cache. */
enum { WIDEST = 48 };

/* A run of nodes in the order of elimination that will be one block. */
struct run {
    size_t first, last; /* places */
    size_t width;       /* unknowns */
    size_t reach;       /* unknowns below */
    size_t zeros;       /* numbers that are stored for nothing */
};

/* Worth joining? The more columns there are, the fewer of their numbers may be zeros. */
static bool worth(size_t width, size_t all, size_t zeros) {
    double share = all ? (double)zeros / (double)all : 0.0;
    if (width <= 12)
        return share <= 0.2;
    return width <= 24 ? share <= 0.1 : share <= 0.05;
}

static size_t numbers_of(size_t width, size_t reach) {
    return width * (width + 1) / 2 + width * reach;
}

/* Join the run before to the one that it hangs on, where that pays. */
static bool join(struct run *before, const struct run *after) {
    size_t width = before->width + after->width;
    size_t zeros = before->zeros + after->zeros +
                   before->width * (after->width + after->reach - before->reach);
    if (width > WIDEST || !worth(width, numbers_of(width, after->reach), zeros))
        return false;
    *before = (struct run){before->first, after->last, width, after->reach, zeros};
    return true;
}

static size_t find_runs(const struct elimination *order, const int *sizes, struct run *runs) {
    size_t count = 0;
    for (size_t k = 0; k < order->count; k++) {
        struct run run = {.first = k, .last = k, .width = (size_t)sizes[order->order[k]]};
        for (size_t i = 0; i < order->below_count[k]; i++)
            run.reach += (size_t)sizes[order->order[order->below[k][i]]];
        runs[count++] = run;
        /* the run before ends at the place before this one */
        while (count > 1 && order->parent[runs[count - 2].last] == (int)runs[count - 1].first &&
               join(&runs[count - 2], &runs[count - 1]))
            count--;
    }
    return count;
}

static struct blocks *blocks_new(struct arena *arena, size_t unknowns, size_t most) {
    struct blocks *blocks = ARENA_NEW(arena, struct blocks);
    *blocks = (struct blocks){.unknowns = unknowns,
                              .items = ARENA_ARRAY(arena, struct block, most),
                              .block_of = ARENA_ARRAY(arena, int, unknowns)};
    return blocks;
}

static void add_block(struct blocks *blocks, size_t first, size_t width, const int *below,
                      size_t below_count) {
    size_t tall = (width + below_count + BLOCK_PAD - 1) / BLOCK_PAD * BLOCK_PAD;
    for (size_t i = 0; i < width; i++)
        blocks->block_of[first + i] = (int)blocks->count;
    blocks->items[blocks->count++] = (struct block){.first = first,
                                                    .width = width,
                                                    .below = below,
                                                    .below_count = below_count,
                                                    .tall = tall,
                                                    .start = blocks->numbers};
    blocks->numbers += tall * width;
    if (tall > blocks->tallest)
        blocks->tallest = tall;
    if (width > blocks->widest)
        blocks->widest = width;
}

struct blocks *blocks_of_graph(struct arena *arena, const struct graph *graph, const int *sizes,
                               int *base) {
    struct elimination order = elimination_of(arena, graph, sizes);
    size_t count = 0;
    for (size_t node = 0; node < graph->count; node++)
        base[node] = 0;
    for (size_t k = 0; k < order.count; k++) {
        base[order.order[k]] = (int)count;
        count += (size_t)sizes[order.order[k]];
    }
    struct run *runs = arena_room(arena, order.count, sizeof *runs);
    size_t run_count = find_runs(&order, sizes, runs);
    struct blocks *blocks = blocks_new(arena, count, run_count);
    for (size_t r = 0; r < run_count; r++) {
        size_t last = runs[r].last, found = 0;
        int *below = arena_room(arena, runs[r].reach, sizeof *below);
        for (size_t i = 0; i < order.below_count[last]; i++) {
            int node = order.order[order.below[last][i]];
            for (int c = 0; c < sizes[node]; c++)
                below[found++] = base[node] + c;
        }
        add_block(blocks, (size_t)base[order.order[runs[r].first]], runs[r].width, below, found);
    }
    return blocks;
}

struct blocks *blocks_part(struct arena *arena, const struct blocks *blocks, const bool *kept,
                           int *number) {
    size_t count = 0;
    for (size_t i = 0; i < blocks->unknowns; i++)
        number[i] = kept[i] ? (int)count++ : -1;
    struct blocks *part = blocks_new(arena, count, blocks->count);
    size_t first = 0;
    for (size_t b = 0; b < blocks->count; b++) {
        const struct block *block = &blocks->items[b];
        int *below = arena_room(arena, block->below_count, sizeof *below);
        size_t width = 0, found = 0;
        for (size_t i = 0; i < block->width; i++)
            width += kept[block->first + i];
        for (size_t i = 0; i < block->below_count; i++)
            if (kept[block->below[i]])
                below[found++] = number[block->below[i]];
        if (width > 0)
            add_block(part, first, width, below, found);
        first += width;
    }
    return part;
}

size_t blocks_find(const struct blocks *blocks, size_t row, size_t column) {
    const struct block *block = &blocks->items[blocks->block_of[column]];
    size_t at = block->start + (column - block->first) * block->tall;
    if (row < block->first + block->width)
        return at + row - block->first;
    size_t low = 0, high = block->below_count;
    while (low + 1 < high) {
        size_t middle = low + (high - low) / 2;
        if (block->below[middle] <= (int)row)
            low = middle;
        else
            high = middle;
    }
    return at + block->width + low;
}
