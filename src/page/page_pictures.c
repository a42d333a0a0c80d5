#include "page/page.h"

#include "draw/draw.h"
#include "draw/figure.h"
#include "draw/markup.h"
#include "units/decimal.h"

#include <string.h>

static void figure(struct text *out, const struct page *page, const char *attributes,
                   const char *caption, enum view_kind kind, const bool shows[SHOW_COUNT]) {
    struct drawing drawing = *page->drawing;
    memcpy(drawing.shows, shows, sizeof drawing.shows);
    text_print(out, "<figure%s>\n<figcaption>%s</figcaption>\n", attributes,
               markup(out->arena, caption));
    draw_view(out, &drawing, kind);
    text_add(out, "</figure>\n");
}

/* The picture that the script brings to life: the bent frame, or where it does not stand the frame.
 */
static void living_figure(struct text *out, const struct page *page) {
    const struct bent *bent = &page->drawing->result->bent;
    const bool shows[SHOW_COUNT] = {[SHOW_BENT] = true};
    const bool works[SHOW_COUNT] = {[SHOW_WORK] = true};
    const char *caption = "from the front right corner";
    if (bent->combination)
        caption = arena_print(out->arena, "bent under %s, %s", bent->combination,
                              exaggeration_in_words(out->arena, bent_exaggeration(page->drawing)));
    figure(out, page, " id=\"model\"", caption, VIEW_CORNER, bent->combination ? shows : works);
}

static void legend(struct text *out, const struct page *page) {
    struct drawing drawing = *page->drawing;
    memset(drawing.shows, 0, sizeof drawing.shows);
    drawing.shows[SHOW_WORK] = drawing.shows[SHOW_LOADS] = true;
    text_add(out, "<figure class=\"legend\">\n");
    draw_legend(out, &drawing);
    text_add(out, "</figure>\n");
}

void page_pictures(struct text *out, const struct page *page) {
    const bool named[SHOW_COUNT] = {[SHOW_NAMES] = true, [SHOW_WORK] = true};
    const bool measured[SHOW_COUNT] = {
        [SHOW_NAMES] = true, [SHOW_DIMENSIONS] = true, [SHOW_LOADS] = true, [SHOW_WORK] = true};
    page_heading(out, "How it looks");
    if (!page->drawing->frame->members.count)
        return;
    text_add(out, "<div class=\"pictures\">\n");
    if (!page->drawing->frame->plane)
        figure(out, page, "", VIEWS[VIEW_CORNER].title, VIEW_CORNER, named);
    figure(out, page, "", VIEWS[VIEW_FRONT].title, VIEW_FRONT, measured);
    if (!page->drawing->frame->plane) {
        figure(out, page, "", VIEWS[VIEW_SIDE].title, VIEW_SIDE, measured);
        figure(out, page, "", VIEWS[VIEW_PLAN].title, VIEW_PLAN, measured);
    }
    living_figure(out, page);
    text_add(out, "</div>\n");
    legend(out, page);
}
