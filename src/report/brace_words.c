#include "report/brace_words.h"

#include "report/words.h"
#include "units/unit.h"

#include <math.h>

bool something_to_brace(const struct brace_answer *answer) {
    return answer->motion_count || answer->soft_count;
}

bool folds_when_pushed(const struct brace_answer *answer) {
    for (size_t k = 0; answer->motion_count && k < answer->lean_count; k++)
        if (!isfinite(answer->lean[k].without_panels[LEAN_MIDDLE]))
            return true;
    return false;
}

bool alternative_is_enough(const struct alternative *other) {
    return other->ways == 0 && !other->over[0] && !other->over[1];
}

const char *direction_words(int axis) {
    return axis ? "front-back" : "left-right";
}

const char *soft_in_words(struct arena *arena, const struct brace_answer *answer) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < answer->soft_count; k++)
        text_print(&text, "%s%s", k ? " and " : "", direction_words(answer->soft[k].axis));
    return text_string(&text);
}

const char *counted(struct arena *arena, size_t count, const char *one) {
    return arena_print(arena, "%zu %s%s", count, one, count == 1 ? "" : "s");
}

const char *movement_in_words(struct arena *arena, double move, enum unit_system units) {
    if (!isfinite(move))
        return "folds up";
    if (move > 1.0)
        return units == UNITS_SI ? "over 1 m" : "over 3 ft";
    const char *printed = quantity_print(arena, move, QUANTITY_LENGTH, units);
    return prints_as_nothing(printed) ? "next to nothing" : printed;
}

const char *force_in_words(struct arena *arena, double force, enum unit_system units) {
    double unit = unit_default(QUANTITY_WEIGHT, units)->factor;
    return arena_print(arena, "about %s",
                       quantity_print(arena, unit * ceil(force / unit), QUANTITY_WEIGHT, units));
}

const char *strength_in_words(struct arena *arena, double force, enum unit_system units) {
    double unit = unit_default(QUANTITY_WEIGHT, units)->factor;
    return arena_print(arena, "about %s",
                       quantity_print(arena, unit * floor(force / unit), QUANTITY_WEIGHT, units));
}

bool lean_varies(const struct lean_row *row) {
    const double *moves = row->without_panels;
    if (isfinite(moves[LEAN_LOW]) != isfinite(moves[LEAN_HIGH]))
        return true;
    return fabs(moves[LEAN_LOW] - moves[LEAN_HIGH]) > 1e-3 * fabs(moves[LEAN_MIDDLE]);
}

bool some_lean_varies(const struct brace_answer *answer) {
    for (size_t k = 0; k < answer->lean_count; k++)
        if (lean_varies(&answer->lean[k]))
            return true;
    return false;
}

void brace_cautions(struct arena *arena, const struct brace_answer *answer, struct result *result) {
    const struct frame *frame = answer->frame;
    for (size_t k = 0; k < frame->cautions.count; k++)
        ARRAY_PUSH(arena, &result->cautions, frame->cautions.items[k]);
    if (answer->brace_count)
        ARRAY_PUSH(
            arena, &result->cautions,
            "not checked here: what a diagonal does to the sticks and joints that it ends at; "
            "put it into the file and run batten check");
    if (some_lean_varies(answer))
        ARRAY_PUSH(arena, &result->cautions,
                   "how stiff screws are is an estimate: movements may differ as shown");
    if (frame->members.count)
        ARRAY_PUSH(arena, &result->cautions,
                   "only folding, and leaning under somebody's push, are judged here, every foot "
                   "taken as held down; batten check judges the rest");
    ARRAY_PUSH(arena, &result->cautions, SAFETY_LINE);
}
