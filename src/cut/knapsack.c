#include "cut/knapsack.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum {
    STEPS_FIRST = 30000,
    TABLE_ROOM_MOST = 500000, /* rooms in the table */
    TABLE_STEP = 8            /* of it are filled in the time of a step */
};

/* ---- depth first, densest first, with the bound of one piece cut to fill the rest ---- */

struct dense {
    int64_t size, worth;
    int most, kind;
    double density;
};

struct trying {
    const struct dense *items;
    size_t count;
    const int64_t *smallest; /* of this item and those behind it */
    int *now, *best_take;
    int64_t best;
    bool found;
    long steps, most_steps;
};

static int denser_first(const void *left, const void *right) {
    const struct dense *a = left, *b = right;
    if (a->density != b->density)
        return a->density > b->density ? -1 : 1;
    return (a->kind > b->kind) - (a->kind < b->kind);
}

static void try_from(struct trying *trying, size_t item, int64_t room, int64_t worth) {
    if (worth > trying->best) {
        trying->best = worth;
        trying->found = true;
        memcpy(trying->best_take, trying->now, trying->count * sizeof *trying->now);
    }
    if (item == trying->count || room < trying->smallest[item] ||
        ++trying->steps > trying->most_steps)
        return;
    const struct dense *dense = &trying->items[item];
    /* worths are under 2^53, so the half covers every rounding of the product */
    if ((double)(worth - trying->best) + (double)room * dense->density < 0.5)
        return;
    int64_t fit = room / dense->size;
    int most = fit < dense->most ? (int)fit : dense->most;
    for (int take = most; take >= 0; take--) {
        trying->now[item] = take;
        try_from(trying, item + 1, room - take * dense->size, worth + take * dense->worth);
    }
    trying->now[item] = 0;
}

static bool try_all(struct arena *arena, const struct dense *items, size_t count, int64_t room,
                    int64_t over, long most_steps, struct trying *trying) {
    int64_t *smallest = ARENA_ARRAY(arena, int64_t, count + 1);
    for (size_t k = count; k-- > 0;)
        smallest[k] =
            k + 1 < count && smallest[k + 1] < items[k].size ? smallest[k + 1] : items[k].size;
    *trying = (struct trying){.items = items,
                              .count = count,
                              .smallest = smallest,
                              .now = ARENA_ARRAY(arena, int, count + 1),
                              .best_take = ARENA_ARRAY(arena, int, count + 1),
                              .best = over,
                              .most_steps = most_steps};
    try_from(trying, 0, room, 0);
    return trying->steps <= most_steps;
}

/* ---- a table over every room, for rooms that are small whole numbers ---- */

/* Bundles of 1, 2, 4 ... pieces of an item, so that any number up to `most` can be put together. */
struct bundle {
    size_t item;
    int pieces;
};

static size_t bundles_of(const struct dense *items, size_t count, int64_t room,
                         struct bundle *bundles) {
    size_t made = 0;
    for (size_t k = 0; k < count; k++) {
        int64_t fit = room / items[k].size;
        int left = fit < items[k].most ? (int)fit : items[k].most;
        for (int pieces = 1; left > 0; pieces *= 2) {
            int now = pieces < left ? pieces : left;
            if (bundles)
                bundles[made] = (struct bundle){k, now};
            made++;
            left -= now;
        }
    }
    return made;
}

/* How much patience the table takes; more than there is where it is too large. */
static long table_steps(const struct knapsack *knapsack, const struct dense *items, size_t count) {
    if (knapsack->room > TABLE_ROOM_MOST)
        return *knapsack->patience + 1;
    size_t bundles = bundles_of(items, count, knapsack->room, NULL);
    return (long)bundles * (long)knapsack->room / TABLE_STEP;
}

static int64_t best_by_table(struct arena *arena, const struct dense *items, size_t count,
                             int64_t room, int *take) {
    size_t rooms = (size_t)room + 1, words = (rooms + 63) / 64;
    size_t made = bundles_of(items, count, room, NULL);
    struct bundle *bundles = ARENA_ARRAY(arena, struct bundle, made);
    bundles_of(items, count, room, bundles);
    int64_t *best = ARENA_ARRAY(arena, int64_t, rooms);
    uint64_t *taken = ARENA_ARRAY(arena, uint64_t, made * words);
    for (size_t b = 0; b < made; b++) {
        const struct dense *item = &items[bundles[b].item];
        int64_t size = item->size * bundles[b].pieces, worth = item->worth * bundles[b].pieces;
        for (int64_t r = room; r >= size; r--)
            if (best[r - size] + worth > best[r]) {
                best[r] = best[r - size] + worth;
                taken[b * words + (size_t)r / 64] |= (uint64_t)1 << (r % 64);
            }
    }
    int64_t left = room;
    for (size_t b = made; b-- > 0;)
        if (taken[b * words + (size_t)left / 64] >> (left % 64) & 1) {
            take[bundles[b].item] += bundles[b].pieces;
            left -= items[bundles[b].item].size * bundles[b].pieces;
        }
    return best[room];
}

/* ---- */

static size_t dense_items(const struct knapsack *knapsack, struct dense *items) {
    size_t count = 0;
    for (size_t k = 0; k < knapsack->count; k++)
        if (knapsack->worth[k] > 0 && knapsack->most[k] > 0 && knapsack->size[k] <= knapsack->room)
            items[count++] =
                (struct dense){.size = knapsack->size[k],
                               .worth = knapsack->worth[k],
                               .most = knapsack->most[k],
                               .kind = (int)k,
                               .density = (double)knapsack->worth[k] / (double)knapsack->size[k]};
    if (count)
        qsort(items, count, sizeof *items, denser_first);
    return count;
}

static void give(const struct knapsack *knapsack, const struct dense *items, size_t count,
                 const int *found, int *take) {
    memset(take, 0, knapsack->count * sizeof *take);
    for (size_t k = 0; k < count; k++)
        take[items[k].kind] = found[k];
}

int64_t knapsack_best(struct arena *arena, const struct knapsack *knapsack, int64_t over, int *take,
                      int64_t *upper) {
    struct arena_mark mark = arena_mark(arena);
    struct dense *items = ARENA_ARRAY(arena, struct dense, knapsack->count);
    size_t count = dense_items(knapsack, items);
    struct trying trying;
    bool all = try_all(arena, items, count, knapsack->room, over, STEPS_FIRST, &trying);
    bool more = !all && !trying.found && *knapsack->patience > 0;
    long table = more ? table_steps(knapsack, items, count) : 0;
    if (more && table <= *knapsack->patience) {
        *knapsack->patience -= table;
        int *found = ARENA_ARRAY(arena, int, count + 1);
        int64_t best = best_by_table(arena, items, count, knapsack->room, found);
        trying.found = best > over;
        if (trying.found) {
            trying.best = best;
            trying.best_take = found;
        }
        all = true;
    } else if (more) {
        all = try_all(arena, items, count, knapsack->room, over, *knapsack->patience, &trying);
        *knapsack->patience -= trying.steps;
    }
    int64_t best = trying.best;
    if (trying.found)
        give(knapsack, items, count, trying.best_take, take);
    *upper = all || !count ? best : (int64_t)ceil(items[0].density * (double)knapsack->room);
    if (*upper < best)
        *upper = best;
    arena_rewind(arena, mark);
    return best;
}
