#include "fix/work.h"

#include <math.h>
#include <string.h>

struct memo {
    size_t capacity; /* a power of two, four times the tries */
    size_t count;
    struct remembered {
        bool used, is_judged, is_billed;
        struct set set;
        struct judged judged;
        struct bill bill;
    } * items;
};

void memo_new(struct work *work) {
    work->memo = ARENA_NEW(work->arena, struct memo);
    work->memo->capacity = 64;
    while (work->memo->capacity < 4 * work->budget)
        work->memo->capacity *= 2;
    work->memo->items = ARENA_ARRAY(work->arena, struct remembered, work->memo->capacity);
}

/* Its place; a new one where it has none yet. NULL: there is no room for more. */
static struct remembered *remembered(const struct work *work, const struct set *set) {
    static const uint64_t prime = 1099511628211u; /* of the FNV hash */
    struct memo *memo = work->memo;
    uint64_t hash = 14695981039346656037u;
    for (size_t k = 0; k < work->slot_count; k++)
        hash = (hash ^ set->level[k]) * prime;
    size_t at = (size_t)hash & (memo->capacity - 1);
    while (memo->items[at].used && memcmp(&memo->items[at].set, set, sizeof *set) != 0)
        at = (at + 1) & (memo->capacity - 1);
    if (memo->items[at].used)
        return &memo->items[at];
    if (memo->count > memo->capacity / 4 * 3)
        return NULL;
    memo->count++;
    memo->items[at] = (struct remembered){.used = true, .set = *set};
    return &memo->items[at];
}

struct bill set_bill_known(struct work *work, const struct set *set) {
    struct remembered *known = remembered(work, set);
    if (known && known->is_billed)
        return known->bill;
    struct bill bill = set_bill(work, set);
    if (known) {
        known->is_billed = true;
        known->bill = bill;
    }
    return bill;
}

bool budget_left(const struct work *work) {
    return work->answer->tried < work->budget;
}

struct judged set_try(struct work *work, const struct set *set) {
    struct remembered *known = remembered(work, set);
    if (known && known->is_judged)
        return known->judged;
    struct arena_mark mark = arena_mark(work->arena);
    struct result result = {0};
    struct judged judged = {.score = INFINITY,
                            .wood = INFINITY,
                            .verdict = VERDICT_FAILED,
                            .hopes = all_slots(work),
                            .needs = {all_slots(work), all_slots(work)}};
    if (set_judge(work, set, true, &result))
        judged = judged_of(work, &result);
    arena_rewind(work->arena, mark);
    if (known) {
        known->is_judged = true;
        known->judged = judged;
    }
    work->answer->tried++;
    if (judged.score < work->nearest_score) {
        work->nearest_score = judged.score;
        work->nearest = *set;
    }
    if (work->options->progress)
        work->options->progress(work->options->to, work->answer->tried);
    return judged;
}
