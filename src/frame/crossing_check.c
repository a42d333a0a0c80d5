#include "frame/frame_check.h"
#include "frame/geometry.h"
#include "frame/point_tree.h"

#include <math.h>
#include <stdlib.h>

#define PARALLEL 1e-3 /* sine of the angle: nearly parallel sticks do not cross */

/* Pairs looked at: all of a frame of 5 000 members, and no minutes for a larger one. */
enum { MOST_PAIRS = 15000000, MOST_REMARKS = 10 };

/* A member between its ends, in a list sorted by where it starts along x. */
struct span {
    int member;
    double low[3], high[3];
};

struct crossings {
    struct reader *reader;
    const double *const *points;
    const struct point_tree *joints; /* NULL until the first crossing */
    int told;
};

static int by_start(const void *left, const void *right) {
    const struct span *a = left, *b = right;
    if (a->low[0] < b->low[0] || a->low[0] > b->low[0])
        return a->low[0] < b->low[0] ? -1 : 1;
    return a->member - b->member;
}

static double dot(const double a[3], const double b[3]) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static struct span span_of(const double *const *points, const struct member *member, int number) {
    struct span span = {.member = number};
    for (int axis = 0; axis < 3; axis++) {
        span.low[axis] = fmin(points[member->from][axis], points[member->to][axis]) - SAME_PLACE;
        span.high[axis] = fmax(points[member->from][axis], points[member->to][axis]) + SAME_PLACE;
    }
    return span;
}

static bool boxes_meet(const struct span *a, const struct span *b) {
    for (int axis = 0; axis < 3; axis++)
        if (a->low[axis] > b->high[axis] || b->low[axis] > a->high[axis])
            return false;
    return true;
}

/* Where the two axes cross between their ends: the point on the first; false where they do not. */
static bool axes_cross(const double *a0, const double *a1, const double *b0, const double *b1,
                       double at[3]) {
    double a[3], b[3], gap[3];
    for (int k = 0; k < 3; k++) {
        a[k] = a1[k] - a0[k];
        b[k] = b1[k] - b0[k];
        gap[k] = b0[k] - a0[k];
    }
    double aa = dot(a, a), bb = dot(b, b), ab = dot(a, b);
    double square = aa * bb - ab * ab;
    if (!(square > aa * bb * PARALLEL * PARALLEL))
        return false;
    double share = (dot(gap, a) * bb - dot(gap, b) * ab) / square;
    if (!(share > 0 && share < 1))
        return false;
    for (int k = 0; k < 3; k++)
        at[k] = a0[k] + share * a[k];
    return distance_to_piece(at, b0, b1) <= SAME_PLACE;
}

static const struct point_tree *all_joints(struct crossings *crossings) {
    const struct frame *frame = crossings->reader->frame;
    int *all = ARENA_ARRAY(crossings->reader->arena, int, frame->joints.count);
    for (size_t k = 0; k < frame->joints.count; k++)
        all[k] = (int)k;
    return point_tree_new(crossings->reader->arena, crossings->points, all, frame->joints.count);
}

static void look_at(struct crossings *crossings, int first, int second) {
    const struct frame *frame = crossings->reader->frame;
    const struct member *a = &frame->members.items[first], *b = &frame->members.items[second];
    const double *const *points = crossings->points;
    double at[3];
    if (!axes_cross(points[a->from], points[a->to], points[b->from], points[b->to], at))
        return;
    if (!crossings->joints)
        crossings->joints = all_joints(crossings);
    if (point_tree_find(crossings->joints, at, at, 2 * SAME_PLACE, (int)frame->joints.count) >= 0)
        return;
    if (crossings->told++ < MOST_REMARKS)
        caution(crossings->reader,
                "Members %s and %s cross without a joint: they are not fastened to each other.",
                frame->members.items[first < second ? first : second].name,
                frame->members.items[first < second ? second : first].name);
}

void check_crossings(struct reader *reader) {
    const struct frame *frame = reader->frame;
    size_t count = frame->members.count;
    const double **points = ARENA_ARRAY(reader->arena, const double *, frame->joints.count);
    for (size_t k = 0; k < frame->joints.count; k++)
        points[k] = frame->joints.items[k].at;
    struct span *spans = ARENA_ARRAY(reader->arena, struct span, count);
    for (size_t k = 0; k < count; k++)
        spans[k] = span_of(points, &frame->members.items[k], (int)k);
    qsort(spans, count, sizeof spans[0], by_start);
    struct crossings crossings = {.reader = reader, .points = points};
    long pairs = 0;
    for (size_t k = 0; k < count && pairs < MOST_PAIRS; k++)
        for (size_t j = k + 1; j < count && spans[j].low[0] <= spans[k].high[0]; j++, pairs++)
            if (boxes_meet(&spans[k], &spans[j]))
                look_at(&crossings, spans[k].member, spans[j].member);
    if (crossings.told > MOST_REMARKS)
        caution(reader, "%d more pairs of members cross without a joint.",
                crossings.told - MOST_REMARKS);
    if (pairs >= MOST_PAIRS)
        caution(reader, "Not every pair of members was looked at for crossing without a joint.");
}
