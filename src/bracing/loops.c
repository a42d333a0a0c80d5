#include "bracing/loops.h"

#include "base/vector.h"
#include "bracing/cells.h"
#include "bracing/polygon.h"

#include <math.h>
#include <stdlib.h>

/* A side may pass this many joints at which something leaves towards the opening without dividing
 * it (a stub, a stick that crosses to elsewhere). */
#define TURNS_AT_MOST 6
#define TURNS_FROM_GROUND 40 /* its plane is not known before the first turn */
#define INWARD 0.02          /* sine of the least turn at a corner */
#define PARALLEL 0.9998      /* cosine of the same */
#define NEARLY_IN_PLANE 0.05 /* sine; the flatness of the opening decides */
#define RISING 0.3           /* least rise of a stick that stands on the ground, per length */

struct walk {
    struct arena *arena;
    const struct net *net;
    struct loops *loops;
    int corners[4];
    int sides[4];
    int back; /* the stick of the last side; SIDE_GROUND */
    bool in_plane;
    double normal[3]; /* of the plane, where it is known */
};

static bool has_corners(const struct net *net, int member, const int joints[4]) {
    bool on[4] = {false};
    const struct along *along = &net->model->along;
    for (size_t k = along->first[member]; k < along->first[member + 1]; k++)
        for (int c = 0; c < 4; c++)
            on[c] |= along->joints[k].joint == joints[c];
    return (on[0] && on[2]) || (on[1] && on[3]);
}

/* A stub: nothing else meets its end, and nothing bears it. */
static bool hangs_free(const struct net *net, int joint) {
    return net->meetings.first[joint + 1] - net->meetings.first[joint] == 1 &&
           !net->standing[joint];
}

/* Does a stick leave `joint` into the opening and end or pass a joint within it? */
static bool divided_at(const struct net *net, const struct loop *loop,
                       const struct polygon *polygon, int joint) {
    const size_t *first = net->meetings.first;
    for (size_t m = first[joint]; m < first[joint + 1]; m++)
        for (int k = 0; k < 2; k++) {
            struct heading heading;
            if (!net_heading(net, m, k, &heading))
                continue;
            double middle[3];
            int next = heading_next(net, &heading);
            for (int c = 0; c < 3; c++)
                middle[c] = (net_at(net, joint)[c] + net_at(net, next)[c]) / 2.0;
            if (!(polygon_depth(polygon, middle) > 2.0 * ALONG_TOLERANCE) ||
                !(polygon_depth(polygon, net_at(net, next)) > -CELL_FLAT) ||
                !(polygon_off(polygon, net_at(net, next)) <= CELL_FLAT))
                continue;
            if (!hangs_free(net, next) && !has_corners(net, heading.member, loop->joints))
                return true;
        }
    return false;
}

static int place_on(const struct net *net, int member, int joint) {
    const struct along *along = &net->model->along;
    for (size_t k = along->first[member]; k < along->first[member + 1]; k++)
        if (along->joints[k].joint == joint)
            return (int)k;
    return -1;
}

size_t loop_side_joints(struct arena *arena, const struct net *net, const struct loop *loop,
                        int side, int **list) {
    int from = loop->joints[side], to = loop->joints[(side + 1) % 4];
    if (loop->sides[side] == SIDE_GROUND) {
        *list = ARENA_ARRAY(arena, int, 2);
        (*list)[0] = from;
        (*list)[1] = to;
        return 2;
    }
    int start = place_on(net, loop->sides[side], from), end = place_on(net, loop->sides[side], to);
    int step = end > start ? 1 : -1;
    size_t count = (size_t)abs(end - start) + 1;
    *list = ARENA_ARRAY(arena, int, count);
    for (size_t k = 0; k < count; k++)
        (*list)[k] = net->model->along.joints[start + step * (int)k].joint;
    return count;
}

static bool divided(struct arena *arena, const struct net *net, const struct loop *loop,
                    const struct polygon *polygon) {
    struct arena_mark mark = arena_mark(arena);
    bool found = false;
    for (int side = 0; side < 4 && !found; side++) {
        int *list;
        size_t count = loop_side_joints(arena, net, loop, side, &list);
        for (size_t k = 0; k + 1 < count && !found; k++)
            found = divided_at(net, loop, polygon, list[k]);
    }
    arena_rewind(arena, mark);
    return found;
}

