#include "cut/remainder.h"

static void measure_new(struct remainder *remainder, int number, const int64_t *worth) {
    const struct kinds *kinds = remainder->kinds;
    struct arena *arena = remainder->arena;
    struct measure *measure = &remainder->measures[number];
    *measure = (struct measure){.worth = worth,
                                .full = ARENA_ARRAY(arena, int64_t, kinds->stock_count),
                                .densest = ARENA_ARRAY(arena, double, kinds->count + 1),
                                .all_behind = ARENA_ARRAY(arena, int64_t, kinds->count + 1)};
    for (size_t k = 0; k < kinds->count; k++)
        measure->loss -= remainder->left[k] * worth[k];
}

/* Of each unit of cost a board holds `scale` at most. */
static void measure_by_cost(struct remainder *remainder, int number, const int64_t *worth,
                            int64_t scale) {
    measure_new(remainder, number, worth);
    struct measure *measure = &remainder->measures[number];
    measure->unit = (double)scale;
    measure->loss += remainder->cost_left * scale;
    for (size_t s = 0; s < remainder->kinds->stock_count; s++)
        measure->full[s] = remainder->kinds->cost[s] * scale;
}

static int64_t longest_for_a_unit(const struct kinds *kinds) {
    int64_t longest = 0;
    for (size_t s = 0; s < kinds->stock_count; s++) {
        int64_t each = (kinds->room[s] + kinds->cost[s] - 1) / kinds->cost[s];
        longest = each > longest ? each : longest;
    }
    return longest;
}

static void measure_by_size(struct remainder *remainder) {
    const struct kinds *kinds = remainder->kinds;
    int64_t scale = longest_for_a_unit(kinds);
    if (!remainder->given_boards) {
        measure_by_cost(remainder, BY_SIZE, kinds->size, scale);
        return;
    }
    measure_new(remainder, BY_SIZE, kinds->size);
    struct measure *measure = &remainder->measures[BY_SIZE];
    measure->unit = (double)scale;
    for (size_t s = 0; s < kinds->stock_count; s++) {
        measure->full[s] = kinds->room[s];
        measure->loss += remainder->left[kinds->count + s] * kinds->room[s];
    }
}

void remainder_measure(struct remainder *remainder, const struct relaxation *relaxation) {
    const struct kinds *kinds = remainder->kinds;
    if (!remainder->given_boards) {
        measure_by_cost(remainder, BY_WORTH, relaxation->worth, relaxation->scale);
        return;
    }
    measure_new(remainder, BY_WORTH, relaxation->worth);
    struct measure *measure = &remainder->measures[BY_WORTH];
    measure->unit = (double)relaxation->scale;
    for (size_t s = 0; s < kinds->stock_count; s++) {
        measure->full[s] = relaxation->most[s];
        measure->loss += remainder->left[kinds->count + s] * relaxation->most[s];
    }
}

struct remainder remainder_new(struct arena *arena, const struct kinds *kinds, const int *demand,
                               int64_t cost, const int *boards) {
    size_t stocks = boards ? kinds->stock_count : 0;
    struct remainder remainder = {.arena = arena,
                                  .kinds = kinds,
                                  .left = ARENA_ARRAY(arena, int, kinds->count + stocks),
                                  .given_boards = boards,
                                  .cost_left = cost};
    for (size_t k = 0; k < kinds->count; k++)
        remainder.left[k] = demand[k];
    for (size_t s = 0; s < stocks; s++)
        remainder.left[kinds->count + s] = boards[s];
    measure_by_size(&remainder);
    return remainder;
}

void remainder_cut(struct remainder *remainder, const struct candidate *candidate, int sign) {
    const struct kinds *kinds = remainder->kinds;
    remainder->cost_left -= sign * kinds->cost[candidate->stock];
    for (size_t k = 0; k < kinds->count; k++)
        remainder->left[k] -= sign * candidate->take[k];
    if (remainder->given_boards)
        remainder->left[kinds->count + (size_t)candidate->stock] -= sign;
    for (int m = 0; m < MEASURES; m++) {
        struct measure *measure = &remainder->measures[m];
        int64_t held = 0;
        for (size_t k = 0; k < kinds->count; k++)
            held += candidate->take[k] * measure->worth[k];
        measure->loss -= sign * (measure->full[candidate->stock] - held);
    }
}

const int *remainder_boards(const struct remainder *remainder) {
    return remainder->given_boards ? remainder->left + remainder->kinds->count : NULL;
}

bool remainder_has(const struct remainder *remainder, int stock) {
    const int *boards = remainder_boards(remainder);
    return !boards || boards[stock] > 0;
}

bool remainder_lost(const struct remainder *remainder) {
    for (int m = 0; m < MEASURES; m++)
        if (remainder->measures[m].loss < 0)
            return true;
    return false;
}
