#include "report/check_text.h"

#include "report/layout.h"
#include "report/summary.h"
#include "report/visible.h"
#include "report/words.h"

#include <string.h>

enum { PLACE_MOST = 30, RATIO_WIDTH = 10, VERDICT_WIDTH = 7, UNDER = 6 };
static const char UNDER_SPACES[] = "      ";

struct columns {
    size_t widths[4];
    size_t count;
};

static struct columns columns_for(const struct result *result) {
    size_t place = 0;
    for (size_t k = 0; k < result->checks.count; k++) {
        size_t width = text_width(result->checks.items[k].place);
        if (width > place && width <= PLACE_MOST)
            place = width;
    }
    size_t rest = LINE_WIDTH - 2 - 3 * 2 - RATIO_WIDTH - VERDICT_WIDTH - place;
    return (struct columns){{place, rest < 48 ? rest : 48, RATIO_WIDTH, VERDICT_WIDTH}, 4};
}

static void check_row(struct text *text, const struct check *check, const struct columns *columns,
                      enum unit_system units, bool all) {
    struct arena *arena = text->arena;
    const char *cells[] = {check_place(check), numbers_in_words(arena, check, units),
                           ratio_in_words(arena, check), verdict_in_words(check->verdict)};
    row_of_cells(text, 2, cells, columns->widths, columns->count);
    const char *beside = quantity_print(arena, check->beside.value, check->beside.kind, units);
    if (check->beside.words[0] && !prints_as_nothing(beside))
        paragraph(text, UNDER_SPACES, UNDER,
                  arena_print(arena, "Beside that: %s %s.", check->beside.words, beside));
    if (check->verdict != VERDICT_OK && check->advice[0])
        paragraph(text, UNDER_SPACES, UNDER, check->advice);
    if (check->verdict != VERDICT_OK || all)
        paragraph(text, UNDER_SPACES, UNDER,
                  check->combination[0]
                      ? arena_print(arena, "[%s] under %s", check->id, check->combination)
                      : arena_print(arena, "[%s]", check->id));
}

/* Kinds of which one check that holds was shown. */
struct kinds {
    const char **items;
    size_t count, capacity;
};

static bool shown_before(struct arena *arena, struct kinds *kinds, const char *kind) {
    for (size_t k = 0; k < kinds->count; k++)
        if (strcmp(kinds->items[k], kind) == 0)
            return true;
    ARRAY_PUSH(arena, kinds, kind);
    return false;
}

/* Checks that fail alike, at other places of the same kind, are told once. */
static bool told_alike(const struct check *one, const struct check *other) {
    return one->verdict != VERDICT_OK && one->verdict == other->verdict &&
           strcmp(one->kind, other->kind) == 0 && strcmp(one->governs, other->governs) == 0 &&
           strcmp(one->advice, other->advice) == 0;
}

static bool told_before(const struct result *result, size_t index) {
    const struct check *checks = result->checks.items;
    for (size_t k = 0; k < index; k++)
        if (told_alike(&checks[k], &checks[index]))
            return true;
    return false;
}

/* "and 11 more like it: back-2 on post-bl at bl2, ..." */
static void more_alike(struct text *text, const struct result *result, size_t index) {
    enum { NAMED = 3 };
    const struct check *checks = result->checks.items;
    const char *names = "";
    size_t count = 0;
    for (size_t k = index + 1; k < result->checks.count; k++) {
        if (!told_alike(&checks[index], &checks[k]))
            continue;
        const char *place = checks[k].place[0] ? checks[k].place : checks[k].where;
        if (count++ < NAMED)
            names = *names ? arena_print(text->arena, "%s; %s", names, place) : place;
    }
    if (count)
        paragraph(text, UNDER_SPACES, UNDER,
                  arena_print(text->arena, "and %zu more like it: %s%s", count, names,
                              count > NAMED ? " ... (--all shows them)" : ""));
}

static void question_text(struct text *text, const struct result *result, int question,
                          const struct columns *columns, bool all) {
    struct kinds kinds = {0};
    size_t shown = 0, hidden = 0;
    for (size_t k = 0; k < result->checks.count; k++) {
        const struct check *check = &result->checks.items[k];
        if (question_of(check->kind) != question)
            continue;
        if (!all && check->verdict == VERDICT_OK &&
            shown_before(text->arena, &kinds, check->kind)) {
            hidden++;
            continue;
        }
        if (!all && told_before(result, k))
            continue;
        if (!shown++)
            text_print(text, "\n%s\n", question_words(question));
        check_row(text, check, columns, result->frame->units, all);
        if (!all)
            more_alike(text, result, k);
    }
    if (hidden)
        text_print(text, "  and %zu more that hold%s (--all shows %s)\n", hidden,
                   hidden == 1 ? "s" : "", hidden == 1 ? "it" : "them");
}

static void hints(struct text *text, const struct result *result,
                  const struct check_text_options *options) {
    struct arena *arena = text->arena;
    bool names = options->all || result->verdict != VERDICT_OK;
    text_add(text, "\n");
    paragraph(text, "", 0,
              arena_print(arena,
                          "Percent and times tell how much of its limit is used. Judged by %s.",
                          result->basis));
    if (!names)
        return;
    if (!result->frame->has_combine)
        paragraph(text, "", 0, "In the names of loads " COMBINATION_LETTERS ".");
    bool piped = strcmp(options->frame_name, "-") == 0; /* what was piped in is gone */
    paragraph(text, "", 0,
              arena_print(arena, "How a number comes about: batten why %s %s",
                          piped ? "FRAME.yaml" : visible(arena, options->frame_name),
                          result->checks.items[0].id));
}

void check_text(struct text *text, const struct result *result,
                const struct check_text_options *options) {
    if (result->verdict == VERDICT_FOLDS || result->verdict == VERDICT_FAILED)
        fold_text(text, result);
    else {
        paragraph(text, "", 0, summary_in_words(text->arena, result));
        struct columns columns = columns_for(result);
        for (int question = 0; question < question_count(); question++)
            question_text(text, result, question, &columns, options->all);
        if (result->checks.count)
            hints(text, result, options);
    }
    cautions_text(text, result);
}
