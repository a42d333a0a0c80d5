#include "report/fastener_text.h"

#include "report/fastener_advice.h"
#include "report/layout.h"
#include "report/why_text.h"
#include "report/words.h"

#include <math.h>

static const char *inches(struct arena *arena, double si) {
    return quantity_print(arena, si, QUANTITY_LENGTH, UNITS_US);
}

static const char *name_in_words(struct arena *arena, const struct dowel *dowel) {
    switch (dowel->kind) {
    case DOWEL_SCREW:
        return arena_print(arena, "one No.%s wood screw", dowel->size);
    case DOWEL_NAIL:
        return arena_print(arena, "one %s %s nail", dowel->size, nail_kind_name(dowel->nail));
    case DOWEL_LAG:
        return arena_print(arena, "one %s in lag screw", dowel->size);
    default:
        return arena_print(arena, "one %s in bolt", dowel->size);
    }
}

static const char *wood_in_words(struct arena *arena, const char *species, double gravity) {
    const char *number = quantity_print(arena, gravity, QUANTITY_NUMBER, UNITS_US);
    return species ? arena_print(arena, "%s (specific gravity %s)", species, number)
                   : arena_print(arena, "wood of specific gravity %s", number);
}

static void question_text(struct text *text, const struct fastener_question *question) {
    struct arena *arena = text->arena;
    const struct dowel_layer *main = &question->main;
    struct text words = text_new(arena);
    text_print(&words, "What does %s, %s long, hold? Through %s of %s into ",
               name_in_words(arena, &question->dowel),
               quantity_print_length(arena, question->dowel.length, UNITS_US),
               inches(arena, question->side.thickness),
               wood_in_words(arena, question->side_wood, question->side.gravity.value));
    if (main->end_grain)
        text_add(&words, "the end grain of ");
    if (isfinite(main->thickness))
        text_print(&words, "%s of ", inches(arena, main->thickness));
    text_print(&words, "%s; %s; %s load.",
               wood_in_words(arena, question->main_wood, main->gravity.value),
               question->service.wet ? "wet" : "dry", duration_name(question->service.duration));
    paragraph(text, "", 0, text_string(&words));
    text_add(text, "\n");
}

static void value_row(struct text *text, const char *what, double value, const char *words) {
    static const size_t WIDTHS[] = {22, 9, LINE_WIDTH - 2 - 22 - 9 - 4};
    const char *number = isfinite(value)
                             ? quantity_print(text->arena, value, QUANTITY_WEIGHT, UNITS_US)
                             : "no value";
    row_of_cells(text, 2, (const char *const[]){what, number, words}, WIDTHS, 3);
}

/* What to do where it does not reach deep enough. */
static const char *deeper_in_words(struct arena *arena, const struct fastener_question *question,
                                   const struct dowel_values *values) {
    const struct dowel *dowel = &question->dowel;
    if (dowel->kind == DOWEL_BOLT || !(values->penetration_needed > 0.0))
        return "take a longer one"; /* it goes nowhere, or is a bolt that is too short */
    double point = dowel->kind == DOWEL_LAG ? dowel->tip : 0.0;
    const char *depths = arena_print(arena, "it goes %s deep%s and needs %s",
                                     inches(arena, values->penetration_counted),
                                     dowel->kind == DOWEL_LAG ? " without its point" : "",
                                     inches(arena, values->penetration_needed));
    if (question->main.thickness < values->penetration_needed)
        return arena_print(arena,
                           "%s. Turn the main member, put a block behind it, or take a bolt with "
                           "washers",
                           depths);
    double needed = question->side.thickness + values->penetration_needed + point;
    return arena_print(arena, "%s. Take one at least %s long", depths,
                       distance_in_words(arena, needed));
}

static void sideways_text(struct text *text, const struct fastener_question *question,
                          const struct dowel_values *values) {
    struct arena *arena = text->arena;
    if (isfinite(values->lateral)) {
        enum yield_mode mode = (enum yield_mode)values->governs;
        value_row(
            text, "pushed sideways", values->lateral,
            arena_print(arena, "%s (mode %s)", yield_mode_words(mode), yield_mode_name(mode)));
        return;
    }
    const char *words = values->lateral_missing;
    if (!values->penetrates)
        words = arena_print(arena, "%s: %s", values->lateral_missing,
                            deeper_in_words(arena, question, values));
    value_row(text, "pushed sideways", NAN, words);
    if (isfinite(values->lateral_reference))
        value_row(text, "", values->lateral_reference * values->lateral_factor,
                  "by the yield limit equations, for information");
}

static void pulled_text(struct text *text, const struct fastener_question *question,
                        const struct dowel_values *values) {
    struct arena *arena = text->arena;
    const char *words = values->withdrawal_missing;
    if (values->withdrawal > 0.0)
        words = arena_print(
            arena, "%s in the main member",
            question->dowel.kind == DOWEL_NAIL
                ? inches(arena, values->withdrawal_length)
                : arena_print(arena, "%s of thread", inches(arena, values->withdrawal_length)));
    else if (values->withdrawal == 0.0)
        words = question->main.end_grain
                    ? "end grain does not hold it: use a cleat, a bracket or a lap"
                    : "none of its thread is in the main member";
    value_row(text, "pulled out", values->withdrawal, words);
    value_row(text, "head pulled through", values->pull_through,
              isfinite(values->pull_through) ? "a washer under the head holds more"
                                             : values->pull_missing);
}

void fastener_text(struct text *text, const struct fastener_question *question,
                   const struct fastener_answer *answer) {
    const struct dowel_values *values = &answer->values;
    question_text(text, question);
    sideways_text(text, question, values);
    pulled_text(text, question, values);
    if (question->dowel.kind != DOWEL_BOLT)
        value_row(text, "slanting, 45 deg", answer->slanting,
                  isfinite(answer->slanting) ? "pushed and pulled at once"
                                             : "needs a value for each of the others");
    fastener_advice_text(text, question, answer);
    text_add(text, "\nThe working\n");
    working_text(text, answer->working, UNITS_US);
    text_add(text, "\n");
    paragraph(text, "", 0, SAFETY_LINE);
}

void fastener_json(struct json *json, const struct fastener_answer *answer) {
    const struct dowel_values *values = &answer->values;
    json_object(json, JSON_LINES);
    json_key(json, "modes");
    json_object(json, JSON_ONE_LINE);
    for (int mode = 0; mode < YIELD_MODE_COUNT; mode++)
        json_key_number(json, yield_mode_name((enum yield_mode)mode), values->modes[mode]);
    json_close(json);
    json_key_number(json, "lateral_reference", values->lateral_reference);
    json_key_number(json, "lateral", values->lateral);
    json_key_number(json, "withdrawal_per_length", values->withdrawal_per_length);
    json_key_number(json, "withdrawal", values->withdrawal);
    json_key_number(json, "pull_through", values->pull_through);
    json_key_string(json, "governs",
                    values->governs < 0 ? NULL : yield_mode_name((enum yield_mode)values->governs));
    json_close(json);
    json_end(json);
}
