#include "fix/effort.h"

/* What small anchors may be asked to hold; SI in round numbers of its own. */
static const int HOLDS_US[] = {25, 50, 100, 200, 400}, HOLDS_SI[] = {100, 250, 500, 1000, 2000};
enum { HOLD_COUNT = 5 };

static bool holds_less(const struct support *support, double newtons) {
    return support->foot && !(support->hold_down.given && support->hold_down.value >= newtons);
}

static size_t feet_edit(const struct work *work, const char *hold, double newtons,
                        const char **edit) {
    struct text text = text_new(work->arena);
    size_t feet = 0;
    for (size_t k = 0; k < work->frame->supports.count; k++) {
        const struct support *support = &work->frame->supports.items[k];
        if (holds_less(support, newtons))
            text_print(&text, "%s\"%s\": {foot: {hold-down: %s}}", feet++ ? ", " : "",
                       work->frame->joints.items[support->joint].name, hold);
    }
    *edit = arena_print(work->arena, "supports: {%s}", text_string(&text));
    return feet;
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
        const char *why, *edit;
        double newtons = 0.0;
        quantity_read(work->arena, hold, QUANTITY_WEIGHT, work->frame->units, &newtons, &why);
        size_t feet = feet_edit(work, hold, newtons, &edit);
        if (!feet)
            continue;
        if (work->frame->shape.given && !node_child(work->raw, "supports"))
            edit = shape_edit(work, hold);
        choice_add(work, slot,
                   arena_print(work->arena,
                               "anchor each foot to the ground with a hold-down for %s "
                               "(%zu %s)",
                               hold, feet, feet == 1 ? "foot" : "feet"),
                   edit,
                   effort_of("fix-change") + (double)feet * (1.0 + effort_of("fix-larger") * k) *
                                                 effort_of("fix-hold-down"),
                   0);
    }
}
