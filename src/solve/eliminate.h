/* solve/eliminate.h - in which order to eliminate the nodes of a matrix, so that little fills in.
 *
 * Minimum degree on the graph of eliminated cliques, with the bound of Amestoy, Davis and Duff
 * (1996) for the degree, and nodes that have become alike eliminated together. A node stands for
 * several unknowns; degrees are counted in those. The order is then that of the tree of
 * elimination, each branch before what it hangs on (Liu 1990).
 */
#ifndef SOLVE_ELIMINATE_H
#define SOLVE_ELIMINATE_H

#include "solve/order.h"

struct elimination { /* of the nodes that have unknowns; others are left out */
    size_t count;
    int *order;  /* order[k] = the node that comes k-th */
    int *place;  /* of a node in that order; -1: no unknowns */
    int *parent; /* of the k-th: the place of the next node that it reaches, -1 none */
    int **below; /* of the k-th: the places of all that it reaches, ascending */
    size_t *below_count;
};

struct elimination elimination_of(struct arena *arena, const struct graph *graph, const int *sizes);

#endif
