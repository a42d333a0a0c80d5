#include "report/cut_text.h"

#include "report/check_text.h"
#include "report/cut_rows.h"
#include "report/cut_words.h"
#include "report/layout.h"
#include "report/visible.h"

static const char *title_of(struct arena *arena, const struct cut_answer *answer) {
    struct result result = {.frame = answer->frame};
    return title_in_words(arena, &result);
}

static void summary(struct text *text, const struct cut_answer *answer) {
    struct arena *arena = text->arena;
    paragraph(text, "", 0,
              arena_print(arena, "%s: %s", title_of(arena, answer), cut_summary(arena, answer)));
    if (cut_left_out(arena, answer)[0])
        paragraph(text, "", 0, cut_left_out(arena, answer));
}

static void rows_text(struct text *text, const struct cut_rows *rows, const size_t *widths) {
    for (size_t k = 0; k < rows->count; k++)
        row_of_cells(text, 2, rows->items[k].cells, widths, (size_t)rows->columns);
}

static void buy_section(struct text *text, const struct cut_answer *answer) {
    static const size_t widths[] = {5, 17, 38, 10, 10};
    struct cut_rows rows = cut_buying(text->arena, answer);
    text_add(text, "\nWhat to buy\n");
    rows_text(text, &rows, widths);
    if (cut_buying_remark(answer)[0])
        paragraph(text, "  ", 2, cut_buying_remark(answer));
}

static void weight_section(struct text *text, const struct cut_answer *answer) {
    static const size_t widths[] = {30, 14, 14, 14};
    struct cut_rows rows = cut_weights(text->arena, answer);
    text_add(text, "\nWhat does it weigh?\n");
    rows_text(text, &rows, widths);
    paragraph(text, "  ", 2, cut_weights_remark(answer));
}

static void notes_section(struct text *text, const struct cut_answer *answer) {
    if (answer->notes.count)
        text_add(text, "\nWhat else to know\n");
    for (size_t k = 0; k < answer->notes.count; k++)
        paragraph(text, "  - ", 4, visible(text->arena, answer->notes.items[k]));
}

void cut_text(struct text *text, const struct cut_answer *answer) {
    if (answer->stick_count || answer->sheet_count) {
        summary(text, answer);
        buy_section(text, answer);
        cut_plan_section(text, answer);
        cut_order_section(text, answer);
        cut_left_section(text, answer);
        weight_section(text, answer);
    } else {
        paragraph(text, "", 0,
                  arena_print(text->arena, "%s: there is nothing to cut.",
                              title_of(text->arena, answer)));
    }
    notes_section(text, answer);
}
