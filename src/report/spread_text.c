#include "report/spread_text.h"

#include "report/layout.h"
#include "tables/tables.h"
#include "units/decimal.h"

enum { UNDER = 6 };
static const char UNDER_SPACES[] = "      ";

const char *share_in_words(struct arena *arena, size_t failed, size_t builds) {
    enum { HUNDRED = 100 };
    if (builds <= HUNDRED || failed == 0 || failed == builds)
        return arena_print(arena, "in %zu of %zu build%s", failed, builds, builds == 1 ? "" : "s");
    size_t rounded = (HUNDRED * failed + builds / 2) / builds;
    if (rounded == 0)
        return "in fewer than 1 of 100 builds";
    if (rounded == HUNDRED)
        return "in more than 99 of 100 builds";
    return arena_print(arena, "in %zu of 100 builds", rounded);
}

static const char *input_in_words(struct arena *arena, const struct spread_input *input) {
    switch (input->kind) {
    case SPREAD_STIFFNESS:
        return arena_print(arena, "how stiff %s is", input->of);
    case SPREAD_STRENGTH:
        return arena_print(arena, "how strong %s is", input->of);
    case SPREAD_JOINTS:
        return arena_print(arena, "how stiff the joints of %s are", input->of);
    default:
        return arena_print(arena, "how heavy the trays of %s are", input->of);
    }
}

static void matters(struct text *text, const struct spread_answer *answer,
                    const struct spread_check *check) {
    struct arena *arena = text->arena;
    const char *list = "";
    for (size_t k = 0; k < check->matter_count; k++)
        list = arena_print(arena, "%s%s%s (%s)", list, k ? "; " : "",
                           input_in_words(arena, &answer->inputs[check->matters[k].input]),
                           decimal_fixed(arena, check->matters[k].rank_correlation, 2));
    if (*list)
        paragraph(text, UNDER_SPACES, UNDER, arena_print(arena, "matters most: %s", list));
}

static void line(struct text *text, const struct spread_answer *answer,
                 const struct spread_check *check) {
    struct arena *arena = text->arena;
    paragraph(text, "  ", 4,
              arena_print(arena, "%s  %s [%s]",
                          share_in_words(arena, check->failed, answer->builds), check->place,
                          check->id));
    if (check->not_covered)
        paragraph(text, UNDER_SPACES, UNDER,
                  arena_print(arena, "no published rule covers it %s",
                              share_in_words(arena, check->not_covered, answer->builds)));
    matters(text, answer, check);
}

/* What was counted beside the lines. */
static void rest(struct text *text, const struct spread_answer *answer, bool all) {
    size_t uncovered = 0, never = 0, still = 0;
    for (size_t k = 0; k < answer->checks.count; k++) {
        const struct spread_check *check = &answer->checks.items[k];
        bool none = check->not_covered == answer->builds;
        uncovered += none;
        never += !none && check->failed == 0;
        still += !none && !check->changes;
    }
    struct arena *arena = text->arena;
    if (never && !all)
        paragraph(text, "  ", 2,
                  arena_print(arena, "checks that fail in none: %zu (--all shows them)", never));
    if (uncovered)
        paragraph(text, "  ", 2,
                  arena_print(arena, "checks without a published rule, left out: %zu", uncovered));
    if (still)
        paragraph(text, "  ", 2,
                  arena_print(arena,
                              "checks that nothing here reaches, the same in every build: %zu",
                              still));
}

static const char *percent(struct arena *arena, const char *row) {
    return decimal_fixed(arena, 100.0 * table_constant(row).value, 0);
}

static const char *weight(struct arena *arena, const char *row, enum unit_system units) {
    return quantity_print(arena, table_constant(row).value, QUANTITY_WEIGHT, units);
}

static void note(struct text *text, const char *words) {
    paragraph(text, "  - ", 4, words);
}

static void notes(struct text *text, enum unit_system units) {
    struct arena *arena = text->arena;
    note(text,
         arena_print(arena,
                     "Each build has its own boards, joints and trays, and every check is "
                     "made for it. The stiffness of wood varies by %s percent (lumber graded "
                     "by eye), strengths as published for clear wood: bending %s, push %s, "
                     "pull %s, shear %s, pressure across the grain %s. Sticks with knots vary "
                     "more.",
                     percent(arena, "spread-E"), percent(arena, "spread-Fb"),
                     percent(arena, "spread-Fc"), percent(arena, "spread-Ft"),
                     percent(arena, "spread-Fv"), percent(arena, "spread-Fcp")));
    note(text, "A strength in the tables is what 19 of 20 sticks reach (pressure across the grain: "
               "an average), less what is taken off for safety and time. A stick of a build has "
               "its own strength, and the same is taken off it: to fail here is to pass its own "
               "limit, not to break.");
    note(text, arena_print(arena,
                           "All joints of one entry of connections vary together between their "
                           "low and high estimate; wet 1020 trays weigh between %s and %s, alike "
                           "on one shelf. Stiffness and strength of a stick are drawn apart.",
                           weight(arena, "spread-tray-low", units),
                           weight(arena, "spread-tray-high", units)));
    note(text, "Held as described, because no variability is published for it here: sticks of your "
               "own numbers, slats, what screws hold, weight of wood, sheets, other trays and "
               "loads, ground, snow and wind, creep.");
    note(text, "This is no reliability analysis: it tells which checks are near, and what they "
               "hang on.");
}

void spread_text(struct text *text, const struct spread_answer *answer, enum unit_system units,
                 bool all) {
    struct arena *arena = text->arena;
    text_add(text, "\nHow sure is that?\n");
    paragraph(text, "  ", 2,
              arena_print(arena, "%zu build%s (seed %lu): at least one check fails %s.",
                          answer->builds, answer->builds == 1 ? "" : "s",
                          (unsigned long)answer->seed,
                          share_in_words(arena, answer->failed, answer->builds)));
    if (answer->fell)
        paragraph(text, "  ", 2,
                  arena_print(arena,
                              "It folds, tips or cannot be computed %s: every check counts as "
                              "failed there.",
                              share_in_words(arena, answer->fell, answer->builds)));
    if (!answer->input_count)
        paragraph(text, "  ", 2, "Nothing in this frame has a published variability.");
    for (size_t k = 0; k < answer->checks.count; k++)
        if (answer->checks.items[k].failed || (all && answer->checks.items[k].not_covered == 0))
            line(text, answer, &answer->checks.items[k]);
    rest(text, answer, all);
    if (answer->checks.items && answer->builds >= SPREAD_FEWEST_TO_RANK)
        paragraph(text, "  ", 2,
                  "The number behind what matters is a rank correlation: 1 or -1 decides alone, 0 "
                  "not at all; below 0, less of it is worse. What chance alone could make is not "
                  "named.");
    notes(text, units);
}
