/* solve/band.h - symmetric band matrices in GSL's layout, and what GSL has no routine for.
 *
 * A(i, j) = K(i + j, i), j = 0 .. half: row i holds column i of the lower triangle from the
 * diagonal down. `half` is the number of diagonals below the main one.
 */
#ifndef SOLVE_BAND_H
#define SOLVE_BAND_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>

struct band {
    size_t count, half;
    double *items; /* count x (half + 1) */
};

struct band band_new(struct arena *arena, size_t count, size_t half);
/* Its items are to be written over at once: they are not zeroed. */
struct band band_room(struct arena *arena, size_t count, size_t half);
struct band band_copy(struct arena *arena, const struct band *band);

static inline double *band_at(const struct band *band, size_t row, size_t column) {
    return row >= column ? &band->items[column * (band->half + 1) + (row - column)]
                         : &band->items[row * (band->half + 1) + (column - row)];
}

/* Cholesky by GSL, in place. False where a pivot is not positive. `least` gets the smallest ratio
 * of a pivot to the diagonal it started from: how near the matrix is to one that folds. */
bool band_cholesky(struct band *band, double *least);

/* Solve with the factor, in place. */
void band_solve(const struct band *factor, double *x);

/* Find the unknowns that no stiffness is left for: L D L' without exchanges, in place, where a
 * pivot under `share` of its starting diagonal is noted in `fixed` and replaced by that diagonal
 * (by `least_diagonal` where that is smaller), as a spring to the ground would. Unknowns in
 * `barred` (NULL: none) keep their pivot however small. Returns how many were noted. */
size_t band_free_unknowns(struct band *band, double share, double least_diagonal,
                          const bool *barred, bool *fixed);

#endif
