/* sway/lanczos.h - the largest eigenvalue of -inverse(K) Kg, whose inverse is the critical factor.
 *
 * Lanczos (1950) on C = -inverse(sqrt(D)) inverse(L) Kg inverse(L') inverse(sqrt(D)), K = L D L',
 * from a fixed start, every vector made orthogonal to all before it twice over.
 */
#ifndef SWAY_LANCZOS_H
#define SWAY_LANCZOS_H

#include "sway/pivots.h"

/* A symmetric matrix by its entries that are not zero: multiplies faster than the band. */
struct entries {
    size_t count, entry_count;
    int *row, *column; /* row >= column */
    double *value;
};
struct entries entries_of(struct arena *arena, const struct band *band);

/* out = A x. */
void entries_multiply(const struct entries *entries, const double *x, double *out);

/* `factor`: of K, all pivots positive. Returns an eigenvalue that is nearly the largest (never
 * above it but for round-off); not above 0 where none is. */
double lanczos_largest(struct arena *arena, const struct band *factor,
                       const struct entries *geometric);

#endif
