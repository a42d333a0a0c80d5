#include "fix/climb.h"

#include <math.h>
#include <string.h>

/* Money where sets are compared by it, with a little of the effort so that nothing is free. */
static double cost_of_step(const struct work *work, const struct worth *worth) {
    static const double tray = 1000.0; /* anything rather than that */
    static const double little = 0.1;  /* of a board foot, in the money of the file; [trade] */
    const struct option *option = &work->slots[worth->slot].items[worth->level - 1];
    double cost =
        work->by_price ? fmax(option->money, 0.0) + little * option->effort : option->effort;
    return cost + tray * option->trays;
}

static double rate_from(struct work *work, const struct set *from, double score,
                        const struct worth *worth, double thrift) {
    struct set set = *from;
    set.level[worth->slot] = worth->level;
    double mended = score - set_try(work, &set).score;
    return isfinite(mended) ? mended / pow(cost_of_step(work, worth), thrift) : -INFINITY;
}

struct climber climber_new(struct work *work) {
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
    return (struct climber){work, worths, 0};
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

bool climb(struct climber *climber, struct set *set, double thrift, uint64_t open,
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
