#include "fix/fix.h"

#include "fix/work.h"
#include "frame/merge.h"
#include "frame/tree.h"
#include "judge/judge.h"

#include <math.h>
#include <string.h>

/* Of the tries, so many hundredths at most go into the guess. */
enum { GUESS_SHARE = 60 };

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
