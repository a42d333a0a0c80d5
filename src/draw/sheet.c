#include "draw/draw.h"

#include "draw/figure.h"
#include "draw/layout.h"
#include "draw/legend.h"
#include "draw/markup.h"
#include "units/decimal.h"

#include <math.h>
#include <string.h>

enum { FOLDS_MOST = 12 };
#define FOLD_WIDE 60.0 /* mm */
#define CAPTION 44.0   /* mm: the narrowest that a sentence about a fold is set */
#define BORDER 6.0
#define A4_LONG 297.0
#define A4_SHORT 210.0
#define FIGURE_WIDE 100.0 /* mm: a view that stands in a page */
#define FIGURE_HIGH 115.0
#define NARROWEST 100.0

static void open_svg(struct text *out, struct arena *arena, double width, double height,
                     bool document, const char *title) {
    const char *w = ink_number(arena, width), *h = ink_number(arena, height);
    if (document)
        text_add(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    text_print(out,
               "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" "
               "viewBox=\"0 0 %s %s\" role=\"img\">\n<title>%s</title>\n",
               w, h, w, h, markup(arena, title));
    text_print(out, "<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n", w, h);
}

static const char *title_of(const struct drawing *drawing) {
    return drawing->frame->title[0] ? drawing->frame->title : "This frame";
}

/* "from the front: brace-2, 40 lb (2 times)"; equal words once. */
static void add_left_out(struct text *text, const char *view, const struct left_out *left_out) {
    text_print(text, "%s%s: ", text->count ? "; " : "", view);
    for (size_t k = 0; k < left_out->count; k++) {
        size_t times = 0, before = 0;
        for (size_t other = 0; other < left_out->count; other++)
            if (strcmp(left_out->items[other], left_out->items[k]) == 0) {
                times++;
                before += other < k;
            }
        if (before)
            continue;
        text_print(text, "%s%s", k ? ", " : "", left_out->items[k]);
        if (times > 1)
            text_print(text, " (%zu times)", times);
    }
}

static const char *left_out_words(struct arena *arena, const char *left_out) {
    return left_out[0] ? arena_print(arena, " No room was found for these words, %s.", left_out)
                       : "";
}

static const char *measured_words(const struct drawing *drawing) {
    if (!drawing->shows[SHOW_DIMENSIONS])
        return "";
    return figure_measures_wood(drawing) ? " Lengths over the wood, heights from the ground."
                                         : " Lengths between the middle lines of the sticks.";
}

static const char *scale_words(const struct drawing *drawing, double ratio, const char *left_out) {
    return arena_print(drawing->arena, "Scale 1 : %s where it is printed at its full size.%s%s",
                       decimal_fixed(drawing->arena, ratio, 2), measured_words(drawing),
                       left_out_words(drawing->arena, left_out));
}

/* The larger of upright and lying paper. */
static struct sheet_layout on_paper(const struct drawing *drawing, const bool views[VIEW_COUNT],
                                    double longer, double shorter) {
    const double rest = 36.0; /* title and legend */
    struct sheet_layout upright =
        layout_views(drawing, views, shorter - 2.0 * BORDER, longer - rest - 2.0 * BORDER);
    struct sheet_layout lying =
        layout_views(drawing, views, longer - 2.0 * BORDER, shorter - rest - 2.0 * BORDER);
    return lying.ratio < upright.ratio ? lying : upright;
}

/* Returns the words that found no room, view by view; "" where all did. */
static const char *draw_views(const struct drawing *drawing, const struct sheet_layout *layout,
                              bool headings, struct ink *ink) {
    struct text left_out = text_new(drawing->arena);
    for (int v = 0; v < VIEW_COUNT; v++) {
        const struct placed_view *view = &layout->views[v];
        if (!view->shown)
            continue;
        if (headings)
            ink_words(ink, WORDS_HEADING, ANCHOR_START, view->heading, VIEWS[v].title);
        struct left_out here = {0};
        figure_draw(drawing, (enum view_kind)v, &view->site, ink, &here);
        if (here.count)
            add_left_out(&left_out, VIEWS[v].title, &here);
    }
    return text_string(&left_out);
}

/* The ways to fold, some a row, each with its sentence; returns how far down they go. */
static double draw_folds(const struct drawing *drawing, struct point at, double width, double ratio,
                         struct ink *ink) {
    size_t count;
    const struct motion *motions = drawing_motions(drawing, &count);
    struct sheet_layout layout = layout_fold(drawing, ratio);
    while (layout.width > fmin(width, FOLD_WIDE))
        layout = layout_fold(drawing, layout_coarser(layout.ratio));
    size_t a_row = (size_t)(width / fmax(layout.width, CAPTION));
    double down = 0.0, row = 0.0, each = width / (double)a_row;
    if (!count)
        return ink_wrapped(ink, WORDS_PLAIN, at, width,
                           "It cannot fold, even with every fastening taken as a hinge.");
    ink_words(ink, WORDS_HEADING, ANCHOR_START, at,
              drawing->result->folding.motion_count ? "how it folds up"
                                                    : "how it could fold, were its screws hinges");
    down = 3.0;
    for (size_t k = 0; k < count && k < FOLDS_MOST; k++) {
        struct sheet_layout here = layout;
        double left = at.x + (double)(k % a_row) * each;
        layout_move(&here, left, at.y + down);
        figure_fold(drawing, &here.views[VIEW_CORNER].site, &motions[k], ink);
        double words = ink_wrapped(
            ink, WORDS_QUIET, (struct point){left, at.y + down + layout.height + 3.0}, each - 5.0,
            arena_print(drawing->arena, "%zu. %s", k + 1, motions[k].sentence));
        row = fmax(row, layout.height + 3.0 + words);
        if (k % a_row == a_row - 1 || k + 1 == count || k + 1 == FOLDS_MOST) {
            down += row + 2.0;
            row = 0.0;
        }
    }
    if (count > FOLDS_MOST)
        down += ink_wrapped(ink, WORDS_QUIET, (struct point){at.x, at.y + down + 2.0}, width,
                            arena_print(drawing->arena, "and %zu more: batten brace has them all",
                                        count - FOLDS_MOST));
    return down;
}

void draw_sheet(struct text *out, const struct drawing *drawing, const bool views[VIEW_COUNT]) {
    struct ink ink;
    bool shown[VIEW_COUNT];
    int count = 0;
    for (int v = 0; v < VIEW_COUNT; v++)
        count += shown[v] = views[v] && !(drawing->frame->plane && v != VIEW_FRONT);
    if (!count)
        count = shown[VIEW_FRONT] = true;
    ink_start(&ink, drawing->arena);
    double longer = count > 1 ? A4_LONG : A4_SHORT, shorter = longer / sqrt(2.0);
    struct sheet_layout layout = on_paper(drawing, shown, longer, shorter);
    double width = fmax(layout.width, NARROWEST), y = BORDER + 4.0;
    y += ink_wrapped(&ink, WORDS_TITLE, (struct point){BORDER, y}, width, title_of(drawing)) - 4.0;
    layout_move(&layout, BORDER, y);
    const char *left_out = draw_views(drawing, &layout, true, &ink);
    y += layout.height + 4.0;
    if (drawing->shows[SHOW_FOLDS])
        y += draw_folds(drawing, (struct point){BORDER, y + 2.0}, width, layout.ratio * 1.5, &ink) +
             4.0;
    y += legend_draw(drawing, (struct point){BORDER, y}, width, &ink);
    y += ink_wrapped(&ink, WORDS_QUIET, (struct point){BORDER, y + 3.0}, width,
                     scale_words(drawing, layout.ratio, left_out));
    open_svg(out, drawing->arena, width + 2.0 * BORDER, y + BORDER, true, title_of(drawing));
    ink_write(&ink, out);
    text_add(out, "</svg>\n");
}

static void write_figure(struct text *out, const struct drawing *drawing, const struct ink *ink,
                         double width, double height, const char *title) {
    open_svg(out, drawing->arena, width, height, false, title);
    ink_write(ink, out);
    text_add(out, "</svg>\n");
}

void draw_view(struct text *out, const struct drawing *drawing, enum view_kind kind) {
    struct ink ink;
    bool views[VIEW_COUNT] = {0};
    views[kind] = true;
    ink_start(&ink, drawing->arena);
    struct sheet_layout layout = layout_views(drawing, views, FIGURE_WIDE, FIGURE_HIGH);
    layout_move(&layout, fmax(0.0, (FIGURE_WIDE - layout.width) / 2.0), 0.0);
    const char *left_out = draw_views(drawing, &layout, false, &ink);
    double down = layout.height;
    if (left_out[0])
        down += ink_wrapped(&ink, WORDS_QUIET, (struct point){0.0, down + 3.0}, FIGURE_WIDE,
                            left_out_words(drawing->arena, left_out) + 1) +
                3.0;
    write_figure(out, drawing, &ink, FIGURE_WIDE, down, VIEWS[kind].title);
}

void draw_fold(struct text *out, const struct drawing *drawing, const struct motion *motion) {
    struct ink ink;
    ink_start(&ink, drawing->arena);
    struct sheet_layout layout = layout_fold(drawing, 1.0);
    while (layout.width > FOLD_WIDE)
        layout = layout_fold(drawing, layout_coarser(layout.ratio));
    layout_move(&layout, (FOLD_WIDE - layout.width) / 2.0, 0.0);
    figure_fold(drawing, &layout.views[VIEW_CORNER].site, motion, &ink);
    write_figure(out, drawing, &ink, FOLD_WIDE, layout.height, motion->sentence);
}

void draw_legend(struct text *out, const struct drawing *drawing) {
    struct ink ink;
    ink_start(&ink, drawing->arena);
    double down = legend_draw(drawing, (struct point){1.0, 1.0}, FIGURE_WIDE, &ink);
    write_figure(out, drawing, &ink, FIGURE_WIDE + 2.0, down + 2.0, "what the marks mean");
}
