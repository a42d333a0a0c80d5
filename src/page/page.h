/* page/page.h - a frame as one HTML page: for the workbench, the phone, and to show to a
 * professional.
 *
 * Self-contained: no network, no fonts or scripts from elsewhere. Well-formed as XML too. All that
 * is said can be read without the script, which only turns the drawing and slides its load. Every
 * check of the JSON stands in it, with its id, its ratio and its verdict as attributes.
 */
#ifndef PAGE_PAGE_H
#define PAGE_PAGE_H

#include "base/text.h"
#include "draw/drawing.h"
#include "result/cut_answer.h"
#include "result/margin_answer.h"

struct page {
    const struct drawing *drawing;       /* with the brace answer; what it shows is not looked at */
    const struct margin_answer *margins; /* with curves; NULL: not looked for */
    const struct cut_answer *cut;        /* NULL: not looked for */
};

void page_html(struct text *out, const struct page *page);

/* ---- its parts ---- */

void page_pictures(struct text *out, const struct page *page);
void page_checks(struct text *out, const struct page *page);
void page_folding(struct text *out, const struct page *page);
void page_bracing(struct text *out, const struct page *page);
void page_margins(struct text *out, const struct page *page);
/* How the worst checks grow with a load: a figure; nothing where there is no plot. */
void page_plot(struct text *out, const struct margin_answer *answer, enum margin_load load);
void page_cutting(struct text *out, const struct page *page);
void page_cautions(struct text *out, const struct page *page);
void page_sources(struct text *out, const struct page *page);

/* The frame in numbers, for the script. */
void page_data(struct text *out, const struct page *page);

/* <p class="...">words</p>, the words made safe; class NULL: none. Nothing where there are no
 * words.
 */
void page_paragraph(struct text *out, const char *of_class, const char *words);
void page_heading(struct text *out, const char *words);
void page_item(struct text *out, const char *words); /* <li> */

#endif
