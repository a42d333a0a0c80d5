#include "frame/along.h"

#include "base/vector.h"
#include "frame/point_tree.h"

#include <stdlib.h>

/* The joints found near one stick. */
struct search {
    struct arena *arena;
    const struct frame *frame;
    const struct member *member;
    double length, direction[3];
    struct {
        struct along_joint *items;
        size_t count, capacity;
    } found;
};

/* Keep a joint that lies between the ends of the stick. */
static void keep(void *with, int joint) {
    struct search *search = with;
    if (joint == search->member->from || joint == search->member->to)
        return;
    double apart[3];
    vector_between(search->frame->joints.items[search->member->from].at,
                   search->frame->joints.items[joint].at, apart);
    double at = vector_dot(apart, search->direction);
    if (at > 0.0 && at < search->length)
        ARRAY_PUSH(search->arena, &search->found, (struct along_joint){joint, at});
}

static int compare_along(const void *left, const void *right) {
    const struct along_joint *a = left, *b = right;
    if (a->at != b->at)
        return a->at < b->at ? -1 : 1;
    return (a->joint > b->joint) - (a->joint < b->joint);
}

static struct point_tree *tree_of_joints(struct arena *arena, const struct frame *frame) {
    size_t count = frame->joints.count;
    const double **points = arena_take(arena, count, sizeof *points);
    int *all = ARENA_ARRAY(arena, int, count);
    for (size_t j = 0; j < count; j++) {
        points[j] = frame->joints.items[j].at;
        all[j] = (int)j;
    }
    return point_tree_new(arena, points, all, count);
}

struct along along_members(struct arena *arena, const struct frame *frame) {
    struct point_tree *tree = tree_of_joints(arena, frame);
    struct search search = {.arena = arena, .frame = frame};
    struct along along = {.first = ARENA_ARRAY(arena, size_t, frame->members.count + 1)};
    for (size_t m = 0; m < frame->members.count; m++) {
        search.member = &frame->members.items[m];
        const double *a = frame->joints.items[search.member->from].at;
        const double *b = frame->joints.items[search.member->to].at;
        search.length = vector_between(a, b, search.direction);
        vector_unit(search.direction);
        along.first[m] = search.found.count;
        ARRAY_PUSH(arena, &search.found, (struct along_joint){search.member->from, 0.0});
        size_t between = search.found.count;
        point_tree_each(tree, a, b, ALONG_TOLERANCE, keep, &search);
        qsort(search.found.items + between, search.found.count - between,
              sizeof *search.found.items, compare_along);
        ARRAY_PUSH(arena, &search.found, (struct along_joint){search.member->to, search.length});
    }
    along.first[frame->members.count] = search.found.count;
    along.joints = search.found.items;
    return along;
}
