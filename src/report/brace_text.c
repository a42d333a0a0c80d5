#include "report/brace_text.h"

#include "report/brace_sentences.h"
#include "report/brace_words.h"
#include "report/check_text.h"
#include "report/layout.h"
#include "report/visible.h"

#include <math.h>

enum { WAYS_SHOWN = 20, SHEET_WIDTH = 24 };

/* ---- can it fold ---- */

static void fold_section(struct text *text, const struct brace_answer *answer) {
    text_add(text, "\nCan it fold?\n");
    paragraph(text, "  ", 2, brace_ways(text->arena, answer));
    for (size_t k = 0; k < answer->motion_count && k < WAYS_SHOWN; k++)
        paragraph(text, arena_print(text->arena, "  %zu. ", k + 1), 5, answer->motions[k].sentence);
    if (answer->motion_count > WAYS_SHOWN)
        text_print(text, "  and %zu more (--json has them all)\n",
                   answer->motion_count - WAYS_SHOWN);
}

/* ---- where the diagonals go ---- */

static void braces_section(struct text *text, const struct brace_answer *answer) {
    struct arena *arena = text->arena;
    if (!answer->brace_count)
        return;
    text_add(text, "\nWhere do the diagonals go?\n");
    for (size_t k = 0; k < answer->brace_count; k++)
        paragraph(text, arena_print(arena, "  %zu. ", k + 1), 5, brace_place(arena, answer, k));
    paragraph(text, "  ", 2, brace_remark(arena, answer));
}

/* ---- what else would do ---- */

static void alternatives_section(struct text *text, const struct brace_answer *answer) {
    if (answer->alternative_count)
        text_print(text, "\nWhat else %s do?\n", answer->brace_count ? "would" : "might");
    for (size_t k = 0; k < answer->alternative_count; k++)
        paragraph(text, "  - ", 4,
                  arena_print(text->arena, "%s: %s", answer->alternatives[k].words,
                              alternative_outcome(text->arena, &answer->alternatives[k],
                                                  answer->frame->units)));
}

/* ---- which sheets count ---- */

static void sheets_section(struct text *text, const struct brace_answer *answer) {
    static const size_t widths[] = {SHEET_WIDTH, LINE_WIDTH - 4 - SHEET_WIDTH};
    struct arena *arena = text->arena;
    if (answer->sheet_count)
        text_add(text, "\nWhich sheets count?\n");
    for (size_t k = 0; k < answer->sheet_count; k++) {
        const char *name = answer->frame->panels.items[answer->sheets[k].panel].name;
        const char *words = sheet_in_words(arena, &answer->sheets[k]);
        row_of_cells(text, 2, (const char *const[]){name, words}, widths, 2);
    }
    const char *clear = clear_sheets_in_words(answer);
    if (clear[0])
        paragraph(text, "  ", 2, clear);
}

static void notes_section(struct text *text, const struct brace_answer *answer) {
    if (answer->notes.count)
        text_add(text, "\nWhat else to know\n");
    for (size_t k = 0; k < answer->notes.count; k++)
        paragraph(text, "  - ", 4, visible(text->arena, answer->notes.items[k]));
}

void brace_text(struct text *text, const struct brace_answer *answer) {
    paragraph(text, "", 0, brace_summary(text->arena, answer));
    if (answer->frame->members.count) {
        fold_section(text, answer);
        lean_section(text, answer);
    }
    braces_section(text, answer);
    alternatives_section(text, answer);
    sheets_section(text, answer);
    notes_section(text, answer);
    struct result result = {.frame = answer->frame};
    brace_cautions(text->arena, answer, &result);
    cautions_text(text, &result);
}
