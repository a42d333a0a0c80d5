#include "page/page.h"

#include "draw/markup.h"
#include "report/shortest.h"
#include "report/visible.h"
#include "report/why_text.h"
#include "report/words.h"
#include "units/decimal.h"

#include <math.h>
#include <string.h>

enum { SHOWN_LEAST = 3 };

static bool has_no_rule(const struct check *check) {
    return check->verdict == VERDICT_NOT_COVERED;
}

/* The number as the JSON has it; "" where it has null. */
static const char *exact(struct arena *arena, struct powers_of_ten *powers,
                         const struct check *check) {
    char *number = arena_take(arena, SHORTEST_ROOM, 1);
    if (has_no_rule(check) || !isfinite(check->ratio))
        return "";
    shortest_write(powers, check->ratio, number);
    return number;
}

static void span(struct text *out, const char *of_class, const char *words) {
    text_print(out, "<span class=\"%s\">%s</span>\n", of_class, markup(out->arena, words));
}

static void bar(struct text *out, const struct check *check) {
    double share = isfinite(check->ratio) ? fmin(check->ratio, 1.0) : 1.0;
    if (!has_no_rule(check))
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
        text_print(out, "<div><span>%s</span><code>%s", markup(out->arena, step->words),
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

/* On paper too its working is shown: there nothing can be opened. */
static void one_check(struct text *out, const struct check *check, bool on_paper,
                      enum unit_system units, struct powers_of_ten *powers) {
    struct arena *arena = out->arena;
    text_print(
        out,
        "<details class=\"check %s%s\" data-id=\"%s\" data-ratio=\"%s\" data-verdict=\"%s\">\n"
        "<summary>\n",
        verdict_name(check->verdict), on_paper ? " on-paper" : "", markup(arena, check->id),
        exact(arena, powers, check), verdict_name(check->verdict));
    span(out, "place", check_place(check));
    span(out, "numbers", numbers_in_words(arena, check, units));
    span(out, "ratio", has_no_rule(check) ? "" : ratio_in_words(arena, check));
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

/* Whether it stands before every other of its kind: of those with a ratio the worst. */
static bool is_first_of_kind(const struct result *result, const struct check *check) {
    for (const struct check *k = result->checks.items; k < check; k++)
        if (strcmp(k->kind, check->kind) == 0 && has_no_rule(k) == has_no_rule(check))
            return false;
    return true;
}

/* The checks of one question, in their order. */
static const struct check **checks_that_answer(struct arena *arena, const struct result *result,
                                               int question, size_t *count) {
    const struct check **found = ARENA_ARRAY(arena, const struct check *, result->checks.count);
    *count = 0;
    for (size_t k = 0; k < result->checks.count; k++)
        if (question_of(result->checks.items[k].kind) == question)
            found[(*count)++] = &result->checks.items[k];
    return found;
}

/* How many stand open to view: all that do not simply hold, and the next ones up to SHOWN_LEAST;
 * one alone is not worth folding away. */
static size_t shown_at_once(const struct check *const *checks, size_t count) {
    size_t shown = 0;
    while (shown < count && (shown < SHOWN_LEAST || checks[shown]->verdict != VERDICT_OK))
        shown++;
    return count - shown == 1 ? count : shown;
}

static void answer(struct text *out, const struct result *result, int question,
                   struct powers_of_ten *powers) {
    size_t count;
    const struct check **checks = checks_that_answer(out->arena, result, question, &count);
    size_t shown = shown_at_once(checks, count);
    if (!count)
        return;
    page_heading(out, question_words(question));
    for (size_t k = 0; k < count; k++) {
        if (k == shown)
            text_print(out,
                       "<details class=\"rest\">\n<summary>%zu more hold, with %s of their limit "
                       "at most</summary>\n",
                       count - shown, ratio_in_words(out->arena, checks[k]));
        one_check(out, checks[k], is_first_of_kind(result, checks[k]), result->frame->units,
                  powers);
    }
    text_add(out, shown < count ? "</details>\n" : "");
}

void page_checks(struct text *out, const struct page *page) {
    const struct result *result = page->drawing->result;
    struct powers_of_ten *powers = ARENA_NEW(out->arena, struct powers_of_ten);
    for (int question = 0; question < question_count(); question++)
        answer(out, result, question, powers);
    if (!result->checks.count)
        return;
    page_paragraph(out, "quiet",
                   "Percent and times tell how much of its limit is used. A check opens and shows "
                   "its working; on paper the worst check of each kind does, and those that stand "
                   "open when it is printed.");
    if (!result->frame->has_combine)
        page_paragraph(out, "quiet", "In the names of loads " COMBINATION_LETTERS ".");
}
