#include "fix/effort.h"

#include <math.h>
#include <string.h>

/* Sizes that yards keep, by nominal inches; larger ones are no frame of this kind any more. */
static const char *const SIZES[] = {"1x2", "1x3", "2x2", "1x4", "2x3",  "1x6", "2x4",
                                    "3x3", "2x6", "4x4", "2x8", "2x10", "4x6"};
enum { SIZE_COUNT = sizeof SIZES / sizeof *SIZES, SIZE_STEPS = 5 };
static const char *const GRADES[] = {"no-2", "no-1", "select-structural"};
enum { GRADE_COUNT = sizeof GRADES / sizeof *GRADES };

static const double SAME = 1e-6; /* m */

static const char *named(const struct work *work, int stick) {
    return work->frame->sticks.items[stick].name;
}

static const char *edit_of(const struct work *work, int stick, const char *key, const char *value) {
    return arena_print(work->arena, "sticks: {\"%s\": {%s: %s}}", named(work, stick), key, value);
}

static const char *size_words(const struct work *work, const struct stick *stick) {
    if (stick->size >= 0)
        return table_size(stick->size)->name;
    return arena_print(work->arena, "%s x %s",
                       quantity_print_length(work->arena, stick->thickness, work->frame->units),
                       quantity_print_length(work->arena, stick->width, work->frame->units));
}

static void add_sizes(struct work *work, int index) {
    const struct stick *stick = &work->frame->sticks.items[index];
    double wood = stick_wood(work, index), now = stick->thickness * stick->width;
    struct choice *slot = choice_new(work, CHANGE_SIZE, index, -1);
    int steps = 0;
    for (int k = 0; k < SIZE_COUNT && steps < SIZE_STEPS; k++) {
        const struct dressed_size *size = table_size(table_size_find(SIZES[k]));
        double thickness = fmin(size->thickness, size->width);
        double width = fmax(size->thickness, size->width), then = thickness * width;
        if (thickness < stick->thickness - SAME || width < stick->width - SAME ||
            !(then > now + SAME * SAME))
            continue;
        steps++;
        choice_add(work, slot,
                   arena_print(work->arena, "cut %s from %s in place of %s (%zu %s)", stick->name,
                               size->name, size_words(work, stick), work->pieces[index],
                               work->pieces[index] == 1 ? "piece" : "pieces"),
                   edit_of(work, index, "size", size->name),
                   effort_of("fix-change") + wood * (then / now - 1.0), 0);
    }
}

/* How many steps of GRADES it is already worth; -1: no grade counts. */
static int grade_step(const struct stick *stick) {
    if (stick->grade < 0 || stick->knots.given || stick->slope_of_grain.given)
        return -1;
    const char *name = table_grade_name(stick->grade);
    for (int k = 0; k < GRADE_COUNT; k++)
        if (strcmp(GRADES[k], name) == 0)
            return k + 1;
    return 0;
}

static void add_grades(struct work *work, int index) {
    const struct stick *stick = &work->frame->sticks.items[index];
    int from = grade_step(stick);
    struct choice *slot = choice_new(work, CHANGE_GRADE, index, -1);
    for (int k = from; from >= 0 && k < GRADE_COUNT; k++) {
        struct cited value;
        if (!table_design_value(stick->species, table_grade_find(GRADES[k]), 4.0, PROPERTY_FB,
                                &value))
            continue;
        double steps = k - from + 1 + (stick->grade == GRADE_UNGRADED);
        choice_add(
            work, slot,
            arena_print(work->arena, "buy %s in grade %s in place of %s", stick->name, GRADES[k],
                        table_grade_name(stick->grade)),
            edit_of(work, index, "grade", GRADES[k]),
            effort_of("fix-change") + effort_of("fix-grade") * steps * stick_wood(work, index), 0);
    }
}

static bool is_upright(const struct work *work, size_t member) {
    return fabs(work->model->members[member].axes[0][2]) > 1.0 - 1e-9;
}

/* Members of the kind that lie flat; *own where one of them says so itself. */
static size_t flat_members(const struct work *work, int index, bool *own, struct text *edit) {
    const struct frame *frame = work->frame;
    size_t flat = 0;
    for (size_t m = 0; m < frame->members.count; m++) {
        const struct member *member = &frame->members.items[m];
        enum stands stands =
            member->stands != STANDS_NOT_SAID ? member->stands : frame->sticks.items[index].stands;
        if (member->stick != index || stands != STANDS_FLAT || is_upright(work, m))
            continue;
        *own |= member->stands != STANDS_NOT_SAID;
        text_print(edit, "%s\"%s\": {stands: on-edge}", flat++ ? ", " : "", member->name);
    }
    return flat;
}

bool has_slats_of(const struct frame *frame, int stick) {
    for (size_t k = 0; k < frame->shelves.count; k++)
        if (frame->shelves.items[k].deck == DECK_SLATS && frame->shelves.items[k].slat == stick)
            return true;
    return false;
}

/* Said of the kind where that turns nothing else. */
static void add_on_edge(struct work *work, struct choice *slot, int index) {
    const struct stick *stick = &work->frame->sticks.items[index];
    struct text edit = text_new(work->arena);
    bool own = has_slats_of(work->frame, index);
    size_t flat = flat_members(work, index, &own, &edit);
    if (flat)
        choice_add(work, slot,
                   arena_print(work->arena, "stand %s on edge (%zu %s)", stick->name, flat,
                               flat == 1 ? "piece" : "pieces"),
                   own ? arena_print(work->arena, "members: {%s}", text_string(&edit))
                       : edit_of(work, index, "stands", "on-edge"),
                   effort_of("fix-change"), 0);
}

/* Upright: its wide face turned by a quarter. */
static void add_post_turn(struct work *work, struct choice *slot, int index) {
    const struct stick *stick = &work->frame->sticks.items[index];
    bool any = false;
    for (size_t m = 0; m < work->frame->members.count; m++)
        any |= work->frame->members.items[m].stick == index && is_upright(work, m) &&
               work->frame->members.items[m].faces == FACES_NOT_SAID;
    if (!any)
        return;
    bool front = stick->faces != FACES_SIDE;
    choice_add(work, slot,
               arena_print(work->arena,
                           "turn the uprights of %s, so that their wide face looks to "
                           "the %s",
                           stick->name, front ? "side" : "front"),
               edit_of(work, index, "faces", front ? "side" : "front"), effort_of("fix-change"), 0);
}

static void add_turns(struct work *work, int index) {
    const struct stick *stick = &work->frame->sticks.items[index];
    if (!stick->has_size || !(stick->width > stick->thickness + SAME))
        return;
    struct choice *slot = choice_new(work, CHANGE_TURN, index, -1);
    add_on_edge(work, slot, index);
    add_post_turn(work, slot, index);
}

void catalogue_sticks(struct work *work) {
    for (size_t k = 0; k < work->frame->sticks.count; k++) {
        const struct stick *stick = &work->frame->sticks.items[k];
        if (!work->pieces[k] || stick->has_material)
            continue;
        if (stick->has_size)
            add_sizes(work, (int)k);
        add_grades(work, (int)k);
    }
    for (size_t k = 0; k < work->frame->sticks.count; k++)
        if (work->pieces[k])
            add_turns(work, (int)k);
}
