#include "ground/footprint.h"

#include "base/vector.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define SAME_PLACE 1e-3 /* m */

static const char *const names[SIDE_COUNT] = {"left", "right", "front", "back"};

const char *side_name(enum side side) {
    return names[side];
}

enum side side_across(enum side side) {
    static const enum side across[SIDE_COUNT] = {SIDE_RIGHT, SIDE_LEFT, SIDE_BACK, SIDE_FRONT};
    return across[side];
}

struct outline {
    const double **items; /* places of supports, counterclockwise from above */
    size_t count;
};

static int compare_places(const void *left, const void *right) {
    const double *a = *(const double *const *)left, *b = *(const double *const *)right;
    for (int c = 0; c < 3; c++)
        if (a[c] != b[c])
            return a[c] < b[c] ? -1 : 1;
    return 0;
}

/* Supports that hold upwards, left to right, those above each other once. */
static struct outline places_of(struct arena *arena, const struct frame *frame) {
    struct outline places = {.items = ARENA_ARRAY(arena, const double *, frame->supports.count)};
    for (size_t k = 0; k < frame->supports.count; k++)
        if (frame->supports.items[k].held[2])
            places.items[places.count++] = frame->joints.items[frame->supports.items[k].joint].at;
    if (places.count)
        qsort(places.items, places.count, sizeof *places.items, compare_places);
    size_t kept = 0;
    for (size_t k = 0; k < places.count; k++) {
        bool there = false;
        for (size_t i = 0; i < kept; i++)
            there |= hypot(places.items[i][0] - places.items[k][0],
                           places.items[i][1] - places.items[k][1]) <= SAME_PLACE;
        if (!there)
            places.items[kept++] = places.items[k];
    }
    places.count = kept;
    return places;
}

/* m by which c lies left of the line from a to b. */
static double left_of(const double a[3], const double b[3], const double c[3]) {
    double along[2] = {b[0] - a[0], b[1] - a[1]};
    return (along[0] * (c[1] - a[1]) - along[1] * (c[0] - a[0])) / hypot(along[0], along[1]);
}

/* The smallest outline around the places (Andrew's chains: below from left to right, above back);
 * two places where all lie on one line. */
static struct outline outline_of(struct arena *arena, const struct outline *places) {
    struct outline outline = {.items = ARENA_ARRAY(arena, const double *, 2 * places->count + 1)};
    if (places->count < 2) {
        outline = *places;
        return outline;
    }
    for (int chain = 0; chain < 2; chain++) {
        size_t start = outline.count;
        for (size_t k = 0; k < places->count; k++) {
            const double *next = places->items[chain ? places->count - 1 - k : k];
            while (outline.count >= start + 2 &&
                   !(left_of(outline.items[outline.count - 2], outline.items[outline.count - 1],
                             next) > 1e-9))
                outline.count--;
            outline.items[outline.count++] = next;
        }
        outline.count--; /* it is the first of the next chain */
    }
    return outline;
}

void edge_movement(const struct tip_edge *edge, const double at[3], double movement[3]) {
    double arm[3];
    vector_between(edge->at, at, arm);
    vector_cross(edge->axis, arm, movement);
}

double edge_moment(const struct tip_edge *edge, const struct resultant *loads,
                   const double about[3]) {
    double moved[3], arm[3];
    vector_between(edge->at, about, arm);
    vector_cross(arm, loads->force, moved);
    return vector_dot(edge->axis, loads->moment) + vector_dot(edge->axis, moved);
}

double edge_arm(const struct footprint *footprint, const struct tip_edge *edge, size_t support) {
    const struct frame *frame = footprint->model->frame;
    double movement[3];
    edge_movement(edge, frame->joints.items[frame->supports.items[support].joint].at, movement);
    return movement[2] > SAME_PLACE ? movement[2] : 0.0;
}

