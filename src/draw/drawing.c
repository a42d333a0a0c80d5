#include "draw/drawing.h"

#include <string.h>

/* ORDER SHOW */
const char *const SHOW_NAMES_TYPED[SHOW_COUNT] = {"names", "dimensions", "loads", "bent",
                                                  "folds", "braces",     "work"};

/* ORDER WORK */
const char *const WORK_WORDS[WORK_COUNT] = {
    "not checked",        "up to half of its limit", "up to 90 % of its limit",
    "close to its limit", "no published rule",       "over its limit"};

#define HALF 0.5 /* of the limit */

/* NAN is over the limit. */
static enum work work_of(const struct check *check) {
    switch (check->verdict) {
    case VERDICT_NOT_COVERED:
        return WORK_NO_RULE;
    case VERDICT_CLOSE:
        return WORK_CLOSE;
    case VERDICT_OK:
        return check->ratio <= HALF ? WORK_EASY : WORK_SOME;
    default:
        return WORK_FAILS;
    }
}

/* Kinds of checks of a shelf, a sheet or the whole: their names may happen to be those of sticks.
 */
static bool is_about_a_stick(const char *kind) {
    static const char *const others[] = {"slat",        "lean",       "sway",  "panel",
                                         "panel-screw", "panel-rack", "hinge", "lift",
                                         "slide",       "tip",        "carry"};
    for (size_t k = 0; k < sizeof others / sizeof *others; k++)
        if (strcmp(others[k], kind) == 0)
            return false;
    return true;
}

/* The stick that a check is about is the last word of its place: "lower/rail-1", "joint/stick". */
static int stick_of(const struct frame *frame, const struct check *check) {
    const char *last = strrchr(check->where, '/');
    last = last ? last + 1 : check->where;
    for (size_t m = 0; m < frame->members.count; m++)
        if (strcmp(frame->members.items[m].name, last) == 0)
            return (int)m;
    return -1;
}

static enum work *works_of(struct arena *arena, const struct result *result) {
    enum work *work = ARENA_ARRAY(arena, enum work, result->frame->members.count);
    for (size_t k = 0; k < result->checks.count; k++) {
        const struct check *check = &result->checks.items[k];
        int stick = is_about_a_stick(check->kind) ? stick_of(result->frame, check) : -1;
        if (stick >= 0 && work_of(check) > work[stick])
            work[stick] = work_of(check);
    }
    return work;
}

struct drawing drawing_of(struct arena *arena, const struct model *model, const struct loads *loads,
                          const struct result *result, const struct brace_answer *braces) {
    return (struct drawing){.arena = arena,
                            .frame = model->frame,
                            .model = model,
                            .loads = loads,
                            .result = result,
                            .braces = braces,
                            .woods = wood_pieces(arena, model),
                            .work = works_of(arena, result)};
}

const struct motion *drawing_motions(const struct drawing *drawing, size_t *count) {
    const struct folding *folding = &drawing->result->folding;
    *count = folding->motion_count;
    if (folding->motion_count || !drawing->braces)
        return folding->motions;
    *count = drawing->braces->motion_count;
    return drawing->braces->motions;
}
