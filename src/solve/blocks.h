/* solve/blocks.h - where a symmetric matrix and its factor have numbers: blocks of columns.
 *
 * Unknowns are numbered in the order of elimination. Neighbouring columns of the factor that reach
 * the same rows make one block, stored column by column: first its own rows (the triangle above the
 * diagonal is room that nobody reads), then the rows below that it reaches, then zeros up to a
 * whole number of BLOCK_PAD rows. Blocks that hardly differ are joined, at the price of some zeros
 * (Ashcraft and Grimes 1989).
 */
#ifndef SOLVE_BLOCKS_H
#define SOLVE_BLOCKS_H

#include "solve/eliminate.h"

#include <stdbool.h>

enum { BLOCK_PAD = 8 };

struct block {
    size_t first, width; /* unknowns */
    size_t below_count;
    const int *below; /* unknowns, ascending */
    size_t tall;      /* rows as stored */
    size_t start;     /* of its numbers */
};

/* The unknown that a stored row of a block belongs to. */
static inline int block_row(const struct block *block, size_t row) {
    return row < block->width ? (int)(block->first + row) : block->below[row - block->width];
}

struct blocks {
    size_t unknowns;
    struct block *items;
    size_t count;
    int *block_of;  /* per unknown */
    size_t numbers; /* of a matrix */
    size_t tallest; /* rows of a block */
    size_t widest;  /* columns of a block */
};

/* `base[node]` gets the first unknown of each node; those of a node follow one another. */
struct blocks *blocks_of_graph(struct arena *arena, const struct graph *graph, const int *sizes,
                               int *base);

/* The blocks of the rows and columns in `kept` alone; `number` gets what each unknown is called
 * there, -1 where it is not. */
struct blocks *blocks_part(struct arena *arena, const struct blocks *blocks, const bool *kept,
                           int *number);

/* Where a number of the lower triangle is stored, column <= row. It must be there. */
size_t blocks_find(const struct blocks *blocks, size_t row, size_t column);

#endif
