#include "page/page.h"

#include "draw/markup.h"
#include "report/shortest.h"
#include "report/visible.h"
#include "report/why_text.h"
#include "report/words.h"
#include "units/decimal.h"

#include <math.h>

/* The number as the JSON has it; "" where it has null. */
static const char *exact(struct arena *arena, struct powers_of_ten *powers,
                         const struct check *check) {
    char *number = arena_take(arena, SHORTEST_ROOM, 1);
    if (check->verdict == VERDICT_NOT_COVERED || !isfinite(check->ratio))
        return "";
    shortest_write(powers, check->ratio, number);
    return number;
}

static void span(struct text *out, const char *of_class, const char *words) {
    text_print(out, "<span class=\"%s\">%s</span>\n", of_class, markup(out->arena, words));
}

static void bar(struct text *out, const struct check *check) {
    double share = isfinite(check->ratio) ? fmin(check->ratio, 1.0) : 1.0;
    if (check->verdict != VERDICT_NOT_COVERED)
        text_print(out, "<span class=\"bar\"><i style=\"width:%s%%\"></i></span>\n",
                   decimal_fixed(out->arena, 100.0 * share, 1));
}

static void working(struct text *out, const struct check *check, enum unit_system units) {
    struct told_step *steps = working_told(out->arena, check->working, units);
    text_add(out, "<div class=\"working\">\n");
    for (size_t k = 0; k < check->working->count; k++) {
        const struct told_step *step = &steps[k];
        if (step->heading) {
            text_print(out, "<h3>%s</h3>\n", markup(out->arena, step->words));
            continue;
        }
        text_print(out, "<div>%s<code>%s", markup(out->arena, step->words),
                   markup(out->arena, step->symbol));
        for (size_t p = 0; p < step->part_count; p++)
            text_print(out, " = %s", markup(out->arena, step->parts[p]));
        text_add(out, "</code>");
        if (step->source[0])
            text_print(out, "<cite>%s</cite>", markup(out->arena, step->source));
        text_add(out, "</div>\n");
    }
    if (check->source[0])
        page_paragraph(out, NULL, arena_print(out->arena, "Rule: %s.", check->source));
    text_add(out, "</div>\n");
}

static void one_check(struct text *out, const struct check *check, enum unit_system units,
                      struct powers_of_ten *powers) {
    struct arena *arena = out->arena;
    bool no_rule = check->verdict == VERDICT_NOT_COVERED;
    text_print(out,
               "<details class=\"check %s\" data-id=\"%s\" data-ratio=\"%s\" data-verdict=\"%s\">\n"
               "<summary>\n",
               verdict_name(check->verdict), markup(arena, check->id), exact(arena, powers, check),
               verdict_name(check->verdict));
    span(out, "place", check->place[0] ? check->place : check->where);
    span(out, "numbers", numbers_in_words(arena, check, units));
    span(out, "ratio", no_rule ? "" : ratio_in_words(arena, check));
    span(out, "verdict", verdict_in_words(check->verdict));
    bar(out, check);
    if (check->verdict != VERDICT_OK && check->advice[0])
        span(out, "advice", check->advice);
    text_add(out, "</summary>\n");
    const char *beside = quantity_print(arena, check->beside.value, check->beside.kind, units);
    if (check->beside.words[0] && !prints_as_nothing(beside))
        page_paragraph(out, "under",
                       arena_print(arena, "Beside that: %s %s.", check->beside.words, beside));
    page_paragraph(out, "under",
                   check->combination[0]
                       ? arena_print(arena, "[%s] under %s", check->id, check->combination)
                       : arena_print(arena, "[%s]", check->id));
    if (check->working)
        working(out, check, units);
    text_add(out, "</details>\n");
}

static bool asks(const struct result *result, int question) {
    for (size_t k = 0; k < result->checks.count; k++)
        if (question_of(result->checks.items[k].kind) == question)
            return true;
    return false;
}

void page_checks(struct text *out, const struct page *page) {
    const struct result *result = page->drawing->result;
    struct powers_of_ten *powers = ARENA_NEW(out->arena, struct powers_of_ten);
    for (int question = 0; question < question_count(); question++) {
        if (!asks(result, question))
            continue;
        page_heading(out, question_words(question));
        for (size_t k = 0; k < result->checks.count; k++)
            if (question_of(result->checks.items[k].kind) == question)
                one_check(out, &result->checks.items[k], result->frame->units, powers);
    }
    if (!result->checks.count)
        return;
    page_paragraph(out, "quiet",
                   "Percent and times tell how much of its limit is used. A check opens and shows "
                   "its working.");
    if (!result->frame->has_combine)
        page_paragraph(out, "quiet", "In the names of loads " COMBINATION_LETTERS ".");
}
