#include "solving.h"

#include "timing.h"

#include "solve/entries.h"
#include "solve/sweep.h"
#include "solve/system.h"

#include <math.h>
#include <stdint.h>
#include <string.h>
#include <suitesparse/cholmod.h>

enum { CASES = 10 };

struct work {
    struct arena *arena;
    const struct system *system;
    struct sparse matrix;
    double *loads[CASES], *x[CASES];
    cholmod_common common;
    cholmod_sparse *theirs;
    cholmod_dense *their_loads, *their_x;
    double their_bytes;
    double *scratch; /* our matrix, to be factored in place */
};

static void order_factor_solve(void *with) {
    struct work *work = with;
    struct arena_mark mark = arena_mark(work->arena);
    system_blocks(work->arena, work->system);
    struct sparse factor = {work->matrix.blocks, work->scratch};
    memcpy(factor.items, work->matrix.items, factor.blocks->numbers * sizeof *factor.items);
    sparse_factor(work->arena, &factor, NULL);
    for (int c = 0; c < CASES; c++)
        memcpy(work->x[c], work->loads[c], factor.blocks->unknowns * sizeof *work->x[c]);
    sweep_all(work->arena, &factor, CASES, work->x);
    arena_rewind(work->arena, mark);
}

static void by_gsl(void *with) {
    struct work *work = with;
    struct arena_mark mark = arena_mark(work->arena);
    struct solver_factor factor = solver_factor(work->arena, SOLVER_GSL, &work->matrix);
    for (int c = 0; c < CASES; c++)
        memcpy(work->x[c], work->loads[c], work->system->count * sizeof *work->x[c]);
    solver_solve(work->arena, &factor, CASES, work->x);
    arena_rewind(work->arena, mark);
}

static void by_cholmod(void *with) {
    struct work *work = with;
    cholmod_common *common = &work->common;
    if (work->their_x)
        cholmod_free_dense(&work->their_x, common);
    cholmod_factor *factor = cholmod_analyze(work->theirs, common);
    cholmod_factorize(work->theirs, factor, common);
    work->their_x = cholmod_solve(CHOLMOD_A, factor, work->their_loads, common);
    /* a simplicial factor keeps a row number beside each number */
    work->their_bytes = factor->is_super
                            ? (double)factor->xsize * sizeof(double) +
                                  (double)factor->ssize * sizeof(int)
                            : (double)factor->nzmax * (sizeof(double) + sizeof(int));
    cholmod_free_factor(&factor, common);
}

/* The unknowns as the slots stand in the model. */
static int *natural_numbers(struct arena *arena, const struct system *system) {
    int *number = ARENA_ARRAY(arena, int, system->count), count = 0;
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        if (system->unknown[k] >= 0)
            number[system->unknown[k]] = count++;
    return number;
}

static void give_to_cholmod(struct work *work, const int *number) {
    size_t n = work->system->count;
    struct entries entries = entries_of(work->arena, &work->matrix);
    cholmod_common *common = &work->common;
    cholmod_start(common);
    cholmod_triplet *list =
        cholmod_allocate_triplet(n, n, entries.count, -1, CHOLMOD_REAL, common);
    for (size_t k = 0; k < entries.count; k++) {
        int a = number[entries.items[k].row], b = number[entries.items[k].column];
        ((int *)list->i)[k] = a > b ? a : b;
        ((int *)list->j)[k] = a > b ? b : a;
        ((double *)list->x)[k] = entries.items[k].value;
    }
    list->nnz = entries.count;
    work->theirs = cholmod_triplet_to_sparse(list, entries.count, common);
    cholmod_free_triplet(&list, common);
    work->their_loads = cholmod_allocate_dense(n, CASES, n, CHOLMOD_REAL, common);
    for (int c = 0; c < CASES; c++)
        for (size_t i = 0; i < n; i++)
            ((double *)work->their_loads->x)[(size_t)c * n + (size_t)number[i]] = work->loads[c][i];
}

static double answers_apart(const struct work *work, const int *number) {
    double apart = 0.0, largest = 0.0;
    size_t n = work->system->count;
    for (int c = 0; c < CASES; c++)
        for (size_t i = 0; i < n; i++) {
            double theirs =
                ((const double *)work->their_x->x)[(size_t)c * n + (size_t)number[i]];
            largest = fmax(largest, fabs(theirs));
            apart = fmax(apart, fabs(work->x[c][i] - theirs));
        }
    return apart / largest;
}

struct solving solving(struct arena *arena, const struct model *model, bool with_gsl) {
    struct work work = {.arena = arena,
                        .system = system_build(arena, model, STIFFNESS_MIDDLE, NULL, 0)};
    size_t n = work.system->count;
    work.matrix = system_matrix(arena, work.system);
    work.scratch = ARENA_ARRAY(arena, double, work.matrix.blocks->numbers);
    uint64_t state = 1;
    for (int c = 0; c < CASES; c++) {
        work.loads[c] = ARENA_ARRAY(arena, double, n);
        work.x[c] = ARENA_ARRAY(arena, double, n);
        for (size_t i = 0; i < n; i++) {
            state = state * 6364136223846793005u + 1442695040888963407u;
            work.loads[c][i] = (double)(state >> 40) / 16777216.0 - 0.5;
        }
    }
    int *number = natural_numbers(arena, work.system);
    give_to_cholmod(&work, number);
    struct solving found = {.unknowns = n, .gsl = NAN};
    if (with_gsl)
        found.gsl = median_of(by_gsl, &work);
    found.ours = median_of(order_factor_solve, &work);
    found.theirs = median_of(by_cholmod, &work);
    found.apart = answers_apart(&work, number);
    found.memory = (double)work.matrix.blocks->numbers * sizeof(double) / work.their_bytes;
    cholmod_free_dense(&work.their_x, &work.common);
    cholmod_free_dense(&work.their_loads, &work.common);
    cholmod_free_sparse(&work.theirs, &work.common);
    cholmod_finish(&work.common);
    return found;
}