/* Does a support that holds both ways hold against this turn? */
static bool holds(const struct model *model, const struct tip_edge *edge,
                  const struct support *support) {
    double movement[3];
    edge_movement(edge, model->frame->joints.items[support->joint].at, movement);
    for (int c = 0; c < 3; c++)
        if ((support->held[c] && fabs(movement[c]) > SAME_PLACE) ||
            (support->held[3 + c] && fabs(edge->axis[c]) > 1e-6))
            return true;
    return false;
}

/* An edge through `at` along `axis`, which points so that what is left of it rises. */
static void add_edge(struct footprint *footprint, const double at[3], double x, double y,
                     double z) {
    const struct frame *frame = footprint->model->frame;
    struct tip_edge *edge = &footprint->edges[footprint->edge_count++];
    *edge = (struct tip_edge){.at = {at[0], at[1], at[2]}, .axis = {x, y, z}};
    vector_unit(edge->axis);
    double right = edge->axis[1], back = -edge->axis[0]; /* outwards */
    edge->side = fabs(right) >= fabs(back) - 1e-9 ? (right > 0.0 ? SIDE_RIGHT : SIDE_LEFT)
                                                  : (back > 0.0 ? SIDE_BACK : SIDE_FRONT);
    for (size_t k = 0; k < frame->supports.count; k++) {
        const struct support *support = &frame->supports.items[k];
        if (!support->foot)
            edge->held |= holds(footprint->model, edge, support);
        else if (!support_lifts(support))
            edge->held_down |= edge_arm(footprint, edge, k) > 0.0;
    }
    edge->held_down |= edge->held;
}

/* Over the end `at`, away from `from`. */
static void add_end(struct footprint *footprint, const double at[3], const double from[3]) {
    add_edge(footprint, at, -(at[1] - from[1]), at[0] - from[0], 0.0);
}

static void add_edges(struct footprint *footprint, const struct outline *outline) {
    bool plane = footprint->model->frame->plane;
    const double *first = outline->items[0], *second = outline->items[outline->count > 1];
    if (outline->count == 1) {
        for (int k = 0; k < 4; k++) {
            static const double ways[4][2] = {{-1.0, 0.0}, {1.0, 0.0}, {0.0, -1.0}, {0.0, 1.0}};
            if (k < 2 || !plane)
                add_edge(footprint, first, -ways[k][1], ways[k][0], 0.0);
        }
        return;
    }
    if (outline->count == 2) {
        add_end(footprint, first, second);
        add_end(footprint, second, first);
    }
    for (size_t k = 0; !plane && k < outline->count; k++) {
        const double *a = outline->items[k], *b = outline->items[(k + 1) % outline->count];
        add_edge(footprint, a, b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    }
}

struct footprint *footprint_of(struct arena *arena, const struct model *model) {
    struct footprint *footprint = ARENA_NEW(arena, struct footprint);
    footprint->model = model;
    for (size_t k = 0; k < model->frame->supports.count; k++)
        footprint->feet += model->frame->supports.items[k].foot;
    struct outline places = places_of(arena, model->frame);
    if (footprint->feet == 0)
        return footprint;
    struct outline outline = outline_of(arena, &places);
    footprint->edges = ARENA_ARRAY(arena, struct tip_edge, outline.count + 4);
    add_edges(footprint, &outline);
    return footprint;
}

const char *footprint_over(struct arena *arena, const struct footprint *footprint,
                           const struct tip_edge *edge) {
    const struct frame *frame = footprint->model->frame;
    size_t feet = 0, others = 0;
    for (size_t k = 0; k < frame->supports.count; k++) {
        const struct support *support = &frame->supports.items[k];
        double movement[3];
        edge_movement(edge, frame->joints.items[support->joint].at, movement);
        if (!support->held[2] || !(fabs(movement[2]) <= SAME_PLACE))
            continue;
        feet += support->foot;
        others += !support->foot;
    }
    return arena_print(arena, "over its %s %s", side_name(edge->side),
                       others     ? "edge"
                       : feet > 1 ? "feet"
                                  : "foot");
}
