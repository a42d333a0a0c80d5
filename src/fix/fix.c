#include "fix/fix.h"

#include "fix/work.h"
#include "frame/merge.h"
#include "frame/tree.h"
#include "judge/judge.h"

#include <math.h>
#include <string.h>

/* Of the tries, so many hundredths at most go into the guess. */
enum { GUESS_SHARE = 60 };

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

static void judge_described(struct work *work) {
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

/* Small frames are judged quickly, so more of them are tried; the count never hangs on a clock. */
static size_t tries_for(const struct work *work) {
    enum { MEMBERS_TIMES_TRIES = 18000, LEAST = 300, MOST = 10000 };
    size_t tries = MEMBERS_TIMES_TRIES / work->model->member_count;
    if (work->options->tries)
        return work->options->tries;
    return tries < LEAST ? LEAST : tries > MOST ? MOST : tries;
}

/* `tries` more, of which a share goes into the guess; the rest proves it, where it found something.
 */
static void search(struct work *work, size_t tries) {
    size_t before = work->answer->tried;
    work->budget = before + tries;
    memo_new(work);
    work->nearest_score = set_try(work, &(struct set){{0}}).score;
    work->answer->tried = before; /* as described: judged already */
    work->budget = before + tries * GUESS_SHARE / 100;
    guess(work);
    work->budget = before + tries;
}

/* By price among the changes that have one; where those do not do, by effort among all. */
static void look(struct work *work) {
    size_t tries = tries_for(work);
    struct choice all[SLOTS_MOST];
    size_t count = work->slot_count;
    memcpy(all, work->slots, sizeof all);
    work->by_price = price_catalogue(work);
    if (work->by_price) {
        search(work, tries / 2);
        if (work->found) {
            work->budget = tries;
            best_first(work);
            return;
        }
        work->by_price = false;
        memcpy(work->slots, all, sizeof all);
        work->slot_count = count;
    }
    search(work, tries - work->answer->tried);
    best_first(work);
}

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

static void describe_limits(struct work *work) {
    bool anchors = false;
    for (size_t k = 0; k < work->slot_count; k++)
        anchors |= work->slots[k].kind == CHANGE_HOLD_DOWN && work->best.level[k];
    if (work->by_price && work->left_out)
        note(work, arena_print(work->arena,
                               "%zu changes without a price were not compared; a stick under "
                               "sticks: of that size and grade, with its price under prices:, has "
                               "them compared",
                               work->left_out));
    if (isfinite(work->answer->cost) && anchors)
        note(work, "the iron of the hold-downs is not in the bill");
    if (work->slots_left_out)
        note(work, "the frame has more things to change than are looked at; those of later sticks, "
                   "shelves and connections were left out");
}

static void describe_found(struct work *work) {
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

/* What still fails with the set that came nearest. */
static void describe_left(struct work *work) {
    struct result result = {0};
    if (set_judge(work, &work->nearest, false, &result))
        work->answer->left.count = bad_checks(work->arena, &result, &work->answer->left.items);
    work->answer->nearest = set_edit(work, &work->nearest);
}

struct work *work_new(struct arena *arena, const char *bytes, size_t length,
                      const struct frame *frame, const struct fix_options *options) {
    struct fix_answer *answer = ARENA_NEW(arena, struct fix_answer);
    struct work *work = ARENA_NEW(arena, struct work);
    *answer = (struct fix_answer){.frame = frame, .cost = NAN, .problems = problems_new(arena)};
    work->arena = arena;
    work->frame = frame;
    work->options = options;
    work->answer = answer;
    work->raw = tree_of_text(arena, bytes, length);
    if (!frame->members.count)
        return work;
    work->model = model_build(arena, frame, &answer->problems);
    if (work->model)
        catalogue_build(work);
    return work;
}

struct fix_answer *fix_find(struct arena *arena, const char *bytes, size_t length,
                            const struct frame *frame, const struct fix_options *options) {
    struct work *work = work_new(arena, bytes, length, frame, options);
    struct fix_answer *answer = work->answer;
    judge_described(work);
    if (answer->passes_already) {
        answer->proved = true;
        answer->cost = 0.0;
    } else if (work->model && !answer->problems.count && answer->before != VERDICT_FAILED) {
        look(work);
        if (work->found)
            describe_found(work);
        else
            describe_left(work);
    }
    return answer;
}
