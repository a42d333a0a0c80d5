/* bracing/loops.h - walking round the four-sided openings between sticks. */
#ifndef BRACING_LOOPS_H
#define BRACING_LOOPS_H

#include "bracing/net.h"

#define SIDE_GROUND (-1)

struct loop {
    int joints[4]; /* around; joints[0] the smallest number, joints[1] < joints[3] */
    int sides[4];  /* the stick from joints[k] to joints[k + 1]; SIDE_GROUND */
};

struct loops {
    struct loop *items; /* sorted by joints[0], [1], [3], [2]; none twice */
    size_t count, capacity;
};

/* Every opening that bracing/cells.h describes. */
struct loops loops_find(struct arena *arena, const struct net *net);

/* The joints on one side, from joints[side] to joints[side + 1], both included; returns how many
 * and sets *list (in the arena). */
size_t loop_side_joints(struct arena *arena, const struct net *net, const struct loop *loop,
                        int side, int **list);

#endif
