#include "draw/convex.h"

#include <math.h>

#define BORDER 2e-3 /* mm: how near counts as on it */

static double signed_area(const struct convex *shape) {
    double twice = 0.0;
    for (size_t k = 0; k < shape->count; k++) {
        struct point a = shape->corners[k], b = shape->corners[(k + 1) % shape->count];
        twice += a.x * b.y - b.x * a.y;
    }
    return twice / 2.0;
}

double convex_area(const struct convex *shape) {
    return fabs(signed_area(shape));
}

struct convex convex_clip(struct arena *arena, const struct convex *shape, double a, double b,
                          double c) {
    struct convex out = {.corners = ARENA_ARRAY(arena, struct point, shape->count + 2)};
    for (size_t k = 0; k < shape->count; k++) {
        struct point p = shape->corners[k], q = shape->corners[(k + 1) % shape->count];
        double over_p = a * p.x + b * p.y - c, over_q = a * q.x + b * q.y - c;
        if (over_p <= 0.0)
            out.corners[out.count++] = p;
        if ((over_p < 0.0 && over_q > 0.0) || (over_p > 0.0 && over_q < 0.0)) {
            double share = over_p / (over_p - over_q);
            out.corners[out.count++] =
                (struct point){p.x + share * (q.x - p.x), p.y + share * (q.y - p.y)};
        }
    }
    return out;
}

/* The half plane of edge k in which the shape lies: a x + b y <= c. */
static void half_plane(const struct convex *shape, double sign, size_t k, double out[3]) {
    struct point p = shape->corners[k], q = shape->corners[(k + 1) % shape->count];
    double length = hypot(q.x - p.x, q.y - p.y);
    if (!(length > 0.0)) {
        out[0] = out[1] = out[2] = 0.0;
        return;
    }
    out[0] = sign * (q.y - p.y) / length;
    out[1] = -sign * (q.x - p.x) / length;
    out[2] = out[0] * p.x + out[1] * p.y;
}

static double turn_of(const struct convex *shape) {
    return signed_area(shape) < 0.0 ? -1.0 : 1.0;
}

static bool is_something(const struct convex *shape) {
    return shape->count >= 3 && convex_area(shape) > CONVEX_NOTHING;
}

static bool meet(struct arena *arena, const struct convex *shape, const struct convex *hole) {
    struct arena_mark mark = arena_mark(arena);
    struct convex rest = *shape;
    double sign = turn_of(hole), edge[3];
    for (size_t k = 0; k < hole->count && is_something(&rest); k++) {
        half_plane(hole, sign, k, edge);
        rest = convex_clip(arena, &rest, edge[0], edge[1], edge[2]);
    }
    bool something = is_something(&rest);
    arena_rewind(arena, mark);
    return something;
}

struct convexes convex_without(struct arena *arena, const struct convexes *pieces,
                               const struct convex *hole) {
    struct convexes out = {0};
    double sign = turn_of(hole), edge[3];
    for (size_t p = 0; p < pieces->count; p++) {
        struct convex rest = pieces->items[p];
        if (!meet(arena, &rest, hole)) {
            ARRAY_PUSH(arena, &out, rest);
            continue;
        }
        for (size_t k = 0; k < hole->count && is_something(&rest); k++) {
            half_plane(hole, sign, k, edge);
            struct convex beside = convex_clip(arena, &rest, -edge[0], -edge[1], -edge[2]);
            if (is_something(&beside))
                ARRAY_PUSH(arena, &out, beside);
            rest = convex_clip(arena, &rest, edge[0], edge[1], edge[2]);
        }
    }
    return out;
}

bool convex_stretch(const struct convex *shape, struct point from, struct point to,
                    bool with_borders, double *begin, double *end) {
    double sign = turn_of(shape), edge[3];
    *begin = 0.0;
    *end = 1.0;
    for (size_t k = 0; k < shape->count; k++) {
        half_plane(shape, sign, k, edge);
        double over =
            edge[0] * from.x + edge[1] * from.y - edge[2] + (with_borders ? -BORDER : BORDER);
        double along = edge[0] * (to.x - from.x) + edge[1] * (to.y - from.y);
        if (fabs(along) < 1e-12) {
            if (over > 0.0)
                return false;
            continue;
        }
        double share = -over / along;
        if (along > 0.0)
            *end = fmin(*end, share);
        else
            *begin = fmax(*begin, share);
    }
    return *end > *begin;
}
