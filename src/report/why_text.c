#include "report/why_text.h"

#include "report/check_text.h"
#include "report/layout.h"
#include "report/result_json.h"
#include "report/substitute.h"
#include "report/visible.h"
#include "report/words.h"

#include <math.h>
#include <string.h>

static bool is_heading(const struct step *step) {
    return step->symbol[0] == '\0';
}

/* "NDS 2018 3.3.3 [read]" */
static const char *source_in_words(struct arena *arena, const struct step *step) {
    if (!step->has_mark)
        return step->source;
    return arena_print(arena, "%s%s[%s]", step->source, step->source[0] ? " " : "",
                       mark_name(step->mark));
}

/* The parts between the equal signs, each on a line of its own where they do not fit in one; the
 * source behind the last. */
static void equation_text(struct text *text, const char *symbol, const char *const *parts,
                          size_t count, const char *source) {
    struct arena *arena = text->arena;
    const char *first = arena_print(arena, "    %s = ", symbol);
    size_t indent = text_width(first);
    const char *end = source[0] ? arena_print(arena, "   %s", source) : "";
    struct text whole = text_new(arena);
    for (size_t k = 0; k < count; k++)
        text_print(&whole, k ? " = %s" : "%s", parts[k]);
    if (indent + text_width(text_string(&whole)) <= LINE_WIDTH) {
        text_add(&whole, end);
        paragraph(text, first, indent, text_string(&whole));
        return;
    }
    for (size_t k = 0; k < count; k++)
        paragraph(text, k ? arena_print(arena, "%*s= ", (int)indent - 2, "") : first, indent + 2,
                  k + 1 < count ? parts[k] : arena_print(arena, "%s%s", parts[k], end));
}

static void step_text(struct text *text, const struct told_step *step) {
    paragraph(text, "  ", 2, step->words);
    equation_text(text, step->symbol, step->parts, step->part_count, step->source);
}

const char *mark_in_words(enum mark mark) {
    static const char *const MEANINGS[] = {
        /* ORDER MARK */ [MARK_READ] = "seen in a copy of the text",
        [MARK_MEMORY] = "recalled, to be confirmed before anybody relies on it",
        [MARK_TRADE] = "common practice, without a published source"};
    return MEANINGS[mark];
}

static void marks_text(struct text *text, const struct working *working) {
    for (int mark = MARK_READ; mark <= MARK_TRADE; mark++)
        for (size_t k = 0; k < working->count; k++)
            if (working->items[k].has_mark && working->items[k].mark == (enum mark)mark) {
                text_print(text, "  [%s] %s\n", mark_name((enum mark)mark),
                           mark_in_words((enum mark)mark));
                break;
            }
}

struct told_step *working_told(struct arena *arena, const struct working *working,
                               enum unit_system units) {
    struct told_step *steps = ARENA_ARRAY(arena, struct told_step, working->count);
    struct symbol_number *symbols = ARENA_ARRAY(arena, struct symbol_number, working->count);
    size_t known = 0;
    for (size_t k = 0; k < working->count; k++) {
        const struct step *step = &working->items[k];
        struct told_step *told = &steps[k];
        *told = (struct told_step){.heading = is_heading(step),
                                   .words = step->words,
                                   .symbol = step->symbol,
                                   .source = source_in_words(arena, step)};
        if (told->heading)
            continue;
        const char *result = quantity_print_working(arena, step->value, step->kind, units);
        if (step->formula) {
            const char *numbers = substituted(arena, step->formula, symbols, known);
            told->parts[told->part_count++] = step->formula;
            if (strcmp(numbers, step->formula) != 0)
                told->parts[told->part_count++] = numbers;
        }
        told->parts[told->part_count++] = result;
        symbols[known].symbol = step->symbol;
        symbols[known++].number = arena_copy(arena, result, strcspn(result, " "));
    }
    return steps;
}

void working_text(struct text *text, const struct working *working, enum unit_system units) {
    struct told_step *steps = working_told(text->arena, working, units);
    for (size_t k = 0; k < working->count; k++) {
        if (steps[k].heading)
            text_print(text, k ? "\n%s\n" : "%s\n", steps[k].words);
        else
            step_text(text, &steps[k]);
    }
    text_add(text, "\n");
    marks_text(text, working);
}

void why_text(struct text *text, const struct result *result, const struct check *check) {
    struct arena *arena = text->arena;
    const char *place = check_place(check);
    const char *numbers = numbers_in_words(arena, check, result->frame->units);
    paragraph(text, "", 0, arena_print(arena, "%s: %s", title_in_words(arena, result), place));
    const char *verdict = check->verdict == VERDICT_NOT_COVERED
                              ? "no published rule covers it"
                              : arena_print(arena, "%s: %s", share_of_limit(arena, check),
                                            verdict_in_words(check->verdict));
    paragraph(text, "", 0, arena_print(arena, "%s, %s", numbers, verdict));
    paragraph(text, "", 0,
              check->combination[0]
                  ? arena_print(arena, "[%s] under %s", check->id, check->combination)
                  : arena_print(arena, "[%s]", check->id));
    text_add(text, "\n");
    working_text(text, check->working, result->frame->units);
    if (check->source[0])
        paragraph(text, "", 0, arena_print(arena, "Rule: %s.", check->source));
    if (check->verdict != VERDICT_OK && check->advice[0])
        paragraph(text, "", 0, arena_print(arena, "What helps: %s", check->advice));
    cautions_text(text, result);
}

void working_json(struct json *json, const struct working *working) {
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < working->count; k++) {
        const struct step *step = &working->items[k];
        bool heading = is_heading(step);
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "symbol", step->symbol);
        json_key_string(json, "words", step->words);
        json_key_string(json, "formula", step->formula);
        json_key_number(json, "value", heading ? NAN : step->value);
        json_key_string(json, "unit", heading ? NULL : si_unit(step->kind));
        json_key_string(json, "source", step->source);
        json_key_string(json, "mark", step->has_mark ? mark_name(step->mark) : NULL);
        json_close(json);
    }
    json_close(json);
}

void why_json(struct json *json, const struct check *check) {
    json_object(json, JSON_LINES);
    json_key_string(json, "id", check->id);
    json_key_string(json, "combination", check->combination);
    json_key(json, "steps");
    working_json(json, check->working);
    bool covered = check->verdict != VERDICT_NOT_COVERED;
    json_key_number(json, "ratio", covered ? check->ratio : NAN);
    json_key_string(json, "verdict", verdict_name(check->verdict));
    json_close(json);
    json_end(json);
}
