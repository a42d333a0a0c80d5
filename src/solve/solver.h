/* solve/solver.h - the factor of a stiffness matrix: our own, or GSL's of a band.
 *
 * Ours is a sparse factor in blocks (solve/sparse.h). GSL's takes a band, numbered again to be
 * narrow; it is slower, and there to be compared with.
 */
#ifndef SOLVE_SOLVER_H
#define SOLVE_SOLVER_H

#include "frame/solver_kind.h"
#include "solve/band.h"
#include "solve/sparse.h"

struct solver_factor {
    enum solver_kind kind;
    bool positive; /* false: it could not be finished */
    double least;  /* smallest ratio of a pivot to the diagonal it started from */
    struct sparse own;
    struct band band;
    const int *number; /* of an unknown in the band */
};

/* `matrix` is used up: ours is factored in its place. */
struct solver_factor solver_factor(struct arena *arena, enum solver_kind kind,
                                   const struct sparse *matrix);

/* Solve in place for `count` right-hand sides. */
void solver_solve(struct arena *arena, const struct solver_factor *factor, size_t count,
                  double *const *x);

#endif
