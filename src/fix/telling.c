#include "fix/work.h"
#include "judge/judge.h"

#include <math.h>
#include <string.h>

/* ---- as described ---- */

static bool is_bad(const struct check *check) {
    return check->verdict > VERDICT_CLOSE;
}

/* Checks that fail or are not covered, copied out of a result. */
static size_t bad_checks(struct arena *arena, const struct result *result,
                         struct fix_check **checks) {
    size_t count = 0;
    *checks = ARENA_ARRAY(arena, struct fix_check, result->checks.count + 1);
    if (result->verdict == VERDICT_FOLDS || result->verdict == VERDICT_FAILED)
        (*checks)[count++] =
            (struct fix_check){"", "it folds, leans over or tips by itself", result->verdict};
    for (size_t k = 0; k < result->checks.count; k++)
        if (is_bad(&result->checks.items[k]))
            (*checks)[count++] = (struct fix_check){result->checks.items[k].id,
                                                    check_words(arena, &result->checks.items[k]),
                                                    result->checks.items[k].verdict};
    return count;
}

static void take_cautions(struct work *work, const struct result *result) {
    struct fix_answer *answer = work->answer;
    answer->cautions.count = 0;
    for (size_t k = 0; k < result->cautions.count; k++)
        ARRAY_PUSH(work->arena, &answer->cautions, result->cautions.items[k]);
}

void judge_described(struct work *work) {
    static const struct judge_options plain = {0};
    struct fix_answer *answer = work->answer;
    struct result result = {0};
    judge_frame(work->arena, work->frame, &plain, &result);
    for (size_t k = 0; k < result.problems.count; k++)
        ARRAY_PUSH(work->arena, &answer->problems, result.problems.items[k]);
    answer->trouble = result.verdict == VERDICT_FAILED ? result.trouble : NULL;
    answer->before = answer->after = result.verdict;
    answer->failing.count = bad_checks(work->arena, &result, &answer->failing.items);
    take_cautions(work, &result);
    answer->passes_already = result.verdict <= VERDICT_CLOSE;
}

/* ---- with the changes ---- */

/* What fails again when one change is left out. */
static void find_mends(struct work *work, size_t slot, struct fix_change *change) {
    struct set without = work->best;
    struct result result = {0};
    struct fix_check *checks = NULL;
    without.level[slot] = 0;
    if (set_judge(work, &without, false, &result))
        change->mend_count = bad_checks(work->arena, &result, &checks);
    change->mends = checks;
}

static void describe_changes(struct work *work) {
    struct fix_answer *answer = work->answer;
    struct fix_change *changes = ARENA_ARRAY(work->arena, struct fix_change, work->slot_count);
    struct set so_far = {{0}};
    double described = set_bill(work, &so_far).all, before = described;
    for (size_t k = 0; k < work->slot_count; k++) {
        if (!work->best.level[k])
            continue;
        const struct option *option = &work->slots[k].items[work->best.level[k] - 1];
        struct set alone = {{0}};
        alone.level[k] = so_far.level[k] = work->best.level[k];
        double cost = set_bill(work, &so_far).all;
        struct fix_change *change = &changes[answer->change_count++];
        *change = (struct fix_change){.kind = work->slots[k].kind,
                                      .what = option->what,
                                      .edit = set_edit(work, &alone),
                                      .cost = cost - before,
                                      .effort = (double)lround(1000.0 * option->effort) / 1000.0,
                                      .trays = option->trays};
        before = cost;
        find_mends(work, k, change);
    }
    answer->changes = changes;
    answer->cost = before - described;
    answer->trays = (int)work->best_effort.trays;
    answer->by_price = work->by_price;
    answer->effort = (double)work->best_effort.milli / 1000.0;
}

static void note(struct work *work, const char *words) {
    ARRAY_PUSH(work->arena, &work->answer->notes, words);
}

static bool takes(const struct work *work, enum change_kind kind) {
    bool any = false;
    for (size_t k = 0; k < work->slot_count; k++)
        any |= work->slots[k].kind == kind && work->best.level[k];
    return any;
}

static void describe_limits(struct work *work) {
    bool anchors = takes(work, CHANGE_HOLD_DOWN), ballast = takes(work, CHANGE_BALLAST);
    if (work->by_price && work->left_out)
        note(work, arena_print(work->arena,
                               "%zu changes without a price were not compared; a stick under "
                               "sticks: of that size and grade, with its price under prices:, has "
                               "them compared",
                               work->left_out));
    if (isfinite(work->answer->cost) && anchors)
        note(work, "the iron of the hold-downs is not in the bill");
    if (isfinite(work->answer->cost) && ballast)
        note(work, "the ballast is not in the bill");
    if (ballast)
        note(work,
             "the frame stands by its ballast: take it off before the frame is carried, and put "
             "it back at once; bags must be sound, or their weight runs away");
    if (work->slots_left_out)
        note(work, "the frame has more things to change than are looked at; those of later sticks, "
                   "shelves and connections were left out");
}

void describe_found(struct work *work) {
    struct fix_answer *answer = work->answer;
    struct result result = {0};
    answer->found = true;
    answer->edit = set_edit(work, &work->best);
    answer->edited = set_tree(work, &work->best);
    set_judge(work, &work->best, false, &result);
    answer->after = result.verdict;
    take_cautions(work, &result);
    describe_changes(work);
    describe_limits(work);
}

void describe_left(struct work *work) {
    struct result result = {0};
    if (set_judge(work, &work->nearest, false, &result))
        work->answer->left.count = bad_checks(work->arena, &result, &work->answer->left.items);
    work->answer->nearest = set_edit(work, &work->nearest);
}
