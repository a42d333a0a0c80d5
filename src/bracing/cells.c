#include "bracing/cells.h"

#include "base/vector.h"
#include "bracing/faces.h"
#include "bracing/loops.h"

#include <math.h>

struct cells *cells_find(struct arena *arena, const struct model *model) {
    struct net net = net_of(arena, model);
    struct loops loops = loops_find(arena, &net);
    struct cells *cells = ARENA_NEW(arena, struct cells);
    cells->model = model;
    cells->count = loops.count;
    cells->items = ARENA_ARRAY(arena, struct cell, loops.count);
    for (size_t k = 0; k < loops.count; k++)
        for (int side = 0; side < 4; side++) {
            cells->items[k].joints[side] = loops.items[k].joints[side];
            cells->items[k].on_ground |= loops.items[k].sides[side] == SIDE_GROUND;
        }
    faces_gather(arena, &net, cells);
    faces_name(arena, cells);
    faces_number(arena, &net, &loops, cells);
    return cells;
}

/* Change of the angle at a corner between the sides to `next` and to `last`. */
static double angle_change(const struct model *model, int corner, int next, int last,
                           const double (*moves)[3]) {
    const struct joint *joints = model->frame->joints.items;
    double a[3], b[3], da[3], db[3];
    double la = vector_between(joints[corner].at, joints[next].at, a);
    double lb = vector_between(joints[corner].at, joints[last].at, b);
    vector_between(moves[corner], moves[next], da);
    vector_between(moves[corner], moves[last], db);
    double cosine = vector_dot(a, b) / (la * lb);
    double change = (vector_dot(da, b) + vector_dot(a, db)) / (la * lb) -
                    cosine * (vector_dot(a, da) / (la * la) + vector_dot(b, db) / (lb * lb));
    return -change / sqrt(fmax(1.0 - cosine * cosine, 1e-6));
}

double cell_lean(const struct model *model, const struct cell *cell, const double (*moves)[3]) {
    double largest = 0.0;
    for (int k = 0; k < 4; k++)
        largest = fmax(largest, fabs(angle_change(model, cell->joints[k], cell->joints[(k + 1) % 4],
                                                  cell->joints[(k + 3) % 4], moves)));
    return largest;
}
