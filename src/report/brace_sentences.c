#include "report/brace_sentences.h"

#include "base/vector.h"
#include "report/brace_words.h"
#include "report/check_text.h"

#include <math.h>

enum { PLACES_SHOWN = 6 };

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

const char *brace_summary(struct arena *arena, const struct brace_answer *answer) {
    struct result result = {.frame = answer->frame};
    const char *title = title_in_words(arena, &result);
    if (!answer->frame->members.count)
        return arena_print(arena, "%s: nothing to brace.", title);
    const char *state = state_in_words(arena, answer);
    size_t count = answer->brace_count;
    const char *end = !something_to_brace(answer) ? "There is nothing to brace."
                      : answer->fewest < 0
                          ? "No set of diagonals in its bays stops that."
                          : arena_print(arena, "%s %s that%s.", counted(arena, count, "diagonal"),
                                        count == 1 ? "stops" : "stop", places(arena, answer));
    return arena_print(arena, "%s %s. %s", title, state, end);
}

const char *brace_ways(struct arena *arena, const struct brace_answer *answer) {
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

const char *brace_place(struct arena *arena, const struct brace_answer *answer, size_t k) {
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
    return arena_print(arena, "from %s to %s (%s), %s from joint to joint: %s%s", from->name,
                       to->name, brace->where,
                       quantity_print_length(arena, vector_length(along), units),
                       stops_in_words(arena, answer, brace), force);
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

const char *brace_remark(struct arena *arena, const struct brace_answer *answer) {
    const char *stick = answer->brace_stick ? answer->brace_stick : "";
    return arena_print(arena,
                       "%s screwed at both ends. %s The force is what it carries when somebody "
                       "leans on the top.%s",
                       stick[0] ? arena_print(arena, "Each is a stick of kind %s,", stick)
                                : "Each is a stick",
                       how_sure(answer), screws_without_value(answer));
}

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

const char *alternative_outcome(struct arena *arena, const struct alternative *other,
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

const char *sheet_in_words(struct arena *arena, const struct sheet_remark *sheet) {
    if (!sheet->counts)
        return arena_print(arena, "does not count: %s", sheet->reason);
    return sheet->clear ? "counts as a clear sheet only: shown, and nothing above builds on it"
                        : "counts";
}

const char *clear_sheets_in_words(const struct brace_answer *answer) {
    for (size_t k = 0; k < answer->sheet_count; k++)
        if (answer->sheets[k].clear && !answer->sheets[k].counts)
            return "A clear sheet is left out because its holes are larger than its screws, and it "
                   "buckles and creeps; only wood panels screwed on all edges count.";
    return "";
}
