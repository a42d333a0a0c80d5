#include "cut/kinds.h"

#include <stdlib.h>

static int64_t common(int64_t a, int64_t b) {
    while (b) {
        int64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

static int cheaper_first(const void *left, const void *right) {
    const struct board_stock *const *a = left, *const *b = right;
    if ((*a)->cost != (*b)->cost)
        return (*a)->cost < (*b)->cost ? -1 : 1;
    if ((*a)->length != (*b)->length)
        return (*a)->length > (*b)->length ? -1 : 1;
    return (*a > *b) - (*a < *b);
}

/* Sorted by cost, and of those only the ones that are longer than every cheaper one. */
static void take_stocks(struct arena *arena, const struct board_task *task, struct kinds *kinds) {
    const struct board_stock **sorted =
        ARENA_ARRAY(arena, const struct board_stock *, task->stock_count);
    for (size_t k = 0; k < task->stock_count; k++)
        sorted[k] = &task->stocks[k];
    if (task->stock_count)
        qsort(sorted, task->stock_count, sizeof(const struct board_stock *), cheaper_first);
    kinds->room = ARENA_ARRAY(arena, int64_t, task->stock_count);
    kinds->cost = ARENA_ARRAY(arena, int64_t, task->stock_count);
    kinds->stock = ARENA_ARRAY(arena, int, task->stock_count);
    int64_t longest = 0;
    for (size_t k = 0; k < task->stock_count; k++) {
        int64_t room = sorted[k]->length - 2 * task->trim + task->kerf;
        if (room <= longest || room <= task->kerf)
            continue;
        longest = room;
        kinds->room[kinds->stock_count] = room;
        kinds->cost[kinds->stock_count] = sorted[k]->cost;
        kinds->stock[kinds->stock_count++] = (int)(sorted[k] - task->stocks);
        kinds->cost_unit = common(sorted[k]->cost, kinds->cost_unit);
    }
    for (size_t k = 0; k < kinds->stock_count; k++)
        kinds->cost[k] /= kinds->cost_unit;
}

struct piece {
    int64_t size;
    int number;
};

static int longer_first(const void *left, const void *right) {
    const struct piece *a = left, *b = right;
    if (a->size != b->size)
        return a->size > b->size ? -1 : 1;
    return (a->number > b->number) - (a->number < b->number);
}

/* The pieces that some stock holds, longest first; the others into the plan. */
static struct piece *sorted_pieces(struct arena *arena, const struct board_task *task,
                                   int64_t longest, size_t *count, struct board_plan *plan) {
    struct piece *pieces = ARENA_ARRAY(arena, struct piece, task->count);
    plan->too_long = ARENA_ARRAY(arena, int, task->count);
    *count = 0;
    for (size_t k = 0; k < task->count; k++) {
        int64_t size = task->lengths[k] + task->kerf;
        if (size <= longest)
            pieces[(*count)++] = (struct piece){size, (int)k};
        else
            plan->too_long[plan->too_long_count++] = (int)k;
    }
    if (*count)
        qsort(pieces, *count, sizeof *pieces, longer_first);
    return pieces;
}

/* Divide all sizes by what they have in common; room beyond a multiple of it is of no use. */
static void reduce(struct kinds *kinds) {
    int64_t unit = 0;
    for (size_t k = 0; k < kinds->count; k++)
        unit = common(kinds->size[k], unit);
    if (unit <= 1)
        return;
    for (size_t k = 0; k < kinds->count; k++)
        kinds->size[k] /= unit;
    for (size_t k = 0; k < kinds->stock_count; k++)
        kinds->room[k] /= unit;
}

struct kinds kinds_of(struct arena *arena, const struct board_task *task, struct board_plan *plan) {
    struct kinds kinds = {0};
    take_stocks(arena, task, &kinds);
    size_t count;
    int64_t longest = kinds.stock_count ? kinds.room[kinds.stock_count - 1] : 0;
    struct piece *pieces = sorted_pieces(arena, task, longest, &count, plan);
    int *numbers = ARENA_ARRAY(arena, int, count);
    kinds.size = ARENA_ARRAY(arena, int64_t, count);
    kinds.demand = ARENA_ARRAY(arena, int, count);
    kinds.pieces = ARENA_ARRAY(arena, int *, count);
    for (size_t k = 0; k < count; k++) {
        numbers[k] = pieces[k].number;
        if (k == 0 || pieces[k].size != pieces[k - 1].size) {
            kinds.size[kinds.count] = pieces[k].size;
            kinds.pieces[kinds.count++] = &numbers[k];
        }
        kinds.demand[kinds.count - 1]++;
    }
    reduce(&kinds);
    return kinds;
}

struct pattern pattern_of(struct arena *arena, const struct kinds *kinds, int stock,
                          const int *count) {
    struct pattern pattern = {.stock = stock, .times = 1};
    for (size_t k = 0; k < kinds->count; k++)
        pattern.take_count += count[k] > 0;
    pattern.takes = ARENA_ARRAY(arena, struct take, pattern.take_count);
    size_t next = 0;
    for (size_t k = 0; k < kinds->count; k++)
        if (count[k] > 0)
            pattern.takes[next++] = (struct take){(int)k, count[k]};
    return pattern;
}

void layout_add(struct arena *arena, struct layout *layout, const struct kinds *kinds,
                struct pattern pattern, int times) {
    pattern.times = times;
    ARRAY_PUSH(arena, layout, pattern);
    layout->cost += kinds->cost[pattern.stock] * times;
}

int kinds_stock_for(const struct kinds *kinds, int64_t size) {
    int stock = 0;
    while (kinds->room[stock] < size)
        stock++;
    return stock;
}
