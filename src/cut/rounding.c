#include "cut/rounding.h"

#include "cut/first_fit.h"

#include <limits.h>
#include <math.h>
#include <string.h>

static void cut(struct arena *arena, const struct kinds *kinds, const struct pattern *column,
                int times, int *left, struct layout *layout) {
    layout_add(arena, layout, kinds, *column, times);
    for (size_t t = 0; t < column->take_count; t++)
        left[column->takes[t].kind] -= column->takes[t].count * times;
}

/* How often it can be cut from what is left. */
static int most_times(const struct pattern *column, const int *left) {
    int most = INT_MAX;
    for (size_t t = 0; t < column->take_count; t++) {
        int times = left[column->takes[t].kind] / column->takes[t].count;
        most = times < most ? times : most;
    }
    return most;
}

bool cut_whole_times(struct arena *arena, const struct kinds *kinds, const struct columns *columns,
                     const struct relaxation *relaxation, int *left, struct layout *layout) {
    bool any = false;
    for (size_t k = 0; k < relaxation->count; k++) {
        const struct pattern *column = &columns->items[relaxation->column[k]];
        int whole = (int)floor(relaxation->times[k] + 1e-6);
        int most = most_times(column, left);
        int times = whole < most ? whole : most;
        if (times <= 0)
            continue;
        cut(arena, kinds, column, times, left, layout);
        any = true;
    }
    return any;
}

/* One board of the column that is nearest to a whole time. */
static bool cut_largest_share(struct arena *arena, const struct kinds *kinds,
                              const struct columns *columns, const struct relaxation *relaxation,
                              int *left, struct layout *layout) {
    const struct pattern *best = NULL;
    double largest = 0.0;
    for (size_t k = 0; k < relaxation->count; k++) {
        const struct pattern *column = &columns->items[relaxation->column[k]];
        if (relaxation->times[k] > largest && most_times(column, left) > 0) {
            largest = relaxation->times[k];
            best = column;
        }
    }
    if (best)
        cut(arena, kinds, best, 1, left, layout);
    return best;
}

static struct layout joined(struct arena *arena, const struct layout *one,
                            const struct layout *other) {
    struct layout both = {.cost = one->cost + other->cost};
    for (size_t k = 0; k < one->count; k++)
        ARRAY_PUSH(arena, &both, one->items[k]);
    for (size_t k = 0; k < other->count; k++)
        ARRAY_PUSH(arena, &both, other->items[k]);
    return both;
}

static bool nothing_left(const struct kinds *kinds, const int *left) {
    for (size_t k = 0; k < kinds->count; k++)
        if (left[k])
            return false;
    return true;
}

struct layout round_down(struct arena *arena, const struct kinds *kinds, const int *demand,
                         struct columns *columns, const struct relaxation *known) {
    struct layout cut_so_far = {0}, best = {0};
    int *left = ARENA_ARRAY(arena, int, kinds->count);
    memcpy(left, demand, kinds->count * sizeof *left);
    struct relaxation relaxation = *known;
    bool first = true;
    while (relaxation.solved) {
        struct layout rest = first_fit(arena, kinds, left);
        if (first || cut_so_far.cost + rest.cost < best.cost)
            best = joined(arena, &cut_so_far, &rest);
        first = false;
        if (nothing_left(kinds, left) ||
            (!cut_whole_times(arena, kinds, columns, &relaxation, left, &cut_so_far) &&
             !cut_largest_share(arena, kinds, columns, &relaxation, left, &cut_so_far)))
            break;
        if (nothing_left(kinds, left)) {
            if (cut_so_far.cost < best.cost)
                best = cut_so_far;
            break;
        }
        relaxation = relax(arena, kinds, left, NULL, columns);
    }
    return best;
}

/* ---- given boards ---- */

enum { BRANCHES = 3 };

struct diving {
    struct arena *arena;
    const struct kinds *kinds;
    struct columns *columns;
    int *left, *boards;
    long relaxed, relaxed_most;
    struct layout layout;
};

/* The columns that can be cut, those nearest to a whole time first. */
static size_t nearest_to_whole(const struct diving *diving, const struct relaxation *relaxation,
                               int *nearest) {
    size_t count = 0;
    double times[BRANCHES];
    for (size_t k = 0; k < relaxation->count; k++) {
        const struct pattern *column = &diving->columns->items[relaxation->column[k]];
        if (!diving->boards[column->stock] || most_times(column, diving->left) <= 0)
            continue;
        size_t place = count < BRANCHES ? count++ : BRANCHES;
        for (; place > 0 && times[place - 1] < relaxation->times[k]; place--)
            if (place < BRANCHES) {
                times[place] = times[place - 1];
                nearest[place] = nearest[place - 1];
            }
        if (place < BRANCHES) {
            times[place] = relaxation->times[k];
            nearest[place] = relaxation->column[k];
        }
    }
    return count;
}

static bool dive(struct diving *diving, const struct relaxation *relaxation) {
    int nearest[BRANCHES];
    size_t count = nearest_to_whole(diving, relaxation, nearest);
    for (size_t k = 0; k < count; k++) {
        const struct pattern column = diving->columns->items[nearest[k]];
        const struct layout before = diving->layout;
        diving->boards[column.stock]--;
        cut(diving->arena, diving->kinds, &column, 1, diving->left, &diving->layout);
        if (nothing_left(diving->kinds, diving->left))
            return true;
        long kinds = 0;
        for (size_t i = 0; i < diving->kinds->count; i++)
            kinds += diving->left[i] > 0;
        diving->relaxed += kinds * kinds;
        struct relaxation rest =
            relax(diving->arena, diving->kinds, diving->left, diving->boards, diving->columns);
        if (rest.solved && !rest.too_few && dive(diving, &rest))
            return true;
        if (diving->relaxed > diving->relaxed_most)
            return false;
        for (size_t t = 0; t < column.take_count; t++)
            diving->left[column.takes[t].kind] += column.takes[t].count;
        diving->layout = before;
        diving->boards[column.stock]++;
    }
    return false;
}

bool round_to_boards(struct arena *arena, const struct kinds *kinds, const int *boards,
                     struct columns *columns, const struct relaxation *known, long relaxed_most,
                     struct layout *layout) {
    struct diving diving = {.arena = arena,
                            .kinds = kinds,
                            .columns = columns,
                            .left = ARENA_ARRAY(arena, int, kinds->count),
                            .boards = ARENA_ARRAY(arena, int, kinds->stock_count),
                            .relaxed_most = relaxed_most};
    memcpy(diving.left, kinds->demand, kinds->count * sizeof *diving.left);
    memcpy(diving.boards, boards, kinds->stock_count * sizeof *diving.boards);
    if (!dive(&diving, known))
        return false;
    *layout = diving.layout;
    return true;
}
