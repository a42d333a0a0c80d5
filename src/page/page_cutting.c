#include "page/page.h"

#include "draw/cut_picture.h"
#include "draw/markup.h"
#include "report/cut_rows.h"
#include "report/cut_words.h"

static void part_heading(struct text *out, const char *words) {
    text_print(out, "<h3>%s</h3>\n", markup(out->arena, words));
}

static void table(struct text *out, const char *of_class, const struct cut_rows *rows) {
    text_print(out, "<table class=\"%s\">\n<tbody>\n", of_class);
    for (size_t k = 0; k < rows->count; k++) {
        text_add(out, "<tr>");
        for (int c = 0; c < rows->columns; c++)
            text_print(out, "<td>%s</td>", markup(out->arena, rows->items[k].cells[c]));
        text_add(out, "</tr>\n");
    }
    text_add(out, "</tbody>\n</table>\n");
}

static void buying(struct text *out, const struct cut_answer *cut) {
    struct cut_rows rows = cut_buying(out->arena, cut);
    page_heading(out, "What to buy");
    page_paragraph(out, NULL, cut_summary(out->arena, cut));
    page_paragraph(out, NULL, cut_left_out(out->arena, cut));
    table(out, "buying", &rows);
    page_paragraph(out, "quiet", cut_buying_remark(cut));
}

static void boards(struct text *out, const struct cut_answer *cut,
                   const struct cut_sticks *sticks) {
    struct arena *arena = out->arena;
    part_heading(out, cut_sticks_heading(arena, sticks));
    if (sticks->board_count) {
        text_add(out, "<figure class=\"boards\">\n");
        cut_picture_boards(out, cut, sticks);
        text_add(out, "</figure>\n");
    }
    text_add(out, "<ul>\n");
    for (size_t from = 0, count; from < sticks->board_count; from += count)
        page_item(out, cut_board_sentence(arena, cut, sticks, from, &count));
    for (size_t k = 0; k < sticks->too_long_count; k++)
        page_item(out, cut_too_long_sentence(arena, cut, sticks, k));
    text_add(out, "</ul>\n");
}

static void sheets(struct text *out, const struct cut_answer *cut,
                   const struct cut_sheets *sheets) {
    part_heading(out, cut_sheets_heading(out->arena, sheets));
    page_paragraph(out, NULL, cut_sheets_remark(sheets));
    if (sheets->needed) {
        text_add(out, "<figure class=\"boards\">\n");
        cut_picture_sheets(out, cut, sheets);
        text_add(out, "</figure>\n");
    }
    text_add(out, "<ul>\n");
    for (size_t k = 0; k < sheets->piece_count; k++)
        page_item(out, cut_sheet_sentence(out->arena, cut, sheets, &sheets->pieces[k]));
    text_add(out, "</ul>\n");
}

static void order(struct text *out, const struct cut_answer *cut) {
    part_heading(out, "In which order?");
    page_paragraph(out, NULL, CUT_ORDER ".");
    text_add(out, "<ul>\n");
    for (size_t k = 0; k < cut->stick_count; k++) {
        size_t count;
        const char **batches = cut_batches(out->arena, cut, &cut->sticks[k], &count);
        for (size_t b = 0; b < count; b++)
            page_item(out, arena_print(out->arena, "%s: %s", cut->sticks[k].name, batches[b]));
    }
    text_add(out, "</ul>\n");
}

static void left_over(struct text *out, const struct cut_answer *cut) {
    size_t count;
    const char **lines = cut_left_lines(out->arena, cut, &count);
    if (!count)
        return;
    part_heading(out, cut_left_heading(out->arena, cut));
    text_add(out, "<ul>\n");
    for (size_t k = 0; k < count; k++)
        page_item(out, lines[k]);
    text_add(out, "</ul>\n");
}

static void weights(struct text *out, const struct cut_answer *cut) {
    struct cut_rows rows = cut_weights(out->arena, cut);
    page_heading(out, "What does it weigh?");
    table(out, "weights", &rows);
    page_paragraph(out, "quiet", cut_weights_remark(cut));
}

void page_cutting(struct text *out, const struct page *page) {
    const struct cut_answer *cut = page->cut;
    if (!cut || cut->problems.count || (!cut->stick_count && !cut->sheet_count))
        return;
    buying(out, cut);
    page_heading(out, "How to cut it");
    page_paragraph(out, NULL,
                   arena_print(out->arena, "Here %s.", cut_measured_words(out->arena, cut)));
    for (size_t k = 0; k < cut->stick_count; k++)
        boards(out, cut, &cut->sticks[k]);
    for (size_t k = 0; k < cut->sheet_count; k++)
        sheets(out, cut, &cut->sheets[k]);
    order(out, cut);
    left_over(out, cut);
    weights(out, cut);
    if (!cut->notes.count)
        return;
    part_heading(out, "What else to know about cutting");
    page_paragraph(out, "quiet", "What begins with -- is said to the command batten cut.");
    text_add(out, "<ul>\n");
    for (size_t k = 0; k < cut->notes.count; k++)
        page_item(out, cut->notes.items[k]);
    text_add(out, "</ul>\n");
}
