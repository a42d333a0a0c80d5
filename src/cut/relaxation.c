#include "cut/relaxation.h"

#include "cut/basis.h"
#include "cut/knapsack.h"

#include <math.h>
#include <string.h>

enum { STEPS_MOST = 4000, STEPS_BETWEEN_FRESH = 80, PATIENCE = 4000000 };
static const double TOLERANCE = 1e-9, KNAPSACK_WORTH_MOST = 0x1p53;

static bool has_boards(const struct basis *basis, size_t stock) {
    return !basis->boards || basis->boards[stock] > 0;
}

static bool is_allowed(const struct basis *basis, const struct pattern *column) {
    if (!has_boards(basis, (size_t)column->stock))
        return false;
    for (size_t t = 0; t < column->take_count; t++)
        if (column->takes[t].count > basis->demand[column->takes[t].kind])
            return false;
    return true;
}

/* The known column that saves most; false where none does. */
static bool known_column(const struct basis *basis, int *entering) {
    double best = -TOLERANCE;
    bool found = false;
    if (basis->boards && basis_beyond(basis, basis_share(basis)) < best) {
        best = basis_beyond(basis, basis_share(basis));
        *entering = basis_share(basis);
        found = true;
    }
    for (size_t row = 0; row < basis->size; row++)
        if (basis->price[row] < best) {
            best = basis->price[row];
            *entering = -1 - (int)row;
            found = true;
        }
    for (size_t c = 0; c < basis->columns->count; c++) {
        const struct pattern *column = &basis->columns->items[c];
        if (!is_allowed(basis, column))
            continue;
        double saved = basis_beyond(basis, (int)c);
        if (saved < best) {
            best = saved;
            *entering = (int)c;
            found = true;
        }
    }
    return found;
}

static void whole_worths(const struct basis *basis, int64_t *worth) {
    memset(worth, 0, basis->kinds->count * sizeof *worth);
    for (size_t row = 0; row < basis->kind_rows; row++)
        if (basis->price[row] > 0.0)
            worth[basis->kind[row]] = (int64_t)floor(basis->price[row] * (double)basis->worth);
}

/* A new column that saves something, from the knapsack of each stock; no board of a stock holds
 * more than most[]. */
static bool new_column(struct basis *basis, const int64_t *worth, int *take, int64_t *most,
                       int *entering) {
    const struct kinds *kinds = basis->kinds;
    double best = 0.0;
    bool found = false;
    int *try_take = ARENA_ARRAY(basis->arena, int, kinds->count);
    for (size_t s = 0; s < kinds->stock_count; s++) {
        most[s] = 0;
        if (!has_boards(basis, s))
            continue;
        int64_t price = (int64_t)ceil(basis_board_price(basis, s) * (double)basis->worth);
        int64_t enough = price + (int64_t)((double)price * TOLERANCE) + (int64_t)basis->size;
        struct knapsack knapsack = {.count = kinds->count,
                                    .size = kinds->size,
                                    .worth = worth,
                                    .most = basis->demand,
                                    .room = kinds->room[s],
                                    .patience = &basis->patience};
        int64_t value = knapsack_best(basis->arena, &knapsack, enough, try_take, &most[s]);
        double saved = (double)(value - price);
        if (value <= enough || (found && saved <= best))
            continue;
        best = saved;
        found = true;
        memcpy(take, try_take, kinds->count * sizeof *take);
        *entering = (int)s;
    }
    if (found)
        *entering = basis_add_column(basis, pattern_of(basis->arena, kinds, *entering, take));
    return found;
}

