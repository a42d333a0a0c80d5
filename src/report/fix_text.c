#include "report/fix_text.h"

#include "report/check_text.h"
#include "report/layout.h"
#include "report/visible.h"
#include "units/decimal.h"

#include <math.h>
#include <string.h>

enum { NAMED = 3 };

static const char *plural(size_t count) {
    return count == 1 ? "" : "s";
}

/* "lower shelf, rail-1 (sag with creep); ... and 4 more" */
static const char *named(struct arena *arena, const struct fix_check *checks, size_t count) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < count && k < NAMED; k++) {
        const char *id = *checks[k].id ? arena_print(arena, " [%s]", checks[k].id) : "";
        text_print(&text, "%s%s%s", k ? "; " : "", checks[k].words, id);
    }
    if (count > NAMED)
        text_print(&text, "; and %zu more", count - NAMED);
    return text_string(&text);
}

static size_t counted(const struct fix_answer *answer, enum verdict verdict) {
    size_t count = 0;
    for (size_t k = 0; k < answer->failing.count; k++)
        count += answer->failing.items[k].verdict == verdict;
    return count;
}

static const char *state(struct arena *arena, const struct fix_answer *answer) {
    size_t fail = counted(answer, VERDICT_FAILS), open = counted(answer, VERDICT_NOT_COVERED);
    if (answer->before == VERDICT_FOLDS)
        return "folds or tips as described";
    if (!fail && !open)
        return "has nothing that can be judged";
    if (!fail)
        return arena_print(arena, "cannot be judged as described: %zu check%s no published rule",
                           open, open == 1 ? " has" : "s have");
    if (!open)
        return arena_print(arena, "does not hold as described: %zu check%s", fail,
                           fail == 1 ? " fails" : "s fail");
    return arena_print(arena, "does not hold as described: %zu check%s, %zu %s no published rule",
                       fail, fail == 1 ? " fails" : "s fail", open, open == 1 ? "has" : "have");
}

static const char *summary(struct arena *arena, const struct fix_answer *answer,
                           const char *title) {
    if (answer->trouble)
        return arena_print(arena, "%s: %s", title, answer->trouble);
    if (answer->passes_already)
        return arena_print(arena, "%s holds as it is: every check passes, nothing needs a change.",
                           title);
    if (!answer->found)
        return arena_print(arena, "%s %s. Nothing in the catalogue mends all of it.", title,
                           state(arena, answer));
    return arena_print(arena, "%s %s. With %s every check passes.", title, state(arena, answer),
                       answer->change_count == 1
                           ? "this change"
                           : arena_print(arena, "these %zu changes", answer->change_count));
}

/* Of the bill: "3.20 more". */
static const char *money(struct arena *arena, double amount) {
    long cents = lround(100.0 * fabs(amount));
    if (cents == 0)
        return "nothing more";
    return arena_print(arena, "%ld.%02ld %s", cents / 100, cents % 100,
                       amount < 0 ? "less" : "more");
}

static void changes_section(struct text *text, const struct fix_answer *answer) {
    struct arena *arena = text->arena;
    text_add(text, "\nWhat to change\n");
    for (size_t k = 0; k < answer->change_count; k++) {
        const struct fix_change *change = &answer->changes[k];
        paragraph(text, arena_print(arena, "  %zu. ", k + 1), 5, change->what);
        if (isfinite(change->cost))
            paragraph(text, "     ", 5, arena_print(arena, "costs %s", money(arena, change->cost)));
        if (change->mend_count)
            paragraph(text, "     ", 5,
                      arena_print(arena, "without it: %s",
                                  named(arena, change->mends, change->mend_count)));
    }
}

static const char *counts_as(struct arena *arena, const char *row) {
    return decimal_significant(arena, table_constant(row).value, 3);
}

