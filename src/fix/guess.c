#include "fix/work.h"

#include <math.h>
#include <string.h>

/* What an option was worth when it was last tried: score mended for its effort. */
struct worth {
    size_t slot;
    unsigned char level;
    double rate;
};
struct worths {
    struct worth *items;
    size_t count;
    size_t *stamps; /* per item: the round in which it was tried */
};

static double cost_of_step(const struct work *work, const struct worth *worth) {
    static const double tray = 1000.0; /* board feet: anything rather than that */
    const struct option *option = &work->slots[worth->slot].items[worth->level - 1];
    static const double board_foot =
        1.0; /* of money, where it decides; effort is the small change */
    double guide = work->by_price ? fmax(option->money, 0.0) + 0.1 * board_foot * option->effort
                                  : option->effort;
    return guide + tray * option->trays;
}

static double rate_from(struct work *work, const struct set *from, double score,
                        const struct worth *worth, double thrift) {
    struct set set = *from;
    set.level[worth->slot] = worth->level;
    double mended = score - set_try(work, &set).score;
    return isfinite(mended) ? mended / pow(cost_of_step(work, worth), thrift) : -INFINITY;
}

static struct worths all_worths(struct work *work) {
    struct worths worths = {0};
    size_t count = 0;
    for (size_t s = 0; s < work->slot_count; s++)
        count += work->slots[s].count;
    worths.items = ARENA_ARRAY(work->arena, struct worth, count);
    worths.stamps = ARENA_ARRAY(work->arena, size_t, count);
    for (size_t s = 0; s < work->slot_count; s++)
        for (size_t k = 1; k <= work->slots[s].count; k++)
            if (!work->slots[s].items[k - 1].fine)
                worths.items[worths.count++] = (struct worth){s, (unsigned char)k, INFINITY};
    return worths;
}

static void forget(struct worths *worths) {
    for (size_t k = 0; k < worths->count; k++)
        worths->items[k].rate = INFINITY;
}

/* The state of a climb in one of its rounds. */
struct round {
    const struct set *from;
    double score, thrift;
    uint64_t hopes;           /* slots to step in */
    const struct set *closed; /* levels that may not come back; NULL */
    size_t number;
};

/* Dearer than the best that is known leads nowhere. */
static bool is_step(const struct work *work, const struct worth *worth, const struct round *round) {
    struct set set = *round->from;
    if (worth->level == set.level[worth->slot] || !(round->hopes >> worth->slot & 1) ||
        (round->closed && round->closed->level[worth->slot] == worth->level))
        return false;
    set.level[worth->slot] = worth->level;
    return !work->found || effort_compare(set_guide(work, &set), work->best_guide) < 0;
}

static void refresh(struct work *work, struct worths *worths, const struct round *round,
                    size_t item) {
    worths->items[item].rate =
        rate_from(work, round->from, round->score, &worths->items[item], round->thrift);
    worths->stamps[item] = round->number;
}

static long best_known(const struct work *work, const struct worths *worths,
                       const struct round *round) {
    long best = -1;
    for (size_t k = 0; k < worths->count; k++)
        if (is_step(work, &worths->items[k], round) &&
            (best < 0 || worths->items[k].rate > worths->items[best].rate))
            best = (long)k;
    return best;
}

/* The best step from a set. Rates of earlier rounds are believed until the best of them is tried
 * again and stays the best; where that one mends nothing, all of them are tried again. -1: none
 * mends anything. */
static long best_step(struct work *work, struct worths *worths, const struct round *round) {
    for (;;) {
        long best = best_known(work, worths, round);
        if (best < 0 || !budget_left(work))
            return -1;
        if (worths->stamps[best] != round->number) {
            refresh(work, worths, round, (size_t)best);
            continue;
        }
        if (worths->items[best].rate > 0.0)
            return best;
        for (size_t k = 0; k < worths->count; k++)
            if (is_step(work, &worths->items[k], round) && worths->stamps[k] != round->number)
                refresh(work, worths, round, k);
        best = best_known(work, worths, round);
        return worths->items[best].rate > 0.0 ? best : -1;
    }
}

