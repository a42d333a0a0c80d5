#include "base/vector.h"
#include "fix/effort.h"
#include "frame/geometry.h"
#include "frame/shape_values.h"

#include <math.h>

/* Shorter stretches between uprights want no leg. */
static const double STRETCH_LEAST = 0.3; /* m */
static const double LEG_LEAST = 0.05;    /* m */
enum { MIDDLE_POSTS_MORE = 2 };

/* A place on the ground plan with the rails that a leg there would hold, from the ground up. */
struct column {
    double at[3];
    struct {
        double *items; /* m, heights */
        size_t count, capacity;
    } heights;
    int shelf; /* the first that has a rail here */
};
struct columns {
    struct column *items;
    size_t count, capacity;
};

static bool holds_up(const struct work *work, int rail, int joint) {
    for (size_t k = 0; k < work->frame->supports.count; k++)
        if (work->frame->supports.items[k].joint == joint)
            return true;
    for (size_t m = 0; m < work->model->member_count; m++)
        if ((int)m != rail && member_steep(&work->model->members[m]) &&
            work->frame->members.items[m].acts_as == ACTS_AS_MEMBER &&
            frame_joint_on_member(work->frame, joint, (int)m))
            return true;
    return false;
}

/* The middle of the longest stretch of a rail that no upright divides; false where it is short. */
static bool middle_of(const struct work *work, int rail, double at[3]) {
    const struct along *along = &work->model->along;
    const struct model_member *member = &work->model->members[rail];
    double last = 0.0, longest = 0.0, middle = 0.0;
    for (size_t k = along->first[rail]; k < along->first[rail + 1]; k++) {
        double here = along->joints[k].at;
        bool end = k + 1 == along->first[rail + 1];
        if (!end && !holds_up(work, rail, along->joints[k].joint))
            continue;
        if (here - last > longest) {
            longest = here - last;
            middle = (here + last) / 2.0;
        }
        last = here;
    }
    for (int k = 0; k < 3; k++)
        at[k] = member->from[k] + member->axes[0][k] * middle;
    return longest >= STRETCH_LEAST && !member_steep(member);
}

static struct column *column_at(struct work *work, struct columns *columns, const double at[3],
                                int shelf) {
    for (size_t k = 0; k < columns->count; k++)
        if (hypot(columns->items[k].at[0] - at[0], columns->items[k].at[1] - at[1]) <= SAME_PLACE)
            return &columns->items[k];
    ARRAY_PUSH(work->arena, columns, (struct column){.at = {at[0], at[1], at[2]}, .shelf = shelf});
    return &columns->items[columns->count - 1];
}

static void add_height(struct work *work, struct column *column, double height) {
    size_t at = column->heights.count;
    ARRAY_PUSH(work->arena, &column->heights, height);
    for (; at > 0 && column->heights.items[at - 1] > height; at--)
        column->heights.items[at] = column->heights.items[at - 1];
    column->heights.items[at] = height;
}

static double ground(const struct work *work) {
    double low = INFINITY;
    for (size_t k = 0; k < work->frame->supports.count; k++)
        low = fmin(low, work->frame->joints.items[work->frame->supports.items[k].joint].at[2]);
    return low;
}

static struct columns find_columns(struct work *work) {
    struct columns columns = {0};
    for (size_t s = 0; s < work->frame->shelves.count; s++) {
        const struct shelf *shelf = &work->frame->shelves.items[s];
        for (size_t k = 0; k < shelf->rail_count; k++) {
            double at[3];
            if (middle_of(work, shelf->rails[k], at) && at[2] - ground(work) > LEG_LEAST)
                add_height(work, column_at(work, &columns, at, (int)s), at[2]);
        }
    }
    return columns;
}

/* As the first support is held. */
static const char *foot_words(const struct work *work) {
    const struct support *first = &work->frame->supports.items[0];
    if (!first->foot)
        return "pinned";
    return first->ground < 0
               ? "foot"
               : arena_print(work->arena, "{foot: {on: %s}}", table_ground_name(first->ground));
}

struct leg_text {
    struct text joints, members, supports;
    double effort;
    int number;
};

static void comma(struct text *text) {
    if (text->count)
        text_add(text, ", ");
}

