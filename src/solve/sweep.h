/* solve/sweep.h - solving with a factor: many right-hand sides together, or one. */
#ifndef SOLVE_SWEEP_H
#define SOLVE_SWEEP_H

#include "solve/sparse.h"

/* Solve in place for `count` right-hand sides, which share each look at the factor. */
void sweep_all(struct arena *arena, const struct sparse *factor, size_t count, double *const *x);

/* x = inverse(L) x, and inverse(L') x. `work`: room for blocks->tallest numbers. */
void sweep_down(const struct sparse *factor, double *x, double *work);
void sweep_up(const struct sparse *factor, double *x, double *work);

/* Solve one in place. */
void sweep_one(const struct sparse *factor, double *x, double *work);

#endif
