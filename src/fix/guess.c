#include "fix/climb.h"

#include <string.h>

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

static void everything(const struct work *work, struct set *set) {
    *set = (struct set){{0}};
    for (size_t s = 0; s < work->slot_count; s++)
        if (work->slots[s].kind != CHANGE_TRAYS && work->slots[s].kind != CHANGE_TURN)
            set->level[s] = (unsigned char)work->slots[s].count;
}

void guess(struct work *work) {
    struct climber climber = climber_new(work);
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
    improve(&climber);
}
