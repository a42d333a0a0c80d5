#include "fix/work.h"

#include <limits.h>

/* Sets that hold what this one holds and may change the slots that are open besides. */
struct branch {
    struct set set;
    struct effort effort; /* no set of the branch takes less */
    bool billed;          /* that is its own bound; else that of the branch it comes from */
    uint64_t open;
    size_t number; /* order of arrival */
};
struct heap {
    struct branch *items;
    size_t count, capacity, numbered;
};

static bool before(const struct branch *a, const struct branch *b) {
    int order = effort_compare(a->effort, b->effort);
    return order ? order < 0 : a->number < b->number;
}

static void swap(struct branch *a, struct branch *b) {
    struct branch kept = *a;
    *a = *b;
    *b = kept;
}

static void push(struct work *work, struct heap *heap, struct branch branch) {
    branch.number = heap->numbered++;
    ARRAY_PUSH(work->arena, heap, branch);
    for (size_t at = heap->count - 1; at > 0; at = (at - 1) / 2) {
        struct branch *up = &heap->items[(at - 1) / 2];
        if (!before(&heap->items[at], up))
            break;
        swap(&heap->items[at], up);
    }
}

static struct branch pop(struct heap *heap) {
    struct branch top = heap->items[0];
    heap->items[0] = heap->items[--heap->count];
    for (size_t at = 0;;) {
        size_t least = at;
        for (size_t child = 2 * at + 1; child <= 2 * at + 2 && child < heap->count; child++)
            if (before(&heap->items[child], &heap->items[least]))
                least = child;
        if (least == at)
            return top;
        swap(&heap->items[at], &heap->items[least]);
        at = least;
    }
}

/* Of the needs of a set that does not pass, the one with the fewest open slots. */
static uint64_t narrowest(const struct judged *judged, uint64_t open) {
    uint64_t first = judged->needs[0] & open, second = judged->needs[1] & open;
    return slots_in(second) < slots_in(first) ? second : first;
}

/* Every passing set of the branch changes one of the needed slots: one branch for the first of them
 * that it changes, and each way to change it. */
static void divide(struct work *work, struct heap *heap, const struct branch *branch,
                   uint64_t needed) {
    uint64_t open = branch->open;
    for (size_t s = 0; s < work->slot_count; s++) {
        if (!(needed >> s & 1))
            continue;
        open &= ~((uint64_t)1 << s);
        for (size_t k = 1; k <= work->slots[s].count; k++) {
            struct branch next = {.set = branch->set, .open = open};
            next.set.level[s] = (unsigned char)k;
            next.effort = set_guide(work, &next.set);
            next.effort.money = branch->effort.money;
            if (!work->found || effort_compare(next.effort, work->best_effort) < 0)
                push(work, heap, next);
        }
    }
}

/* Its own bound in place of the one it came with; true where that is more. */
static bool rises(struct work *work, struct branch *branch) {
    if (!work->by_price || branch->billed)
        return false;
    struct effort came_with = branch->effort;
    branch->effort = set_bound(work, &branch->set);
    branch->billed = true;
    return effort_compare(branch->effort, came_with) > 0;
}

void best_first(struct work *work) {
    struct heap heap = {0};
    push(work, &heap, (struct branch){.open = UINT64_MAX, .effort.money = LONG_MIN});
    while (heap.count) {
        struct branch branch = pop(&heap);
        if (work->found && effort_compare(branch.effort, work->best_effort) >= 0)
            break;
        if (!budget_left(work))
            return;
        if (rises(work, &branch)) {
            push(work, &heap, branch);
            continue;
        }
        struct judged judged = set_try(work, &branch.set);
        if (judged.passes)
            keep(work, &branch.set);
        if (!judged.passes)
            divide(work, &heap, &branch, narrowest(&judged, branch.open));
        else if (work->by_price && work->prices_smalls) /* boxes shared may make more cost less */
            divide(work, &heap, &branch, branch.open);
        else
            break;
    }
    work->answer->proved = !(work->by_price && work->bill_may_shrink);
}
