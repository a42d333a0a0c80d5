/* solve/settlement.h - what happens to a frame when one of its feet gives way by a metre.
 *
 * A foot that has left the ground bears nothing. That is the same as a foot held where it has gone
 * to: each direction of a foot has a column in which that foot alone is moved by one metre, and a
 * mix of them brings the reactions of the lifted feet to zero (solve/stance.h). Their reactions are
 * the stiffness of the whole frame as felt at the feet.
 */
#ifndef SOLVE_SETTLEMENT_H
#define SOLVE_SETTLEMENT_H

#include "solve/response.h"

/* Column of a foot and a direction; -1 where there is none. */
int settlement_column(const struct response *response, int support, int axis);

/* Solve the columns of a foot where that was not done before. Its errors enter those of the
 * response. What it takes from the arena must not be given back. */
void settlement_solve(struct arena *arena, struct response *response, int support);

#endif