/* A leg from the ground to the `levels`-th rail of its column. */
static void add_leg(struct work *work, struct leg_text *leg, const struct column *column,
                    size_t levels, int stick) {
    struct arena *arena = work->arena;
    double at[3] = {column->at[0], column->at[1], ground(work)};
    double low = at[2], high = column->heights.items[levels - 1];
    const char *name = name_unused(work, arena_print(arena, "leg-%s-%d",
                                                     work->frame->shelves.items[column->shelf].name,
                                                     ++leg->number));
    for (size_t k = 0; k <= levels; k++) {
        if (k > 0)
            at[2] = column->heights.items[k - 1];
        comma(&leg->joints);
        text_print(&leg->joints, "\"%s-%zu\": %s", name, k, bare_place(work, at));
    }
    comma(&leg->members);
    text_print(&leg->members,
               "\"%s\": {from: \"%s-0\", to: \"%s-%zu\", stick: \"%s\", ends: \"%s\"}", name, name,
               name, levels, work->frame->sticks.items[stick].name, work->lap);
    comma(&leg->supports);
    text_print(&leg->supports, "\"%s-0\": %s", name, foot_words(work));
    leg->effort +=
        piece_effort(work, stick, high - low) + 2.0 * (double)levels * effort_of("fix-screw");
}

/* Legs under the rails of every column that has so many levels and starts with that shelf. */
static void add_legs(struct work *work, struct choice *slot, const struct columns *columns,
                     int shelf, size_t levels) {
    const char *lap = lap_entry(work);
    int stick = post_stick(work), legs = 0;
    struct leg_text leg = {text_new(work->arena), text_new(work->arena), text_new(work->arena),
                           effort_of("fix-change"), 0};
    for (size_t k = 0; k < columns->count; k++) {
        const struct column *column = &columns->items[k];
        if (column->shelf != shelf || column->heights.count < levels)
            continue;
        add_leg(work, &leg, column, levels, stick);
        legs++;
    }
    if (!legs)
        return;
    choice_add(work, slot,
               arena_print(
                   work->arena,
                   "put %d %s under the middle of the shelf rails, from the ground to rail %zu, "
                   "screwed to each (stick %s)",
                   legs, legs == 1 ? "leg" : "legs", levels, work->frame->sticks.items[stick].name),
               arena_print(work->arena, "%sjoints: {%s}\nmembers: {%s}\nsupports: {%s}", lap,
                           text_string(&leg.joints), text_string(&leg.members),
                           text_string(&leg.supports)),
               leg.effort, 0);
}

static void add_middle_posts(struct work *work) {
    const struct shape_values *shape = work->frame->shape.values;
    struct choice *slot = choice_new(work, CHANGE_LEGS, shape->posts, -1);
    double pair = 2.0 * (piece_effort(work, shape->posts, (shape->high + shape->low) / 2.0) +
                         2.0 * (double)work->frame->shelves.count * effort_of("fix-screw"));
    for (int more = 1; more <= MIDDLE_POSTS_MORE; more++)
        choice_add(
            work, slot,
            arena_print(work->arena, "put %d %s of posts between the corners, front and back",
                        shape->middle_posts + more,
                        shape->middle_posts + more == 1 ? "pair" : "pairs"),
            arena_print(work->arena, "shape: {middle-posts: %d}", shape->middle_posts + more),
            effort_of("fix-change") + more * pair, 0);
}

void catalogue_legs(struct work *work) {
    if (!work->frame->shelves.count || post_stick(work) < 0)
        return;
    if (work->frame->shape.given) {
        add_middle_posts(work);
        return;
    }
    struct columns columns = find_columns(work);
    for (size_t s = 0; s < work->frame->shelves.count; s++) {
        size_t most = 0;
        for (size_t k = 0; k < columns.count; k++)
            if (columns.items[k].shelf == (int)s && columns.items[k].heights.count > most)
                most = columns.items[k].heights.count;
        struct choice *slot = most ? choice_new(work, CHANGE_LEGS, post_stick(work), (int)s) : NULL;
        for (size_t levels = 1; levels <= most; levels++)
            add_legs(work, slot, &columns, (int)s, levels);
    }
}
