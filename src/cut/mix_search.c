#include "cut/mix_search.h"

#include "cut/knapsack.h"
#include "cut/mixes.h"
#include "cut/rounding.h"
#include "cut/search.h"

enum {
    STAGES = 3,
    LIMITS_MOST = 200,
    ROUNDED_LEAST = 1,
    ROUNDED_MOST = 400000,
    BEHIND_OPEN_MOST = 200
};

/* Worths that showed a choice to be too few: any other that holds no more of them is so too. */
struct limit {
    int64_t *most; /* per stock: what a board holds */
    int64_t worth; /* of all pieces */
};

struct mix_search {
    struct arena *arena;
    const struct kinds *kinds;
    struct columns *columns;
    struct layout *best;
    struct limit limits[LIMITS_MOST];
    size_t limit_count;
};

static bool is_too_few(const struct mix_search *search, const struct mix_of_stocks *mix) {
    for (size_t k = 0; k < search->limit_count; k++) {
        const struct limit *limit = &search->limits[k];
        int64_t held = 0;
        for (size_t s = 0; s < search->kinds->stock_count; s++)
            held += mix->boards[s] * limit->most[s];
        if (held < limit->worth)
            return true;
    }
    return false;
}

static void note_limit(struct mix_search *search, const struct mix_of_stocks *mix,
                       const struct relaxation *relaxation) {
    const struct kinds *kinds = search->kinds;
    if (search->limit_count == LIMITS_MOST)
        return;
    struct limit *limit = &search->limits[search->limit_count++];
    *limit = (struct limit){.most = ARENA_ARRAY(search->arena, int64_t, kinds->stock_count)};
    for (size_t k = 0; k < kinds->count; k++)
        limit->worth += relaxation->worth[k] * kinds->demand[k];
    int *take = ARENA_ARRAY(search->arena, int, kinds->count);
    for (size_t s = 0; s < kinds->stock_count; s++) {
        limit->most[s] = relaxation->most[s];
        if (mix->boards[s])
            continue;
        long patience = 0;
        const struct knapsack knapsack = {kinds->count,  kinds->size,    relaxation->worth,
                                          kinds->demand, kinds->room[s], &patience};
        knapsack_best(search->arena, &knapsack, 0, take, &limit->most[s]);
    }
}

static enum search_outcome search_mix(struct mix_search *search, const struct mix_of_stocks *mix,
                                      size_t stages) {
    static const struct search_limits limits[STAGES] = {
        {16, 30000, 0}, {256, 300000, 20000}, {0, 20000000, 3000000}};
    if (is_too_few(search, mix))
        return SEARCH_NONE;
    const int *demand = search->kinds->demand;
    struct relaxation relaxation =
        relax(search->arena, search->kinds, demand, mix->boards, search->columns);
    if (relaxation.too_few)
        note_limit(search, mix, &relaxation);
    if (relaxation.too_few || !relaxation.solved)
        return relaxation.too_few ? SEARCH_NONE : SEARCH_UNDECIDED;
    const struct search_task task = {demand, &relaxation, mix->cost, mix->boards, search->columns};
    struct layout layout = {0};
    enum search_outcome outcome =
        search_layout(search->arena, search->kinds, &task, &limits[0], &layout);
    if (outcome == SEARCH_UNDECIDED &&
        round_to_boards(search->arena, search->kinds, mix->boards, search->columns, &relaxation,
                        stages > 1 ? ROUNDED_MOST : ROUNDED_LEAST, &layout))
        outcome = SEARCH_FOUND;
    for (size_t k = 1; k < stages && outcome == SEARCH_UNDECIDED; k++)
        outcome = search_layout(search->arena, search->kinds, &task, &limits[k], &layout);
    if (outcome == SEARCH_FOUND && layout.cost < search->best->cost)
        *search->best = layout;
    return outcome;
}

/* The cheapest choice among these that stays open, or what the best plan costs. */
static int64_t search_each(struct mix_search *search, const struct mix_of_stocks *mixes,
                           size_t count) {
    int64_t open = INT64_MAX;
    size_t behind_open = 0;
    for (size_t x = 0; x < count && mixes[x].cost < search->best->cost; x++) {
        /* once one is left open the others are only looked at for a better plan */
        size_t stages = open < INT64_MAX ? 1 : STAGES;
        if (open < INT64_MAX && ++behind_open > BEHIND_OPEN_MOST)
            break;
        if (search_mix(search, &mixes[x], stages) == SEARCH_UNDECIDED && mixes[x].cost < open)
            open = mixes[x].cost;
    }
    return open < search->best->cost ? open : search->best->cost;
}

int64_t search_mixes(struct arena *arena, const struct kinds *kinds, struct columns *columns,
                     int64_t bound, struct layout *best) {
    struct mix_search *search = ARENA_NEW(arena, struct mix_search);
    *search = (struct mix_search){.arena = arena, .kinds = kinds, .columns = columns, .best = best};
    while (bound < best->cost) {
        struct mix_of_stocks *mixes;
        size_t count;
        int64_t most = best->cost - 1;
        if (!mixes_between(arena, kinds, bound, &most, &mixes, &count))
            break;
        int64_t open = search_each(search, mixes, count);
        if (open <= most)
            return open; /* a plan of this cost was found, or none of it ruled out */
        bound = most + 1;
    }
    return bound;
}
