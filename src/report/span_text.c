#include "report/span_text.h"

#include "report/layout.h"
#include "report/why_text.h"
#include "report/words.h"

#include <math.h>

static const char *length(struct arena *arena, double si) {
    return isfinite(si) ? quantity_print_length(arena, si, UNITS_US) : "any";
}

static const char *sag_in_words(struct arena *arena, const struct span_question *question) {
    const char *limit =
        question->sag_divisor > 0.0
            ? arena_print(arena, "span/%s",
                          quantity_print(arena, question->sag_divisor, QUANTITY_NUMBER, UNITS_US))
            : quantity_print(arena, question->sag_limit, QUANTITY_LENGTH, UNITS_US);
    return arena_print(arena, "%s under %s", limit,
                       question->sag_live_only ? "the live load alone, without creep"
                                               : "all load, with creep");
}

static void question_text(struct text *text, const struct span_question *question) {
    struct arena *arena = text->arena;
    paragraph(
        text, "", 0,
        arena_print(arena,
                    "How far does %s, %s, span%s? Simple span between bearing centres, %s apart; "
                    "%s live and %s dead load; sag at most %s; %s; %s load; upper edge held%s.",
                    table_species_name(question->species), table_grade_name(question->grade),
                    question->flat ? " lying flat" : "",
                    quantity_print(arena, question->spacing, QUANTITY_LENGTH, UNITS_US),
                    quantity_print(arena, question->live, QUANTITY_LOAD, UNITS_US),
                    quantity_print(arena, question->dead, QUANTITY_LOAD, UNITS_US),
                    sag_in_words(arena, question), question->wet ? "wet" : "dry",
                    duration_name(question->duration),
                    question->repetitive ? "; three or more share the load" : ""));
    text_add(text, "\n");
}

static const char *what_governs(enum span_governs governs) {
    static const char *const WORDS[] = {/* ORDER SPAN GOVERNS */ [SPAN_BEND] = "bending decides",
                                        [SPAN_SAG] = "sag decides",
                                        [SPAN_SHEAR] = "shear decides"};
    return WORDS[governs];
}

static void row_text(struct text *text, const struct span_row *row) {
    static const size_t WIDTHS[] = {6, 16, 16, 52};
    struct arena *arena = text->arena;
    const char *cells[] = {row->size->name, length(arena, row->span), what_governs(row->governs),
                           arena_print(arena, "bending %s, sag %s, shear %s",
                                       length(arena, row->bend), length(arena, row->sag),
                                       length(arena, row->shear))};
    row_of_cells(text, 2, cells, WIDTHS, 4);
    if (row->note[0])
        paragraph(text, "          ", 10, row->note);
}

void span_text(struct text *text, const struct span_question *question,
               const struct span_answer *answer) {
    question_text(text, question);
    for (size_t k = 0; k < answer->count; k++)
        row_text(text, &answer->rows[k]);
    for (size_t k = 0; k < answer->count; k++)
        if (answer->rows[k].working) {
            text_print(text, "\nThe working of %s\n", answer->rows[k].size->name);
            working_text(text, answer->rows[k].working, UNITS_US);
        }
    text_add(text, "\n");
    paragraph(text, "", 0, SAFETY_LINE);
}

void span_json(struct json *json, const struct span_answer *answer) {
    json_object(json, JSON_LINES);
    json_key(json, "rows");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < answer->count; k++) {
        const struct span_row *row = &answer->rows[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "size", row->size->name);
        json_key_string(json, "stands", row->flat ? "flat" : "on-edge");
        json_key_number(json, "span", row->span);
        json_key_string(json, "governs", span_governs_name(row->governs));
        json_key(json, "spans");
        json_object(json, JSON_ONE_LINE);
        json_key_number(json, "bend", row->bend);
        json_key_number(json, "sag", row->sag);
        json_key_number(json, "shear", row->shear);
        json_close(json);
        json_close(json);
    }
    json_close(json);
    json_close(json);
    json_end(json);
}
