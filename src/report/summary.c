#include "report/summary.h"

#include "report/check_text.h"
#include "report/words.h"

struct tally {
    size_t of[VERDICT_FAILED + 1];
    size_t all;
};

static struct tally count_verdicts(const struct result *result) {
    struct tally tally = {.all = result->checks.count};
    for (size_t k = 0; k < result->checks.count; k++)
        tally.of[result->checks.items[k].verdict]++;
    return tally;
}

/* ", 3 are close to their limit" */
static const char *some(struct arena *arena, size_t count, const char *one, const char *more) {
    if (!count)
        return "";
    return arena_print(arena, ", %zu %s", count, count == 1 ? one : more);
}

static const char *worst_in_words(struct arena *arena, const struct check *worst) {
    const char *place = worst->place[0] ? worst->place : worst->where;
    if (worst->verdict == VERDICT_NOT_COVERED)
        return arena_print(arena, "%s (%s)", place, subject_in_words(worst));
    return arena_print(arena, "%s (%s, %s)", place, subject_in_words(worst),
                       share_of_limit(arena, worst));
}

/* One sentence: holds or not, how many do not, and where the worst is. */
static const char *judged_summary(struct arena *arena, const struct result *result) {
    struct tally tally = count_verdicts(result);
    const char *title = title_in_words(arena, result);
    if (!tally.all)
        return arena_print(arena, "%s: there was nothing to check.", title);
    if (result->verdict == VERDICT_NOT_COVERED && !result->combinations.count)
        return arena_print(
            arena,
            "%s: no combination of loads has anything in it, so whether it holds was "
            "not checked.",
            title);
    const char *worst = worst_in_words(arena, &result->checks.items[0]);
    size_t fails = tally.of[VERDICT_FAILS], close = tally.of[VERDICT_CLOSE];
    size_t without = tally.of[VERDICT_NOT_COVERED];
    const char *are_close =
        some(arena, close, "is close to its limit", "are close to their limits");
    const char *no_rule = some(arena, without, "has no published rule", "have no published rule");
    const char *checks = tally.all == 1 ? "check" : "checks";
    if (fails)
        return arena_print(arena, "%s does not hold: %zu of %zu %s %s%s%s; the worst is %s.", title,
                           fails, tally.all, checks, fails == 1 ? "fails" : "fail", no_rule,
                           are_close, worst);
    if (without)
        return arena_print(arena,
                           "%s: nothing fails, but %zu of %zu %s %s no published rule and cannot "
                           "be passed%s; look first at %s.",
                           title, without, tally.all, checks, without == 1 ? "has" : "have",
                           are_close, worst);
    if (close)
        return arena_print(
            arena, "%s holds, but %zu of %zu %s %s; the worst is %s.", title, close, tally.all,
            checks, close == 1 ? "is close to its limit" : "are close to their limits", worst);
    return arena_print(arena, "%s holds: all %zu %s pass; the nearest to its limit is %s.", title,
                       tally.all, checks, worst);
}

bool it_tips(const struct result *result) {
    return result->folding.motion_count && result->folding.motions[0].tips;
}

const char *summary_in_words(struct arena *arena, const struct result *result) {
    const char *title = title_in_words(arena, result);
    if (result->verdict == VERDICT_FAILED)
        return arena_print(arena, "%s could not be judged: %s. Do not build on this answer.", title,
                           result->trouble ? result->trouble : "the numbers disagree");
    if (result->verdict == VERDICT_FOLDS)
        return arena_print(arena,
                           "%s %s: as described it does not stand, so nothing else was checked.",
                           title, it_tips(result) ? "tips over by its own weight" : "folds up");
    return judged_summary(arena, result);
}
