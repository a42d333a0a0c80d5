#include "bracing/sheet_edges.h"

#include "base/vector.h"
#include "bracing/cells.h"
#include "model/fastening.h"

#include <math.h>

static void take_wood(const struct model_member *stick, struct edge_wood *wood) {
    wood->density = fmin(wood->density, fastening_density(stick));
    double gravity = stick->lumber.has_gravity ? stick->lumber.gravity.value : NAN;
    /* not fmin: one that is not known makes all not known */
    wood->gravity = isnan(gravity) || gravity < wood->gravity ? gravity : wood->gravity;
}

/* One stick further along the edge: the next joint, or -1. */
static int next_along(const struct net *net, int joint, int to, struct edge_wood *wood) {
    double ahead[3];
    double left = vector_between(net_at(net, joint), net_at(net, to), ahead);
    vector_unit(ahead);
    const size_t *first = net->meetings.first;
    for (size_t m = first[joint]; m < first[joint + 1]; m++)
        for (int way = 0; way < 2; way++) {
            struct heading heading;
            double step[3], off[3];
            if (!net_heading(net, m, way, &heading))
                continue;
            int next = heading_next(net, &heading);
            vector_between(net_at(net, joint), net_at(net, next), step);
            double along = vector_dot(step, ahead);
            for (int c = 0; c < 3; c++)
                off[c] = step[c] - along * ahead[c];
            if (!(along > 0.0 && along <= left + CELL_FLAT && vector_length(off) <= CELL_FLAT))
                continue;
            take_wood(&net->model->members[heading.member], wood);
            return next;
        }
    return -1;
}

bool edge_has_sticks(const struct net *net, int from, int to, struct edge_wood *wood) {
    /* each step leaves less of the edge, but for joints within the tolerance of its end */
    size_t steps = net->model->frame->joints.count;
    for (int joint = from; steps > 0; steps--) {
        if (joint == to)
            return true;
        joint = next_along(net, joint, to, wood);
        if (joint < 0)
            return false;
    }
    return false;
}
