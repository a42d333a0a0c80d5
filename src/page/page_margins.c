#include "page/page.h"

#include "report/margin_text.h"

static bool has_plot(const struct margin_answer *margins) {
    for (int load = 0; load < MARGIN_COUNT; load++)
        if (margins->loads[load].plot.count)
            return true;
    return false;
}

void page_margins(struct text *out, const struct page *page) {
    const struct margin_answer *margins = page->margins;
    if (!margins || margins->trouble || margins->verdict == VERDICT_FOLDS)
        return;
    page_heading(out, "How much more does it bear?");
    page_paragraph(
        out, NULL,
        "Each load is raised alone until the first check fails, the others as described.");
    text_add(out, "<ul>\n");
    for (int load = 0; load < MARGIN_COUNT; load++)
        page_item(out, arena_print(out->arena, "%s: %s", MARGIN_NAMES[load],
                                   margin_sentence(out->arena, margins, (enum margin_load)load)));
    text_add(out, "</ul>\n");
    if (!has_plot(margins))
        return;
    page_paragraph(out, NULL,
                   "Below, the checks that get nearest to their limits, of each kind the worst: "
                   "each mark is the whole "
                   "frame judged once under that much of the load, a ring shows where a check is "
                   "at its limit.");
    text_add(out, "<div class=\"pictures\">\n");
    for (int load = 0; load < MARGIN_COUNT; load++)
        page_plot(out, margins, (enum margin_load)load);
    text_add(out, "</div>\n");
}
