/* solve/trust.h - how far a solution can be trusted.
 *
 * Backward error |f - K u| / (|K| |u| + |f|), largest norms, with K multiplied anew from the sticks
 * and not from the factor; at most three refinements. Equilibrium error: loads plus reactions,
 * forces and moments about the frame's middle (moments over the frame's size), over the largest
 * load.
 */
#ifndef SOLVE_TRUST_H
#define SOLVE_TRUST_H

#include "solve/response.h"

#define TRUST_BACKWARD 1e-9
#define TRUST_EQUILIBRIUM 1e-6

/* Solve for `count` loads (3 x slots each) together: unknowns x, movements, and K u over all slots
 * (for reactions). Returns the largest backward error. */
double trust_solve(struct arena *arena, const struct system *system, size_t count,
                   double *const *loads, double *const *x, double *const *slots,
                   double *const *products);

double trust_equilibrium(const struct response *response, size_t column);
/* The same of a mix of columns, over the largest load of any of its sets. */
double trust_mix_equilibrium(const struct response *response, const double *weights);

#endif