/* The same loop begun at its smallest joint, towards the smaller of the two beside it. */
static struct loop begun_first(const struct loop *loop) {
    int start = 0;
    for (int k = 1; k < 4; k++)
        if (loop->joints[k] < loop->joints[start])
            start = k;
    bool forward = loop->joints[(start + 1) % 4] < loop->joints[(start + 3) % 4];
    struct loop out;
    for (int k = 0; k < 4; k++) {
        out.joints[k] = loop->joints[(start + (forward ? k : 4 - k)) % 4];
        out.sides[k] = loop->sides[(start + (forward ? k : 3 - k)) % 4];
    }
    return out;
}

/* True where the four corners of the walk make an opening; it is kept. */
static bool closes(struct walk *walk) {
    struct loop loop;
    const double *at[4];
    for (int k = 0; k < 4; k++) {
        loop.joints[k] = walk->corners[k];
        loop.sides[k] = walk->sides[k];
        at[k] = net_at(walk->net, loop.joints[k]);
    }
    struct polygon polygon;
    if (!polygon_make(at, CELL_FLAT, &polygon) || divided(walk->arena, walk->net, &loop, &polygon))
        return false;
    ARRAY_PUSH(walk->arena, walk->loops, begun_first(&loop));
    return true;
}

/* Does the heading, which leaves corner `k` of the walk, turn to the inside? */
static bool turns_in(const struct walk *walk, int k, const struct heading *heading) {
    if (heading->member == walk->sides[k - 1])
        return false;
    double direction[3], side[3], turn[3];
    heading_direction(walk->net, heading, direction);
    vector_between(net_at(walk->net, walk->corners[k - 1]), net_at(walk->net, walk->corners[k]),
                   side);
    vector_unit(side);
    vector_cross(side, direction, turn);
    if (!walk->in_plane)
        return vector_length(turn) > INWARD;
    return vector_dot(turn, walk->normal) > INWARD &&
           fabs(vector_dot(direction, walk->normal)) < NEARLY_IN_PLANE;
}

static void lay_plane(struct walk *walk, const double one[3], const double other[3]) {
    vector_cross(one, other, walk->normal);
    vector_unit(walk->normal);
    walk->in_plane = true;
}

/* With the fourth corner found: does the last side close the opening? */
static bool last_side(struct walk *walk) {
    const struct net *net = walk->net;
    walk->sides[3] = walk->back;
    if (walk->back != SIDE_GROUND)
        return place_on(net, walk->back, walk->corners[3]) >= 0 && closes(walk);
    return net->standing[walk->corners[3]] &&
           net_common_stick(net, walk->corners[3], walk->corners[0]) < 0 && closes(walk);
}

static bool go(struct walk *walk, int k, struct heading heading);

/* Corner `k` stands: try every stick that turns to the inside there. *turned: there was one. */
static bool turn(struct walk *walk, int k, bool *turned) {
    const struct net *net = walk->net;
    int joint = walk->corners[k];
    bool found = false;
    for (size_t m = net->meetings.first[joint]; m < net->meetings.first[joint + 1]; m++)
        for (int way = 0; way < 2; way++) {
            struct heading next;
            if (!net_heading(net, m, way, &next) || !turns_in(walk, k, &next))
                continue;
            *turned = true;
            struct walk branch = *walk;
            if (!branch.in_plane) {
                double side[3], direction[3];
                vector_between(net_at(net, walk->corners[0]), net_at(net, joint), side);
                heading_direction(net, &next, direction);
                lay_plane(&branch, side, direction);
            }
            found |= go(&branch, k + 1, next);
            if (found && walk->in_plane)
                return true;
        }
    return found;
}

/* Go on to corner `k` along `heading`, trying every joint where the opening may turn. True once an
 * opening was found. */
static bool go(struct walk *walk, int k, struct heading heading) {
    int turns = walk->in_plane ? TURNS_AT_MOST : TURNS_FROM_GROUND, joint;
    bool found = false;
    walk->sides[k - 1] = heading.member;
    while (turns > 0 && (joint = heading_next(walk->net, &heading)) >= 0) {
        walk->corners[k] = joint;
        bool turned = k == 3;
        found |= k < 3 ? turn(walk, k, &turned) : joint > walk->corners[0] && last_side(walk);
        if (found && walk->in_plane)
            return true;
        turns -= turned;
    }
    return found;
}