/* What several climbs share: what a step was worth the last time is where the next one starts. */
struct climber {
    struct work *work;
    struct worths worths;
    size_t rounds;
};

/* Up from a set, in the slots that are open; true where it passes in the end. */
static bool climb(struct climber *climber, struct set *set, double thrift, uint64_t open,
                  const struct set *closed) {
    struct work *work = climber->work;
    struct worths worths = climber->worths;
    struct judged now = set_try(work, set);
    forget(&worths);
    while (!now.passes && budget_left(work)) {
        struct round round = {set, now.score, thrift, now.hopes & open, closed, ++climber->rounds};
        long step = best_step(work, &worths, &round);
        if (step < 0)
            return false;
        set->level[worths.items[step].slot] = worths.items[step].level;
        now = set_try(work, set);
    }
    return now.passes;
}

void keep(struct work *work, const struct set *set) {
    struct effort effort = set_effort(work, set);
    if (work->found && effort_compare(effort, work->best_effort) >= 0)
        return;
    work->found = true;
    work->best = *set;
    work->best_effort = effort;
    work->best_guide = set_guide(work, set);
}

/* The set where it is cheaper than the best, and passes: the best from now on. */
static bool improves(struct work *work, const struct set *set) {
    if (effort_compare(set_guide(work, set), work->best_guide) >= 0 || !budget_left(work) ||
        !set_try(work, set).passes || effort_compare(set_effort(work, set), work->best_effort) >= 0)
        return false;
    keep(work, set);
    return true;
}

/* Less of one change, or none of it. */
static bool lessen(struct work *work) {
    for (size_t s = work->slot_count; s-- > 0;)
        for (unsigned char k = 0; k < work->best.level[s]; k++) {
            struct set set = work->best;
            set.level[s] = k;
            if (improves(work, &set))
                return true;
        }
    return false;
}

/* One change in place of another, or of more of two. */
static bool exchange(struct work *work) {
    for (size_t out = 0; out < work->slot_count; out++)
        for (unsigned char less = 0; less < work->best.level[out]; less++)
            for (size_t in = 0; in < work->slot_count; in++)
                for (size_t k = work->best.level[in] + 1u; k <= work->slots[in].count; k++) {
                    struct set set = work->best;
                    set.level[out] = less;
                    set.level[in] = (unsigned char)k;
                    if (in != out && improves(work, &set))
                        return true;
                }
    return false;
}

static void everything(const struct work *work, struct set *set) {
    *set = (struct set){{0}};
    for (size_t s = 0; s < work->slot_count; s++)
        if (work->slots[s].kind != CHANGE_TRAYS && work->slots[s].kind != CHANGE_TURN)
            set->level[s] = (unsigned char)work->slots[s].count;
}

/* False where there are none. */
static bool add_braces(const struct work *work, struct set *set) {
    bool any = false;
    for (size_t s = 0; s < work->slot_count; s++)
        if (work->slots[s].kind == CHANGE_BRACE) {
            set->level[s] = 1;
            any = true;
        }
    return any;
}

/* One or two changes taken out and kept out, then up again another way. */
static bool rebuild(struct climber *climber) {
    struct work *work = climber->work;
    for (size_t a = 0; a < work->slot_count; a++)
        for (size_t b = a; b < work->slot_count && budget_left(work); b++) {
            struct set set = work->best, closed = {{0}};
            if (!set.level[a] || !set.level[b])
                continue;
            closed.level[a] = set.level[a];
            closed.level[b] = set.level[b];
            set.level[a] = set.level[b] = 0;
            if (climb(climber, &set, 1.0, UINT64_MAX, &closed) &&
                effort_compare(set_effort(work, &set), work->best_effort) < 0) {
                keep(work, &set);
                return true;
            }
        }
    return false;
}

/* ---- sizes first, as one draws a frame ---- */

struct start {
    struct set set;
    double rank;
};
struct starts {
    struct start *items;
    size_t count, capacity;
};

