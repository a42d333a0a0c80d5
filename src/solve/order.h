/* solve/order.h - numbering of the joints that keeps the band narrow: reverse Cuthill-McKee (1969).
 *
 * Starts at a joint far from the others (breadth-first to the last level, repeated while the depth
 * grows), numbers by levels with neighbours of few connections first, and reverses.
 */
#ifndef SOLVE_ORDER_H
#define SOLVE_ORDER_H

#include "base/arena.h"

#include <stddef.h>

struct graph { /* neighbours of node n: to[first[n]] ... to[first[n + 1] - 1] */
    size_t count;
    size_t *first;
    int *to;
};

/* From pairs of nodes; a pair of a node with itself is left out, repeats are kept. */
struct graph graph_of_pairs(struct arena *arena, size_t nodes, const int (*pairs)[2], size_t count);

/* order[k] = the node that comes k-th. */
int *order_band(struct arena *arena, const struct graph *graph);

#endif
