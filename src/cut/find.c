#include "cut/find.h"

#include "cut/bounds.h"
#include "cut/first_fit.h"
#include "cut/mix_search.h"
#include "cut/rounding.h"
#include "cut/search.h"

#include <string.h>

enum {
    SEARCHED_PIECES_MOST = 120 /* more are searched only in what the relaxation leaves over */
};

/* What is tried one after the other once there is a relaxation. */
enum { SEARCHES = 4, SEARCHES_BEFORE_MIXES = 2 };
static const struct search_limits searches[SEARCHES] = {
    {4, 200000, 100000}, {32, 1000000, 200000}, {256, 3000000, 200000}, {0, 200000000, 200000}};

/* A task on its way to a plan. */
struct work {
    struct arena *arena;
    const struct kinds *kinds;
    struct layout best;
    int64_t bound;
    struct columns columns;
};

static bool is_proved(const struct work *work) {
    return work->best.cost <= work->bound;
}

static void take_bound(struct work *work, int64_t bound) {
    work->bound = bound > work->bound ? bound : work->bound;
}

static void take_layout(struct work *work, const struct layout *layout) {
    if (layout->cost < work->best.cost)
        work->best = *layout;
}

/* Next to nothing may be left over, and the lengths have no common measure: few patterns can do
 * then, and the relaxation says no more than the lengths. */
static bool is_tight(const struct work *work) {
    enum { ROOM_LEAST = 1000000 };
    const struct kinds *kinds = work->kinds;
    if (kinds->stock_count > 1 || kinds->room[0] < ROOM_LEAST)
        return false;
    int64_t left = work->bound / kinds->cost[0] * kinds->room[0];
    for (size_t k = 0; k < kinds->count; k++)
        left -= kinds->size[k] * kinds->demand[k];
    return left < kinds->size[kinds->count - 1] / 8;
}

/* Before there is a relaxation: most tasks are done with that. */
static void search_quickly(struct work *work) {
    static const struct search_limits limits[] = {
        {4, 100000, 0}, {32, 300000, 0}, {0, 200000000, 0}};
    const struct relaxation none = {.scale = 1,
                                    .worth = ARENA_ARRAY(work->arena, int64_t, work->kinds->count)};
    const struct search_task task = {work->kinds->demand, &none, work->bound, NULL, NULL};
    size_t stages = is_tight(work) ? 3 : 2;
    for (size_t k = 0; k < stages && !is_proved(work); k++) {
        struct layout layout = {0};
        if (search_layout(work->arena, work->kinds, &task, &limits[k], &layout) == SEARCH_FOUND)
            take_layout(work, &layout);
    }
}

/* Cheaper plans, with few patterns for each board first, then with more, until none is left to look
 * for. */
static void search_all(struct work *work, const struct relaxation *relaxation) {
    size_t most = work->kinds->stock_count > 1 ? SEARCHES_BEFORE_MIXES : SEARCHES;
    for (size_t k = 0; k < most && !is_proved(work);) {
        struct layout layout = {0};
        int64_t cost = work->best.cost - 1;
        const struct search_task task = {work->kinds->demand, relaxation, cost, NULL, NULL};
        enum search_outcome outcome =
            search_layout(work->arena, work->kinds, &task, &searches[k], &layout);
        if (outcome == SEARCH_FOUND)
            take_layout(work, &layout);
        else if (outcome == SEARCH_NONE)
            take_bound(work, cost + 1);
        else
            k++;
    }
}

/* Many pieces: the whole times of the relaxation are cut, and only the rest is searched. */
static void search_rest(struct work *work, const struct relaxation *relaxation) {
    const struct kinds *kinds = work->kinds;
    int *left = ARENA_ARRAY(work->arena, int, kinds->count);
    memcpy(left, kinds->demand, kinds->count * sizeof *left);
    struct layout layout = {0};
    cut_whole_times(work->arena, kinds, &work->columns, relaxation, left, &layout);
    int64_t pieces = 0;
    for (size_t k = 0; k < kinds->count; k++)
        pieces += left[k];
    if (!pieces || pieces > SEARCHED_PIECES_MOST)
        return;
    struct relaxation rest = relax(work->arena, kinds, left, NULL, &work->columns);
    if (!rest.solved || layout.cost + rest.bound > work->bound)
        return;
    const struct search_task task = {left, &rest, work->bound - layout.cost, NULL, NULL};
    for (size_t k = 0; k < SEARCHES && !is_proved(work); k++)
        if (search_layout(work->arena, kinds, &task, &searches[k], &layout) == SEARCH_FOUND)
            take_layout(work, &layout);
}

static void find(struct work *work) {
    const struct kinds *kinds = work->kinds;
    int64_t pieces = 0;
    for (size_t k = 0; k < kinds->count; k++)
        pieces += kinds->demand[k];
    work->best = first_fit(work->arena, kinds, kinds->demand);
    work->bound = bound_by_length(kinds);
    take_bound(work, bound_by_halves(kinds));
    if (pieces <= SEARCHED_PIECES_MOST && !is_proved(work))
        search_quickly(work);
    if (is_proved(work))
        return;
    struct relaxation relaxation = relax(work->arena, kinds, kinds->demand, NULL, &work->columns);
    if (!relaxation.solved)
        return;
    take_bound(work, relaxation.bound);
    if (is_proved(work))
        return;
    struct layout rounded =
        round_down(work->arena, kinds, kinds->demand, &work->columns, &relaxation);
    take_layout(work, &rounded);
    if (is_proved(work))
        return;
    if (pieces > SEARCHED_PIECES_MOST)
        search_rest(work, &relaxation);
    else
        search_all(work, &relaxation);
    if (pieces <= SEARCHED_PIECES_MOST && kinds->stock_count > 1 && !is_proved(work))
        take_bound(work,
                   search_mixes(work->arena, kinds, &work->columns, work->bound, &work->best));
}

struct found find_layout(struct arena *arena, const struct kinds *kinds) {
    struct work work = {.arena = arena, .kinds = kinds};
    find(&work);
    return (struct found){work.best, work.bound};
}
