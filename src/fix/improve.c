#include "fix/climb.h"

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

void improve(struct climber *climber) {
    struct work *work = climber->work;
    while (work->found && budget_left(work) && (lessen(work) || rebuild(climber) || exchange(work)))
        continue;
}
