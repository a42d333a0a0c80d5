/* bracing/sheet_edges.h - the sticks under the edges of a panel. For src/bracing only. */
#ifndef BRACING_SHEET_EDGES_H
#define BRACING_SHEET_EDGES_H

#include "bracing/net.h"

struct edge_wood {
    double density; /* kg/m3 at 12 % moisture, of the lightest stick */
    double gravity; /* the least specific gravity; NAN where one is not known */
};

/* Walk along sticks in a straight line from one joint to another, taking the lightest wood on the
 * way into *wood. False where there is not a stick all the way. */
bool edge_has_sticks(const struct net *net, int from, int to, struct edge_wood *wood);

#endif
