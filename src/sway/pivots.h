/* sway/pivots.h - L D L' of a symmetric band matrix that need not be positive definite.
 *
 * Without exchanges; the signs of D are those of the eigenvalues (Sylvester's law of inertia),
 * which is how critical factors are counted. Layout as in solve/band.h; L's unit diagonal holds D.
 */
#ifndef SWAY_PIVOTS_H
#define SWAY_PIVOTS_H

#include "solve/band.h"

struct pivots {
    bool sound;      /* every pivot is finite and not zero */
    size_t negative; /* how many are below zero */
};

/* out = a + factor b, all of one size. */
void band_sum(const struct band *out, const struct band *a, double factor, const struct band *b);

/* In place. */
struct pivots band_pivots(struct band *band);

/* How many unknowns below it each column of a factor reaches: most of the band is empty. */
size_t *pivots_reach(struct arena *arena, const struct band *factor);

/* x = inverse(L) x, and inverse(L') x. */
void pivots_forward(const struct band *factor, const size_t *reach, double *x);
void pivots_backward(const struct band *factor, const size_t *reach, double *x);

double sum_of_products(const double *a, const double *b, size_t count);

/* Solve in place. */
void pivots_solve(const struct band *factor, const size_t *reach, double *x);

#endif
