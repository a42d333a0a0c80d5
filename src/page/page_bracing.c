#include "page/page.h"

#include "draw/draw.h"
#include "draw/markup.h"
#include "report/brace_sentences.h"
#include "report/brace_words.h"
#include "report/check_text.h"

#include <string.h>

enum { FOLDS_DRAWN = 8 };

/* Every way to fold, the first ones drawn. */
static void motions(struct text *out, const struct page *page, const struct motion *motions,
                    size_t count) {
    text_add(out, count ? "<div class=\"pictures\">\n" : "");
    for (size_t k = 0; k < count && k < FOLDS_DRAWN; k++) {
        text_print(out, "<figure class=\"fold\">\n<figcaption>%zu. %s</figcaption>\n", k + 1,
                   markup(out->arena, motions[k].sentence));
        draw_fold(out, page->drawing, &motions[k]);
        text_add(out, "</figure>\n");
    }
    text_add(out, count ? "</div>\n" : "");
    if (count <= FOLDS_DRAWN)
        return;
    text_print(out, "<ol start=\"%d\">\n", FOLDS_DRAWN + 1);
    for (size_t k = FOLDS_DRAWN; k < count; k++)
        page_item(out, motions[k].sentence);
    text_add(out, "</ol>\n");
}

void page_folding(struct text *out, const struct page *page) {
    const struct result *result = page->drawing->result;
    page_heading(out, "How does it fold?");
    page_paragraph(out, NULL, fold_reason_in_words(out->arena, result));
    motions(out, page, result->folding.motions, result->folding.motion_count);
    page_paragraph(out, NULL, fold_remedy_in_words(result));
}

static void cells(struct text *out, const struct lean_cells *cells, const char *tag) {
    text_add(out, "<tr>");
    for (size_t k = 0; k < cells->count; k++)
        text_print(out, "<%s>%s</%s>", tag, markup(out->arena, cells->cells[k]), tag);
    text_add(out, "</tr>\n");
}

static void lean_table(struct text *out, const struct brace_answer *answer) {
    struct lean_cells heading = lean_heading(answer);
    page_heading(out, "How far does it lean?");
    page_paragraph(out, NULL, lean_introduction(answer));
    if (!answer->lean_count)
        return;
    text_add(out, "<table>\n<tbody>\n");
    cells(out, &heading, "th");
    for (size_t k = 0; k < answer->lean_count; k++) {
        struct lean_cells moves = lean_moves(out->arena, answer, &answer->lean[k]);
        struct lean_cells ranges = lean_ranges(out->arena, answer, &answer->lean[k]);
        cells(out, &moves, "td");
        if (lean_varies(&answer->lean[k]))
            cells(out, &ranges, "td");
    }
    text_add(out, "</tbody>\n</table>\n");
    for (size_t k = 0; k < answer->lean_count; k++)
        page_paragraph(out, NULL, lean_remark(out->arena, answer, &answer->lean[k]));
}

static void diagonals(struct text *out, const struct page *page) {
    const struct brace_answer *answer = page->drawing->braces;
    struct drawing drawing = *page->drawing;
    if (!answer->brace_count)
        return;
    page_heading(out, "Where do the diagonals go?");
    memset(drawing.shows, 0, sizeof drawing.shows);
    drawing.shows[SHOW_BRACES] = true;
    text_add(out, "<figure>\n");
    draw_view(out, &drawing, drawing.frame->plane ? VIEW_FRONT : VIEW_CORNER);
    text_add(out, "</figure>\n<ol>\n");
    for (size_t k = 0; k < answer->brace_count; k++)
        page_item(out, brace_place(out->arena, answer, k));
    text_add(out, "</ol>\n");
    page_paragraph(out, NULL, brace_remark(out->arena, answer));
}

static void alternatives(struct text *out, const struct brace_answer *answer) {
    if (!answer->alternative_count)
        return;
    page_heading(out, answer->brace_count ? "What else would do?" : "What else might do?");
    text_add(out, "<ul>\n");
    for (size_t k = 0; k < answer->alternative_count; k++)
        page_item(out, arena_print(out->arena, "%s: %s", answer->alternatives[k].words,
                                   alternative_outcome(out->arena, &answer->alternatives[k],
                                                       answer->frame->units)));
    text_add(out, "</ul>\n");
}

static void sheets(struct text *out, const struct brace_answer *answer) {
    if (!answer->sheet_count)
        return;
    page_heading(out, "Which sheets count as braces?");
    text_add(out, "<ul>\n");
    for (size_t k = 0; k < answer->sheet_count; k++)
        page_item(out, arena_print(out->arena, "%s: %s",
                                   answer->frame->panels.items[answer->sheets[k].panel].name,
                                   sheet_in_words(out->arena, &answer->sheets[k])));
    text_add(out, "</ul>\n");
    page_paragraph(out, NULL, clear_sheets_in_words(answer));
}

void page_bracing(struct text *out, const struct page *page) {
    const struct brace_answer *answer = page->drawing->braces;
    bool drawn = page->drawing->result->folding.motion_count > 0;
    if (!answer || !answer->frame->members.count)
        return;
    page_heading(out, "Can it fold?");
    page_paragraph(out, NULL, brace_summary(out->arena, answer));
    page_paragraph(out, NULL, brace_ways(out->arena, answer));
    if (!drawn)
        motions(out, page, answer->motions, answer->motion_count);
    lean_table(out, answer);
    diagonals(out, page);
    alternatives(out, answer);
    sheets(out, answer);
    if (answer->notes.count)
        text_add(out, "<ul>\n");
    for (size_t k = 0; k < answer->notes.count; k++)
        page_item(out, answer->notes.items[k]);
    if (answer->notes.count)
        text_add(out, "</ul>\n");
}
