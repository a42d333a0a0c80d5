/* solve/sparse.h - symmetric matrices in the blocks of their factor, and that factor: L D L'
 * without exchanges, which takes matrices that are not positive definite as well.
 *
 * The signs of D are those of the eigenvalues (Sylvester's law of inertia). L is stored in the
 * place of the matrix, D in the place of its unit diagonal.
 */
#ifndef SOLVE_SPARSE_H
#define SOLVE_SPARSE_H

#include "solve/blocks.h"

struct sparse {
    const struct blocks *blocks;
    double *items;
};

struct sparse sparse_new(struct arena *arena, const struct blocks *blocks);
/* Its items are to be written over at once: they are not zeroed. */
struct sparse sparse_room(struct arena *arena, const struct blocks *blocks);
struct sparse sparse_copy(struct arena *arena, const struct sparse *sparse);

/* A number of the lower triangle; rows and columns may be given either way. */
static inline double *sparse_at(const struct sparse *sparse, size_t row, size_t column) {
    return &sparse->items[row >= column ? blocks_find(sparse->blocks, row, column)
                                        : blocks_find(sparse->blocks, column, row)];
}

static inline double *sparse_diagonal(const struct sparse *sparse, size_t i) {
    const struct block *block = &sparse->blocks->items[sparse->blocks->block_of[i]];
    return &sparse->items[block->start + (i - block->first) * (block->tall + 1)];
}

/* out = a + factor b, all of one blocks. */
void sparse_sum(const struct sparse *out, const struct sparse *a, double factor,
                const struct sparse *b);

/* The rows and columns in `kept`, as a matrix of its own. */
struct sparse sparse_part(struct arena *arena, const struct sparse *sparse, const bool *kept);

struct pivots {
    bool sound;      /* every pivot is finite and not zero */
    size_t negative; /* how many are below zero */
    double least;    /* smallest ratio of a pivot to the diagonal it started from: how near the
                        matrix is to one that folds; at most 1 */
};

/* What to do where nothing is left to divide by: a pivot not over `share` of its starting diagonal
 * is noted in `fixed` and replaced by that diagonal (by `least_diagonal` where that is smaller), as
 * a spring to the ground would. Unknowns in `barred` (NULL: none) keep their pivot however small.
 */
struct loose_pivots {
    double share, least_diagonal;
    const bool *barred;
    bool *fixed;
    size_t found; /* how many were noted */
};

/* Factor in place; where it is not sound it is left unfinished. `loose` may be NULL. */
struct pivots sparse_factor(struct arena *arena, const struct sparse *sparse,
                            struct loose_pivots *loose);

/* Sound, and no pivot is negative. */
static inline bool pivots_positive(const struct pivots *pivots) {
    return pivots->sound && pivots->negative == 0;
}

#endif
