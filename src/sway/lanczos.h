/* sway/lanczos.h - the largest eigenvalue of -inverse(K) Kg, whose inverse is the critical factor.
 *
 * Lanczos (1950) on C = -inverse(sqrt(D)) inverse(L) Kg inverse(L') inverse(sqrt(D)), K = L D L',
 * from a fixed start, every vector made orthogonal to all before it twice over.
 */
#ifndef SWAY_LANCZOS_H
#define SWAY_LANCZOS_H

#include "solve/entries.h"

/* `factor`: of K, all pivots positive. Returns an eigenvalue that is nearly the largest (never
 * above it but for round-off); not above 0 where none is. */
double lanczos_largest(struct arena *arena, const struct sparse *factor,
                       const struct entries *geometric);

#endif
