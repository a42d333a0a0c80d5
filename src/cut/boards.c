#include "cut/boards.h"

#include "cut/find.h"

#include <stdlib.h>

static void add_boards(struct arena *arena, const struct board_task *task,
                       const struct kinds *kinds, const struct pattern *pattern, int *used,
                       struct board_plan *plan) {
    const struct board_stock *stock = &task->stocks[kinds->stock[pattern->stock]];
    for (int time = 0; time < pattern->times; time++) {
        size_t count = 0;
        for (size_t t = 0; t < pattern->take_count; t++)
            count += (size_t)pattern->takes[t].count;
        int *pieces = ARENA_ARRAY(arena, int, count);
        int64_t left = stock->length - 2 * task->trim + task->kerf;
        size_t next = 0;
        for (size_t t = 0; t < pattern->take_count; t++)
            for (int copy = 0; copy < pattern->takes[t].count; copy++) {
                int kind = pattern->takes[t].kind;
                pieces[next] = kinds->pieces[kind][used[kind]++];
                left -= task->lengths[pieces[next++]] + task->kerf;
            }
        plan->boards[plan->board_count++] = (struct board){
            .stock = kinds->stock[pattern->stock], .pieces = pieces, .count = count, .left = left};
    }
}

static int longest_pieces_first(const void *left, const void *right) {
    const struct pattern *a = left, *b = right;
    for (size_t k = 0; k < a->take_count && k < b->take_count; k++) {
        if (a->takes[k].kind != b->takes[k].kind)
            return a->takes[k].kind - b->takes[k].kind;
        if (a->takes[k].count != b->takes[k].count)
            return b->takes[k].count - a->takes[k].count;
    }
    if (a->take_count != b->take_count)
        return a->take_count > b->take_count ? -1 : 1;
    return a->stock - b->stock;
}

struct board_plan boards_cut(struct arena *arena, const struct board_task *task) {
    struct board_plan plan = {0};
    struct kinds kinds = kinds_of(arena, task, &plan);
    if (!kinds.count) {
        plan.proved = plan.too_long_count == 0;
        return plan;
    }
    struct found found = find_layout(arena, &kinds);
    struct layout *best = &found.best;
    qsort(best->items, best->count, sizeof *best->items, longest_pieces_first);
    size_t boards = 0;
    for (size_t k = 0; k < best->count; k++)
        boards += (size_t)best->items[k].times;
    plan.boards = ARENA_ARRAY(arena, struct board, boards);
    int *used = ARENA_ARRAY(arena, int, kinds.count);
    for (size_t k = 0; k < best->count; k++)
        add_boards(arena, task, &kinds, &best->items[k], used, &plan);
    plan.cost = best->cost * kinds.cost_unit;
    plan.bound = found.bound * kinds.cost_unit;
    plan.proved = best->cost <= found.bound && !plan.too_long_count;
    return plan;
}