/* Said where some is laid. */
static const char *ballast_words(struct arena *arena, const struct fix_answer *answer) {
    for (size_t k = 0; k < answer->change_count; k++)
        if (answer->changes[k].kind == CHANGE_BALLAST)
            return arena_print(arena, ", a pound of ballast %s", counts_as(arena, "fix-ballast"));
    return "";
}

static const char *cost_sentence(struct arena *arena, const struct fix_answer *answer) {
    const char *effort = decimal_fixed(arena, answer->effort, 2);
    if (isfinite(answer->cost))
        return arena_print(arena,
                           "By the prices of the file all of it costs %s than as described "
                           "(boards, sheets and parts as batten cut counts them).",
                           money(arena, answer->cost));
    return arena_print(arena,
                       "What it costs is not known: not everything in it has a price under prices: "
                       "in the file. Wood and work come to %s board feet more: wood by its volume, "
                       "other things by what they are like (a piece to cut and fit %s, a screw %s, "
                       "a bolt %s, a gusset %s, a change %s%s).",
                       effort, counts_as(arena, "fix-piece"), counts_as(arena, "fix-screw"),
                       counts_as(arena, "fix-bolt"), counts_as(arena, "fix-gusset"),
                       counts_as(arena, "fix-change"), ballast_words(arena, answer));
}

static const char *search_sentence(struct arena *arena, const struct fix_answer *answer) {
    const char *tried = arena_print(
        arena, "%zu changed description%s %s judged, out of a catalogue of %zu single changes",
        answer->tried, plural(answer->tried), answer->tried == 1 ? "was" : "were", answer->options);
    const char *less = answer->by_price ? "costs less" : "takes less";
    if (answer->found && answer->proved)
        return arena_print(arena,
                           "%s. No set of them that %s passes: all of those were tried or cannot "
                           "pass.",
                           tried, less);
    if (answer->found)
        return arena_print(arena, "%s. No set that %s was found, but not all of those were tried.",
                           tried, less);
    if (answer->proved)
        return arena_print(arena, "%s. No set of them passes.", tried);
    return arena_print(arena, "%s. Not all sets were tried.", tried);
}

static void left_section(struct text *text, const struct fix_answer *answer) {
    text_print(text, "\nWhat remains\n");
    for (size_t k = 0; k < answer->left.count && k < 10; k++)
        paragraph(text, "  - ", 4, named(text->arena, &answer->left.items[k], 1));
    if (answer->left.count > 10)
        text_print(text, "  and %zu more\n", answer->left.count - 10);
    paragraph(
        text, "  ", 2,
        "Tried were: larger and better sticks, sticks on edge, other joints, slats, rails and "
        "legs under shelves, diagonals where batten brace puts them, hold-downs, ballast, "
        "thicker sheets, more and thicker screws in sheets and hinges, fewer trays.");
}

void fix_text(struct text *text, const struct fix_answer *answer, const char *written) {
    struct arena *arena = text->arena;
    struct result said = {.frame = answer->frame};
    for (size_t k = 0; k < answer->cautions.count; k++)
        ARRAY_PUSH(arena, &said.cautions, answer->cautions.items[k]);
    paragraph(text, "", 0, summary(arena, answer, title_in_words(arena, &said)));
    if (answer->found) {
        changes_section(text, answer);
        text_add(text, "\n");
        paragraph(text, "", 0, cost_sentence(arena, answer));
    } else if (!answer->passes_already && !answer->trouble) {
        left_section(text, answer);
        text_add(text, "\n");
    }
    if (!answer->passes_already && !answer->trouble)
        paragraph(text, "", 0, search_sentence(arena, answer));
    if (written)
        paragraph(text, "", 0,
                  arena_print(arena, "The changed description is in %s.", visible(arena, written)));
    else if (answer->found)
        paragraph(text, "", 0, "--output FILE writes the changed description.");
    if (answer->notes.count)
        text_add(text, "\nWhat else to know\n");
    for (size_t k = 0; k < answer->notes.count; k++)
        paragraph(text, "  - ", 4, visible(arena, answer->notes.items[k]));
    cautions_text(text, &said);
}
