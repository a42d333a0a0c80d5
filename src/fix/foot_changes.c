#include "fix/effort.h"

#include <string.h>

/* What small anchors may be asked to hold; SI in round numbers of its own. */
static const int HOLDS_US[] = {25, 50, 100, 200, 400}, HOLDS_SI[] = {100, 250, 500, 1000, 2000};
enum { HOLD_COUNT = 5 };

/* Nobody drills a floor; where the file has a hold-down in it, it can be done all the same. */
static bool takes_anchors(const struct frame *frame, int ground) {
    bool takes = ground < 0 || strcmp(table_ground_name(ground), "floor") != 0;
    for (size_t k = 0; k < frame->supports.count; k++) {
        const struct support *support = &frame->supports.items[k];
        takes |= support->foot && support->ground == ground && support->hold_down.value > 0.0;
    }
    return takes;
}

/* The feet that can be held down with more than they are. */
struct anchors {
    const char *edit;
    size_t feet;
};

static struct anchors anchors_for(const struct work *work, const char *hold, double newtons) {
    struct text text = text_new(work->arena);
    struct anchors anchors = {0};
    for (size_t k = 0; k < work->frame->supports.count; k++) {
        const struct support *support = &work->frame->supports.items[k];
        if (!support->foot || support->hold_down.value >= newtons ||
            !takes_anchors(work->frame, support->ground))
            continue;
        text_print(&text, "%s\"%s\": {foot: {hold-down: %s}}", anchors.feet++ ? ", " : "",
                   work->frame->joints.items[support->joint].name, hold);
    }
    anchors.edit = arena_print(work->arena, "supports: {%s}", text_string(&text));
    return anchors;
}

/* The feet that a shape makes are told in its own key, where the file says nothing of supports. */
static const char *shape_edit(const struct work *work, const char *hold) {
    return arena_print(work->arena, "shape: {feet: {hold-down: %s}}", hold);
}

void catalogue_feet(struct work *work) {
    struct choice *slot = choice_new(work, CHANGE_HOLD_DOWN, -1, -1);
    bool us = work->frame->units == UNITS_US;
    for (int k = 0; k < HOLD_COUNT; k++) {
        const char *hold = us ? arena_print(work->arena, "%d lb", HOLDS_US[k])
                              : arena_print(work->arena, "%d N", HOLDS_SI[k]);
        const char *why;
        double newtons = 0.0;
        quantity_read(work->arena, hold, QUANTITY_WEIGHT, work->frame->units, &newtons, &why);
        struct anchors anchors = anchors_for(work, hold, newtons);
        if (!anchors.feet)
            continue;
        if (work->frame->shape.given && !node_child(work->raw, "supports"))
            anchors.edit = shape_edit(work, hold);
        choice_add(work, slot,
                   arena_print(work->arena,
                               "anchor each foot to the ground with a hold-down for %s "
                               "(%zu %s)",
                               hold, anchors.feet, anchors.feet == 1 ? "foot" : "feet"),
                   anchors.edit,
                   effort_of("fix-change") + (double)anchors.feet *
                                                 (1.0 + effort_of("fix-larger") * k) *
                                                 effort_of("fix-hold-down"),
                   0);
    }
}