/* All openings with a corner at `joint` between two of its sticks. */
static void from_corner(struct walk *walk, int joint) {
    const struct meetings *meetings = &walk->net->meetings;
    walk->corners[0] = joint;
    for (size_t m = meetings->first[joint]; m < meetings->first[joint + 1]; m++)
        for (size_t n = m + 1; n < meetings->first[joint + 1]; n++)
            for (int ways = 0; ways < 4; ways++) {
                struct heading out, back;
                if (!net_heading(walk->net, m, ways & 1, &out) ||
                    !net_heading(walk->net, n, ways >> 1, &back))
                    continue;
                double one[3], other[3];
                heading_direction(walk->net, &out, one);
                heading_direction(walk->net, &back, other);
                lay_plane(walk, one, other);
                if (!(fabs(vector_dot(one, other)) < PARALLEL))
                    continue;
                walk->back = back.member;
                go(walk, 1, out);
            }
}

/* All openings that stand on the ground between `joint` and another. */
static void from_ground(struct walk *walk, int joint) {
    const struct meetings *meetings = &walk->net->meetings;
    walk->corners[0] = joint;
    walk->back = SIDE_GROUND;
    walk->in_plane = false;
    for (size_t m = meetings->first[joint]; m < meetings->first[joint + 1]; m++)
        for (int way = 0; way < 2; way++) {
            struct heading out;
            double direction[3];
            if (!net_heading(walk->net, m, way, &out))
                continue;
            heading_direction(walk->net, &out, direction);
            if (fabs(direction[2]) > RISING)
                go(walk, 1, out);
        }
}

static int compare_loops(const void *left, const void *right) {
    static const int order[4] = {0, 1, 3, 2};
    const struct loop *a = left, *b = right;
    for (int k = 0; k < 4; k++) {
        int x = a->joints[order[k]], y = b->joints[order[k]];
        if (x != y)
            return x < y ? -1 : 1;
    }
    return 0;
}

/* A stick from corner to corner of an opening is a diagonal, and what it bounds with others (a
 * slanting plane through the inside of the frame) is no opening; unless that opening is itself
 * bounded by such a diagonal (a net of diamonds). */
static void drop_bounded_by_diagonals(struct arena *arena, const struct net *net,
                                      struct loops *loops) {
    enum { NONE, DIAGONAL, CLEARLY };
    char *is = ARENA_ARRAY(arena, char, net->model->member_count);
    for (int pass = DIAGONAL; pass <= CLEARLY; pass++)
        for (size_t k = 0; k < loops->count; k++) {
            bool clean = true;
            for (int side = 0; side < 4; side++)
                clean &= loops->items[k].sides[side] < 0 || is[loops->items[k].sides[side]] == NONE;
            for (int pair = 0; pair < 2; pair++) {
                int stick = net_common_stick(net, loops->items[k].joints[pair],
                                             loops->items[k].joints[pair + 2]);
                if (stick >= 0 && (pass == DIAGONAL || clean))
                    is[stick] = (char)pass;
            }
        }
    size_t kept = 0;
    for (size_t k = 0; k < loops->count; k++) {
        bool bounded = false;
        for (int side = 0; side < 4; side++)
            bounded |=
                loops->items[k].sides[side] >= 0 && is[loops->items[k].sides[side]] == CLEARLY;
        if (!bounded)
            loops->items[kept++] = loops->items[k];
    }
    loops->count = kept;
}

struct loops loops_find(struct arena *arena, const struct net *net) {
    struct loops loops = {0};
    struct walk walk = {.arena = arena, .net = net, .loops = &loops};
    for (size_t j = 0; j < net->model->frame->joints.count; j++) {
        from_corner(&walk, (int)j);
        if (net->standing[j])
            from_ground(&walk, (int)j);
    }
    if (loops.count > 0)
        qsort(loops.items, loops.count, sizeof *loops.items, compare_loops);
    size_t kept = 0;
    for (size_t k = 0; k < loops.count; k++)
        if (kept == 0 || compare_loops(&loops.items[kept - 1], &loops.items[k]) != 0)
            loops.items[kept++] = loops.items[k];
    loops.count = kept;
    drop_bounded_by_diagonals(arena, net, &loops);
    return loops;
}