static bool is_size(const struct work *work, size_t slot) {
    return work->slots[slot].kind == CHANGE_SIZE &&
           !has_slats_of(work->frame, work->slots[slot].stick);
}

/* Every way to choose sizes of sticks; not of slats, which are judged by themselves. */
static struct starts all_sizes(struct work *work) {
    enum { MOST = 64 };
    struct starts starts = {0};
    ARRAY_PUSH(work->arena, &starts, (struct start){0});
    for (size_t s = 0; s < work->slot_count; s++) {
        size_t before = starts.count;
        for (size_t k = 1; is_size(work, s) && k <= work->slots[s].count; k++)
            for (size_t i = 0; i < before && starts.count < MOST; i++) {
                struct start start = starts.items[i];
                start.set.level[s] = (unsigned char)k;
                ARRAY_PUSH(work->arena, &starts, start);
            }
    }
    return starts;
}

/* What it takes already, and what it lacks yet; whichever is likely to come out least first. */
static void rank(struct work *work, struct starts *starts) {
    static const double worth_of_score = 1.0; /* board feet; [trade] */
    for (size_t k = 0; k < starts->count && budget_left(work); k++) {
        struct start start = starts->items[k];
        struct effort guide = set_guide(work, &start.set);
        start.rank = (double)(work->by_price ? guide.money : guide.milli) / 1000.0 +
                     worth_of_score * set_try(work, &start.set).wood;
        size_t at = k;
        for (; at > 0 && starts->items[at - 1].rank > start.rank; at--)
            starts->items[at] = starts->items[at - 1];
        starts->items[at] = start;
    }
}

/* Slots that a builder turns to once the sizes are chosen. */
static uint64_t other_slots(const struct work *work) {
    uint64_t open = 0;
    for (size_t s = 0; s < work->slot_count; s++)
        if (!is_size(work, s) && work->slots[s].kind != CHANGE_TRAYS)
            open |= (uint64_t)1 << s;
    return open;
}

/* Does the frame lean too far, sway or fold as it is? Then diagonals come first. */
static bool leans(const struct work *work) {
    const struct fix_answer *answer = work->answer;
    for (size_t k = 0; k < answer->failing.count; k++)
        if (answer->failing.items[k].verdict == VERDICT_FOLDS ||
            strncmp(answer->failing.items[k].id, "lean/", 5) == 0 ||
            strncmp(answer->failing.items[k].id, "sway/", 5) == 0)
            return true;
    return false;
}

/* From the likeliest sizes. */
static void climb_from_sizes(struct climber *climber, bool braced) {
    enum { CLIMBS = 6 };
    struct work *work = climber->work;
    struct starts starts = all_sizes(work);
    for (size_t k = 0; braced && k < starts.count; k++)
        if (!add_braces(work, &starts.items[k].set))
            return;
    rank(work, &starts);
    for (size_t k = 0; k < starts.count && k < CLIMBS && budget_left(work); k++) {
        struct set set = starts.items[k].set;
        if (work->found && effort_compare(set_guide(work, &set), work->best_guide) >= 0)
            continue;
        if (climb(climber, &set, 0.5, other_slots(work), NULL) ||
            climb(climber, &set, 0.5, UINT64_MAX, NULL))
            keep(work, &set);
    }
}

void guess(struct work *work) {
    struct climber climber = {work, all_worths(work), 0};
    struct set start = {{0}};
    if (climb(&climber, &start, 1.0, UINT64_MAX, NULL))
        keep(work, &start);
    climb_from_sizes(&climber, leans(work));
    if (!work->found)
        climb_from_sizes(&climber, !leans(work));
    if (!work->found) {
        everything(work, &start);
        if (set_try(work, &start).passes || climb(&climber, &start, 0.0, UINT64_MAX, NULL))
            keep(work, &start);
    }
    while (work->found && budget_left(work) &&
           (lessen(work) || rebuild(&climber) || exchange(work)))
        continue;
}
