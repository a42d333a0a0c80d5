#include "page/page.h"

#include "base/version.h"
#include "draw/markup.h"
#include "page/assets.h"
#include "report/summary.h"
#include "report/words.h"

void page_paragraph(struct text *out, const char *of_class, const char *words) {
    if (!words[0])
        return;
    text_print(out, of_class ? "<p class=\"%s\">" : "<p>", of_class);
    markup_add(out, words);
    text_add(out, "</p>\n");
}

void page_heading(struct text *out, const char *words) {
    text_print(out, "<h2>%s</h2>\n", markup(out->arena, words));
}

void page_item(struct text *out, const char *words) {
    text_print(out, "<li>%s</li>\n", markup(out->arena, words));
}

static const char *title_of(const struct page *page) {
    const char *title = page->drawing->frame->title;
    return title[0] ? title : "This frame";
}

/* The page asks for nothing, and its reader need not believe that: the browser sees to it. */
#define FETCH_NOTHING                                                                              \
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "                  \
    "style-src 'unsafe-inline'; script-src 'unsafe-inline'\"/>\n"

static void head(struct text *out, const struct page *page) {
    const char *title = markup(out->arena, title_of(page));
    text_print(
        out,
        "<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\">\n<head>\n"
        "<meta charset=\"utf-8\"/>\n" FETCH_NOTHING
        "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
        "<title>%s</title>\n<style>\n%s</style>\n</head>\n<body>\n<h1><bdi>%s</bdi></h1>\n",
        title, PAGE_CSS, title);
}

static void verdict(struct text *out, const struct page *page) {
    const struct result *result = page->drawing->result;
    text_print(out, "<p class=\"whole %s\" data-verdict=\"%s\"><bdi>%s</bdi></p>\n",
               verdict_name(result->verdict), verdict_name(result->verdict),
               markup(out->arena, summary_in_words(out->arena, result)));
}

static void foot(struct text *out, const struct page *page) {
    text_add(out, "<footer>\n");
    page_paragraph(out, "quiet", SAFETY_LINE);
    page_paragraph(out, "quiet",
                   arena_print(out->arena, "Judged by %s. Made by batten " BATTEN_VERSION ".",
                               page->drawing->result->basis));
    text_add(out, "</footer>\n");
    page_data(out, page);
    text_print(out, "<script>\n//<![CDATA[\n%s//]]>\n</script>\n</body>\n</html>\n", PAGE_JS);
}

void page_html(struct text *out, const struct page *page) {
    const struct result *result = page->drawing->result;
    head(out, page);
    verdict(out, page);
    page_pictures(out, page);
    if (result->verdict == VERDICT_FOLDS)
        page_folding(out, page);
    else
        page_checks(out, page);
    page_bracing(out, page);
    page_margins(out, page);
    page_cutting(out, page);
    page_cautions(out, page);
    page_sources(out, page);
    foot(out, page);
}