/* Sum of worths over the demand against what a board of each stock can hold: `most` per stock. */
static void take_bound(const struct basis *basis, const int64_t *most,
                       struct relaxation *relaxation) {
    const struct kinds *kinds = basis->kinds;
    double sum = 0.0;
    relaxation->scale = 1;
    relaxation->most = most;
    for (size_t k = 0; k < kinds->count; k++)
        sum += (double)relaxation->worth[k] * basis->demand[k];
    if (!(sum < KNAPSACK_WORTH_MOST))
        return; /* `most` is not to be trusted */
    relaxation->solved = true;
    if (basis->boards) {
        double hold = 0.0;
        for (size_t s = 0; s < kinds->stock_count; s++)
            hold += (double)most[s] * basis->boards[s];
        relaxation->too_few = sum * (1.0 - 1e-10) > hold;
        relaxation->scale = basis->worth;
        return;
    }
    for (size_t s = 0; s < kinds->stock_count; s++) {
        int64_t scale = (most[s] + kinds->cost[s] - 1) / kinds->cost[s];
        if (scale > relaxation->scale)
            relaxation->scale = scale;
    }
    /* far more than the rounding of these few products, far less than what a whole unit misses */
    relaxation->bound = (int64_t)ceil(sum / (double)relaxation->scale * (1.0 - 1e-10));
}

/* A board of one kind alone that is in use becomes a known column. */
static int keep_alone(struct basis *basis, int row) {
    int *take = ARENA_ARRAY(basis->arena, int, basis->kinds->count);
    take[basis->kind[row]] = basis->alone[row];
    int stock = basis_stock_alone(basis, row);
    return basis_add_column(basis, pattern_of(basis->arena, basis->kinds, stock, take));
}

static void take_columns(struct basis *basis, struct relaxation *relaxation) {
    size_t n = basis->size;
    double *demand = ARENA_ARRAY(basis->arena, double, n);
    double *amount = ARENA_ARRAY(basis->arena, double, n);
    for (size_t row = 0; row < basis->kind_rows; row++)
        demand[row] = basis->demand[basis->kind[row]];
    basis_invert(basis);
    basis_amounts(basis, demand, amount);
    relaxation->column = ARENA_ARRAY(basis->arena, int, n);
    relaxation->times = ARENA_ARRAY(basis->arena, double, n);
    for (size_t place = 0; place < n; place++) {
        if (basis_surplus(basis, basis->in[place]) || !(amount[place] > TOLERANCE) ||
            (basis->boards && basis->in[place] < 0))
            continue;
        if (basis->in[place] < 0)
            basis->in[place] = keep_alone(basis, basis_alone(basis, basis->in[place]));
        relaxation->column[relaxation->count] = basis->in[place];
        relaxation->times[relaxation->count++] = amount[place];
    }
}

/* The worths at the end, and what a board of each stock may hold of them. */
static void simplex(struct basis *basis, int64_t *worth, int64_t *most) {
    int *take = ARENA_ARRAY(basis->arena, int, basis->kinds->count);
    for (int step = 0; step < STEPS_MOST; step++) {
        int entering = 0;
        basis_price(basis);
        if (step + 1 == STEPS_MOST || !known_column(basis, &entering)) {
            whole_worths(basis, worth);
            if (!new_column(basis, worth, take, most, &entering))
                return;
        }
        if (!basis_bring_in(basis, entering))
            return;
        if (step % STEPS_BETWEEN_FRESH == STEPS_BETWEEN_FRESH - 1) {
            if (!basis_invert(basis))
                return;
            basis_amounts(basis, basis->shaken, basis->amount);
        }
    }
}

struct relaxation relax(struct arena *arena, const struct kinds *kinds, const int *demand,
                        const int *boards, struct columns *columns) {
    struct relaxation relaxation = {.scale = 1, .worth = ARENA_ARRAY(arena, int64_t, kinds->count)};
    size_t active = 0;
    for (size_t k = 0; k < kinds->count; k++)
        active += demand[k] > 0;
    if (!active || active > RELAXED_KINDS_MOST)
        return relaxation;
    struct basis basis = basis_first(arena, kinds, demand, boards, columns);
    basis.patience = PATIENCE;
    int64_t *most = ARENA_ARRAY(arena, int64_t, kinds->stock_count);
    for (size_t s = 0; s < kinds->stock_count; s++)
        most[s] = -1;
    simplex(&basis, relaxation.worth, most);
    for (size_t s = 0; s < kinds->stock_count; s++)
        if (most[s] < 0)
            return relaxation;
    take_bound(&basis, most, &relaxation);
    if (!relaxation.solved)
        return relaxation;
    take_columns(&basis, &relaxation);
    return relaxation;
}
