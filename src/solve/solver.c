#include "solve/solver.h"

#include "solve/entries.h"
#include "solve/order.h"
#include "solve/sweep.h"

#include <stdlib.h>

static int *narrow_numbers(struct arena *arena, const struct entries *entries) {
    size_t unknowns = entries->unknowns;
    int(*pairs)[2] = arena_room(arena, entries->count, sizeof *pairs);
    for (size_t k = 0; k < entries->count; k++) {
        pairs[k][0] = entries->items[k].row;
        pairs[k][1] = entries->items[k].column;
    }
    struct graph graph = graph_of_pairs(arena, unknowns, (const int(*)[2])pairs, entries->count);
    int *order = order_band(arena, &graph), *number = ARENA_ARRAY(arena, int, unknowns);
    for (size_t k = 0; k < unknowns; k++)
        number[order[k]] = (int)k;
    return number;
}

static void factor_by_gsl(struct arena *arena, const struct sparse *matrix,
                          struct solver_factor *factor) {
    struct entries entries = entries_of(arena, matrix);
    int *number = narrow_numbers(arena, &entries);
    size_t half = 0;
    for (size_t k = 0; k < entries.count; k++) {
        const struct entry *entry = &entries.items[k];
        size_t apart = (size_t)abs(number[entry->row] - number[entry->column]);
        half = apart > half ? apart : half;
    }
    factor->number = number;
    factor->band = band_new(arena, entries.unknowns, half);
    for (size_t k = 0; k < entries.count; k++) {
        const struct entry *entry = &entries.items[k];
        *band_at(&factor->band, (size_t)number[entry->row], (size_t)number[entry->column]) =
            entry->value;
    }
    factor->positive = band_cholesky(&factor->band, &factor->least);
}

struct solver_factor solver_factor(struct arena *arena, enum solver_kind kind,
                                   const struct sparse *matrix) {
    struct solver_factor factor = {.kind = kind};
    if (kind == SOLVER_GSL) {
        factor_by_gsl(arena, matrix, &factor);
        return factor;
    }
    factor.own = *matrix;
    struct pivots pivots = sparse_factor(arena, &factor.own, NULL);
    factor.positive = pivots_positive(&pivots);
    factor.least = pivots.least;
    return factor;
}

void solver_solve(struct arena *arena, const struct solver_factor *factor, size_t count,
                  double *const *x) {
    if (factor->kind == SOLVER_OWN) {
        sweep_all(arena, &factor->own, count, x);
        return;
    }
    size_t unknowns = factor->band.count;
    struct arena_mark mark = arena_mark(arena);
    double *work = arena_room(arena, unknowns, sizeof *work);
    for (size_t c = 0; c < count; c++) {
        for (size_t i = 0; i < unknowns; i++)
            work[factor->number[i]] = x[c][i];
        band_solve(&factor->band, work);
        for (size_t i = 0; i < unknowns; i++)
            x[c][i] = work[factor->number[i]];
    }
    arena_rewind(arena, mark);
}
