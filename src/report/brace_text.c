#include "report/brace_text.h"

#include "base/vector.h"
#include "report/brace_words.h"
#include "report/check_text.h"
#include "report/layout.h"
#include "report/visible.h"

#include <math.h>

enum { WAYS_SHOWN = 20, PLACES_SHOWN = 6, SHEET_WIDTH = 24 };

/* "back, lower bay; left, lower bay"; "" where there are too many for a sentence. */
static const char *places(struct arena *arena, const struct brace_answer *answer) {
    struct text text = text_new(arena);
    if (answer->brace_count > PLACES_SHOWN)
        return "";
    for (size_t k = 0; k < answer->brace_count; k++)
        text_print(&text, "%s%s", k ? "; " : ": ", answer->braces[k].where);
    return text_string(&text);
}

/* How it folds and leans, behind its name. */
static const char *state_in_words(struct arena *arena, const struct brace_answer *answer) {
    const char *soft = soft_in_words(arena, answer);
    const char *leans = soft[0]              ? arena_print(arena, "leans too far %s", soft)
                        : answer->lean_count ? "leans no farther than it may"
                                             : "";
    if (!answer->motion_count)
        return arena_print(arena, "cannot fold%s%s",
                           soft[0]    ? ", but "
                           : leans[0] ? " and "
                                      : "",
                           leans);
    const char *folds =
        arena_print(arena, "can fold in %s", counted(arena, answer->motion_count, "way"));
    if (folds_when_pushed(answer))
        return arena_print(arena, "%s and folds up when somebody leans on it%s%s", folds,
                           soft[0] ? "; it " : "", soft[0] ? leans : "");
    return arena_print(arena, "%s, and only its fastenings keep it square%s%s", folds,
                       leans[0] ? "; it " : "", leans);
}

static void summary_text(struct text *text, const struct brace_answer *answer) {
    struct arena *arena = text->arena;
    struct result result = {.frame = answer->frame};
    const char *title = title_in_words(arena, &result);
    if (!answer->frame->members.count) {
        paragraph(text, "", 0, arena_print(arena, "%s: nothing to brace.", title));
        return;
    }
    const char *state = state_in_words(arena, answer);
    size_t count = answer->brace_count;
    const char *end = !something_to_brace(answer) ? "There is nothing to brace."
                      : answer->fewest < 0
                          ? "No set of diagonals in its bays stops that."
                          : arena_print(arena, "%s %s that%s.", counted(arena, count, "diagonal"),
                                        count == 1 ? "stops" : "stop", places(arena, answer));
    paragraph(text, "", 0, arena_print(arena, "%s %s. %s", title, state, end));
}

/* ---- can it fold ---- */

static const char *ways_in_words(struct arena *arena, const struct brace_answer *answer) {
    int left = (int)answer->motion_count;
    int wood = answer->ways - left, clear = left - answer->ways_with_panels;
    if (answer->ways < 1)
        return "No: even with every fastening taken as a hinge nothing gives way.";
    struct text text = text_new(arena);
    text_print(&text, "With every fastening taken as a hinge it can fold in %s.",
               counted(arena, (size_t)answer->ways, "way"));
    if (wood > 0)
        text_print(&text, " Its wood sheets stop %s.",
                   left        ? arena_print(arena, "%d of them", wood)
                   : wood == 1 ? "it"
                               : "them all");
    if (clear > 0)
        text_print(&text, " Its clear sheets would stop %d %s, but do not build on that.", clear,
                   wood > 0 ? "more" : "of them");
    if (left && wood > 0)
        text_add(&text, " What is left:");
    return text_string(&text);
}

static void fold_section(struct text *text, const struct brace_answer *answer) {
    text_add(text, "\nCan it fold?\n");
    paragraph(text, "  ", 2, ways_in_words(text->arena, answer));
    for (size_t k = 0; k < answer->motion_count && k < WAYS_SHOWN; k++)
        paragraph(text, arena_print(text->arena, "  %zu. ", k + 1), 5, answer->motions[k].sentence);
    if (answer->motion_count > WAYS_SHOWN)
        text_print(text, "  and %zu more (--json has them all)\n",
                   answer->motion_count - WAYS_SHOWN);
}

/* ---- where the diagonals go ---- */

static const char *stops_in_words(struct arena *arena, const struct brace_answer *answer,
                                  const struct brace_choice *brace) {
    if (brace->stops < 0)
        return answer->soft_count == 1
                   ? arena_print(arena, "keeps it from leaning %s", soft_in_words(arena, answer))
                   : "keeps it from leaning too far";
    if (answer->motion_count == 1)
        return "stops the fold";
    return arena_print(arena, "stops fold %d", brace->stops + 1);
}

/* What its screws hold of that force. */
static const char *screws_in_words(struct arena *arena, const struct brace_choice *brace,
                                   enum unit_system units) {
    if (isnan(brace->screws_hold))
        return "";
    return arena_print(arena, ", its screws hold %s%s",
                       strength_in_words(arena, brace->screws_hold, units),
                       brace->force <= brace->screws_hold ? "" : ": too little, use more");
}

static void brace_row(struct text *text, const struct brace_answer *answer, size_t k) {
    struct arena *arena = text->arena;
    enum unit_system units = answer->frame->units;
    const struct brace_choice *brace = &answer->braces[k];
    const struct joint *joints = answer->frame->joints.items;
    const struct joint *from = &joints[brace->from], *to = &joints[brace->to];
    double along[3];
    vector_between(from->at, to->at, along);
    const char *force =
        isfinite(brace->force)
            ? arena_print(arena, ", and carries %s%s", force_in_words(arena, brace->force, units),
                          screws_in_words(arena, brace, units))
            : "";
    paragraph(text, arena_print(arena, "  %zu. ", k + 1), 5,
              arena_print(arena, "from %s to %s (%s), %s from joint to joint: %s%s", from->name,
                          to->name, brace->where,
                          quantity_print_length(arena, vector_length(along), units),
                          stops_in_words(arena, answer, brace), force));
}

