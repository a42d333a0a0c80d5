#include "fix/columns.h"
#include "fix/effort.h"
#include "frame/shape_values.h"

enum { MIDDLE_POSTS_MORE = 2 };

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
    double at[3] = {column->at[0], column->at[1], ground_height(work)};
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
