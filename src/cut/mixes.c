#include "cut/mixes.h"

#include <stdlib.h>
#include <string.h>

enum { STEPS_MOST = 2000000 };

struct listing {
    struct arena *arena;
    const struct kinds *kinds;
    int64_t least, most, size;
    int *boards;
    struct mix_of_stocks *mixes;
    size_t count;
    long steps;
};

static bool is_full(const struct listing *listing) {
    return listing->count > MIXES_MOST || listing->steps > STEPS_MOST;
}

static void list_mix(struct listing *listing, int64_t cost) {
    if (listing->count++ >= MIXES_MOST)
        return;
    struct mix_of_stocks *mix = &listing->mixes[listing->count - 1];
    size_t stocks = listing->kinds->stock_count;
    *mix =
        (struct mix_of_stocks){cost, (int)listing->count, ARENA_ARRAY(listing->arena, int, stocks)};
    memcpy(mix->boards, listing->boards, stocks * sizeof *mix->boards);
}

static void list_from(struct listing *listing, size_t stock, int64_t cost, int64_t room) {
    const struct kinds *kinds = listing->kinds;
    listing->steps++;
    if (stock == kinds->stock_count) {
        if (cost >= listing->least && room >= listing->size)
            list_mix(listing, cost);
        return;
    }
    for (int boards = 0; cost <= listing->most && !is_full(listing); boards++) {
        listing->boards[stock] = boards;
        list_from(listing, stock + 1, cost, room);
        cost += kinds->cost[stock];
        room += kinds->room[stock];
    }
}

static int cheapest_first(const void *left, const void *right) {
    const struct mix_of_stocks *a = left, *b = right;
    if (a->cost != b->cost)
        return a->cost < b->cost ? -1 : 1;
    return a->number - b->number;
}

/* All mixes of these costs into the list; false where they are too many. */
static bool list_all(struct listing *listing, int64_t most) {
    listing->most = most;
    listing->count = 0;
    listing->steps = 0;
    list_from(listing, 0, 0, 0);
    return !is_full(listing);
}

bool mixes_between(struct arena *arena, const struct kinds *kinds, int64_t least, int64_t *most,
                   struct mix_of_stocks **mixes, size_t *count) {
    struct listing listing = {.arena = arena,
                              .kinds = kinds,
                              .least = least,
                              .boards = ARENA_ARRAY(arena, int, kinds->stock_count),
                              .mixes = ARENA_ARRAY(arena, struct mix_of_stocks, MIXES_MOST)};
    for (size_t k = 0; k < kinds->count; k++)
        listing.size += kinds->size[k] * kinds->demand[k];
    while (!list_all(&listing, *most)) {
        if (*most <= least)
            return false;
        *most = least + (*most - least) / 2;
    }
    if (listing.count)
        qsort(listing.mixes, listing.count, sizeof *listing.mixes, cheapest_first);
    *mixes = listing.mixes;
    *count = listing.count;
    return true;
}