/* A diagonal stops at most one fold, so that many are needed whatever was tried. */
static const char *how_sure(const struct brace_answer *answer) {
    if (answer->proved)
        return "Fewer would not do.";
    return answer->brace_count == answer->motion_count
               ? "Fewer would not do; of sets of this many not all were tried, so others may be "
                 "stiffer."
               : "Not every set was tried: fewer might do.";
}

/* Said once for all of them. */
static const char *screws_without_value(const struct brace_answer *answer) {
    for (size_t k = 0; k < answer->brace_count; k++)
        if (isnan(answer->braces[k].screws_hold))
            return " What screws may carry of it has no published value here: they do not reach "
                   "deep enough, or their connection is not said.";
    return "";
}

static void braces_section(struct text *text, const struct brace_answer *answer) {
    if (!answer->brace_count)
        return;
    struct arena *arena = text->arena;
    text_add(text, "\nWhere do the diagonals go?\n");
    for (size_t k = 0; k < answer->brace_count; k++)
        brace_row(text, answer, k);
    const char *stick = answer->brace_stick ? answer->brace_stick : "";
    paragraph(text, "  ", 2,
              arena_print(arena,
                          "%s screwed at both ends. %s The force is what it carries when somebody "
                          "leans on the top.%s",
                          stick[0] ? arena_print(arena, "Each is a stick of kind %s,", stick)
                                   : "Each is a stick",
                          how_sure(answer), screws_without_value(answer)));
}

/* ---- what else would do ---- */

/* "moves 0.3 in left-right and 2 in front-back, too far" */
static void movements_text(struct text *text, const struct alternative *other,
                           enum unit_system units) {
    const char *before = "; moves";
    for (int axis = 0; axis < 2; axis++) {
        if (!isfinite(other->lean[axis]))
            continue;
        text_print(text, "%s %s %s%s", before,
                   movement_in_words(text->arena, other->lean[axis], units), direction_words(axis),
                   other->over[axis] ? " (too far)" : "");
        before = " and";
    }
    for (int axis = 0; axis < 2; axis++)
        if (!isfinite(other->lean[axis]) && other->over[axis])
            text_print(text, "; folds up %s", direction_words(axis));
}

static const char *outcome(struct arena *arena, const struct alternative *other,
                           enum unit_system units) {
    struct text text = text_new(arena);
    bool leans = other->over[0] || other->over[1];
    text_add(&text, alternative_is_enough(other) ? "enough"
                    : leans                      ? "not enough"
                                                 : "stiff enough, but by its fastenings alone");
    if (other->ways)
        text_print(&text, "; %s to fold left", counted(arena, (size_t)other->ways, "way"));
    movements_text(&text, other, units);
    return text_string(&text);
}

static void alternatives_section(struct text *text, const struct brace_answer *answer) {
    if (answer->alternative_count)
        text_print(text, "\nWhat else %s do?\n", answer->brace_count ? "would" : "might");
    for (size_t k = 0; k < answer->alternative_count; k++)
        paragraph(
            text, "  - ", 4,
            arena_print(text->arena, "%s: %s", answer->alternatives[k].words,
                        outcome(text->arena, &answer->alternatives[k], answer->frame->units)));
}

/* ---- which sheets count ---- */

static void sheets_section(struct text *text, const struct brace_answer *answer) {
    static const size_t widths[] = {SHEET_WIDTH, LINE_WIDTH - 4 - SHEET_WIDTH};
    struct arena *arena = text->arena;
    bool clear_left_out = false;
    if (answer->sheet_count)
        text_add(text, "\nWhich sheets count?\n");
    for (size_t k = 0; k < answer->sheet_count; k++) {
        const struct sheet_remark *sheet = &answer->sheets[k];
        const char *words =
            !sheet->counts ? arena_print(arena, "does not count: %s", sheet->reason)
            : sheet->clear ? "counts as a clear sheet only: shown, and nothing above builds on it"
                           : "counts";
        const char *name = answer->frame->panels.items[sheet->panel].name;
        row_of_cells(text, 2, (const char *const[]){name, words}, widths, 2);
        clear_left_out |= sheet->clear && !sheet->counts;
    }
    if (clear_left_out)
        paragraph(text, "  ", 2,
                  "A clear sheet is left out because its holes are larger than its screws, and it "
                  "buckles and creeps; only wood panels screwed on all edges count.");
}

static void notes_section(struct text *text, const struct brace_answer *answer) {
    if (answer->notes.count)
        text_add(text, "\nWhat else to know\n");
    for (size_t k = 0; k < answer->notes.count; k++)
        paragraph(text, "  - ", 4, visible(text->arena, answer->notes.items[k]));
}

void brace_text(struct text *text, const struct brace_answer *answer) {
    summary_text(text, answer);
    if (answer->frame->members.count) {
        fold_section(text, answer);
        lean_section(text, answer);
    }
    braces_section(text, answer);
    alternatives_section(text, answer);
    sheets_section(text, answer);
    notes_section(text, answer);
    struct result result = {.frame = answer->frame};
    brace_cautions(text->arena, answer, &result);
    cautions_text(text, &result);
}
