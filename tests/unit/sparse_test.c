/* The sparse factor against GSL's factors, eigenvalues and band, on random matrices of all shapes.
 */
#include "near.h"
#include "solve/entries.h"
#include "solve/solver.h"
#include "solve/sweep.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_eigen.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_rng.h>
#include <math.h>

static void no_abort(void) {
    gsl_set_error_handler_off();
}

TestSuite(sparse, .init = no_abort);

struct given { /* a random graph, its matrix in blocks and dense */
    struct arena *arena;
    gsl_rng *rng;
    struct sparse sparse;
    gsl_matrix *dense;
};

enum { NODES = 40, PAIRS = 400 };
enum { LINE, GRID, TREE, STAR, ANY, SHAPES };

static size_t pairs_of(gsl_rng *rng, int shape, int (*pairs)[2]) {
    size_t count = 0;
    for (int k = 1; k < NODES; k++) {
        int to = shape == LINE || shape == GRID ? k - 1
                 : shape == STAR                ? 0
                                                : (int)gsl_rng_uniform_int(rng, (unsigned long)k);
        pairs[count][0] = k, pairs[count++][1] = to;
        if (shape == GRID && k >= 6)
            pairs[count][0] = k - 6, pairs[count++][1] = k;
    }
    for (int k = 0; shape == ANY && k < 120; k++, count++)
        for (int side = 0; side < 2; side++)
            pairs[count][side] = (int)gsl_rng_uniform_int(rng, NODES);
    return count;
}

/* A A' with one column of A for each pair of nodes and each unknown of them, and something on the
 * diagonal: positive definite. `wide`: stiffness spread over this many powers of ten. `shift` is
 * taken off the diagonal. */
static struct given given_of(unsigned seed, double wide, double shift) {
    struct given given = {.arena = arena_new(), .rng = gsl_rng_alloc(gsl_rng_mt19937)};
    int pairs[PAIRS][2], sizes[NODES], base[NODES];
    gsl_rng_set(given.rng, seed);
    size_t count = pairs_of(given.rng, (int)(seed % SHAPES), pairs);
    for (int k = 0; k < NODES; k++)
        sizes[k] = (int)gsl_rng_uniform_int(given.rng, seed % 3 ? 8 : 3);
    struct graph graph = graph_of_pairs(given.arena, NODES, (const int(*)[2])pairs, count);
    struct blocks *blocks = blocks_of_graph(given.arena, &graph, sizes, base);
    given.sparse = sparse_new(given.arena, blocks);
    size_t n = blocks->unknowns;
    given.dense = gsl_matrix_calloc(n, n);
    for (size_t p = 0; p < count; p++)
        for (int times = 0; times < 8; times++) {
            double part[16];
            int unknown[16], parts = 0;
            double stiff = pow(10.0, wide * (gsl_rng_uniform(given.rng) - 0.5));
            for (int side = 0; side < (pairs[p][0] == pairs[p][1] ? 1 : 2); side++)
                for (int i = 0; i < sizes[pairs[p][side]]; i++) {
                    unknown[parts] = base[pairs[p][side]] + i;
                    part[parts++] = gsl_rng_uniform(given.rng) - 0.5;
                }
            for (int i = 0; i < parts; i++)
                for (int j = 0; j < parts; j++) {
                    double value = stiff * part[i] * part[j];
                    *gsl_matrix_ptr(given.dense, (size_t)unknown[i], (size_t)unknown[j]) += value;
                    if (unknown[i] >= unknown[j])
                        *sparse_at(&given.sparse, (size_t)unknown[i], (size_t)unknown[j]) += value;
                }
        }
    for (size_t i = 0; i < n; i++) {
        *gsl_matrix_ptr(given.dense, i, i) += 0.01 - shift;
        *sparse_diagonal(&given.sparse, i) += 0.01 - shift;
    }
    return given;
}

static void given_free(struct given *given) {
    gsl_matrix_free(given->dense);
    gsl_rng_free(given->rng);
    arena_free(given->arena);
}

/* Loads are A x for a known x, so that the answer is known as well as GSL's. */
static void solves_like_gsl(unsigned seed, double wide, double tolerance) {
    struct given given = given_of(seed, wide, 0.0);
    size_t n = given.dense->size1;
    enum { MOST = 27 };
    size_t cases = 1 + seed % MOST;
    double *x[MOST];
    gsl_matrix *known = gsl_matrix_alloc(n, MOST), *loads = gsl_matrix_alloc(n, MOST);
    for (size_t i = 0; i < n; i++)
        for (size_t c = 0; c < MOST; c++)
            gsl_matrix_set(known, i, c, gsl_rng_uniform(given.rng) - 0.5);
    gsl_blas_dgemm(CblasNoTrans, CblasNoTrans, 1.0, given.dense, known, 0.0, loads);
    for (size_t c = 0; c < cases; c++) {
        x[c] = ARENA_ARRAY(given.arena, double, n);
        for (size_t i = 0; i < n; i++)
            x[c][i] = gsl_matrix_get(loads, i, c);
    }
    struct sparse factor = sparse_copy(given.arena, &given.sparse);
    struct pivots pivots = sparse_factor(given.arena, &factor, NULL);
    cr_assert(pivots_positive(&pivots), "seed %u: %zu negative", seed, pivots.negative);
    sweep_all(given.arena, &factor, cases, x);
    cr_assert(gsl_linalg_cholesky_decomp1(given.dense) == GSL_SUCCESS, "seed %u", seed);
    for (size_t c = 0; c < cases; c++) {
        gsl_vector_view theirs = gsl_matrix_column(loads, c);
        gsl_linalg_cholesky_svx(given.dense, &theirs.vector);
        for (size_t i = 0; i < n; i++)
            NEAR(x[c][i], gsl_vector_get(&theirs.vector, i), 0.0, tolerance);
    }
    gsl_matrix_free(known);
    gsl_matrix_free(loads);
    given_free(&given);
}

Test(sparse, any_number_of_cases_is_solved_as_gsl_solves_a_dense_matrix) {
    for (unsigned seed = 1; seed <= 60; seed++)
        solves_like_gsl(seed, 0.0, 1e-9);
}

Test(sparse, unlike_stiffnesses_are_solved_as_gsl_solves_them) {
    for (unsigned seed = 1; seed <= 30; seed++)
        solves_like_gsl(seed, 8.0, 1e-4);
}

Test(sparse, one_case_alone_is_solved_like_the_same_among_others) {
    struct given given = given_of(4, 0.0, 0.0);
    size_t n = given.dense->size1;
    double *x[3], *alone = ARENA_ARRAY(given.arena, double, n);
    for (int c = 0; c < 3; c++) {
        x[c] = ARENA_ARRAY(given.arena, double, n);
        for (size_t i = 0; i < n; i++)
            x[c][i] = gsl_rng_uniform(given.rng);
    }
    for (size_t i = 0; i < n; i++)
        alone[i] = x[2][i];
    sparse_factor(given.arena, &given.sparse, NULL);
    sweep_all(given.arena, &given.sparse, 3, x);
    sweep_all(given.arena, &given.sparse, 1, &alone);
    for (size_t i = 0; i < n; i++)
        NEAR(alone[i], x[2][i], 1e-9, 1e-12);
    given_free(&given);
}

/* Sylvester's law of inertia: as many negative pivots as negative eigenvalues. */
Test(sparse, negative_pivots_are_as_many_as_negative_eigenvalues) {
    size_t some = 0;
    for (unsigned seed = 1; seed <= 40; seed++) {
        struct given given = given_of(seed, 0.0, 0.05 * (seed % 7));
        size_t n = given.dense->size1, negative = 0;
        gsl_vector *values = gsl_vector_alloc(n);
        gsl_eigen_symm_workspace *work = gsl_eigen_symm_alloc(n);
        gsl_eigen_symm(given.dense, values, work);
        for (size_t i = 0; i < n; i++)
            negative += gsl_vector_get(values, i) < 0.0;
        struct pivots pivots = sparse_factor(given.arena, &given.sparse, NULL);
        cr_assert(pivots.sound, "seed %u", seed);
        cr_assert(pivots.negative == negative, "seed %u: %zu, not %zu", seed, pivots.negative,
                  negative);
        some += negative > 0 && negative < n;
        gsl_eigen_symm_free(work);
        gsl_vector_free(values);
        given_free(&given);
    }
    cr_assert(some > 10, "%zu with some of each", some);
}

/* det([[1, 2], [2, 1]]) = -3, its pivots are 1 and -3; the zero matrix has none. */
Test(sparse, what_is_not_positive_or_not_sound_is_said) {
    struct arena *arena = arena_new();
    static const int pairs[][2] = {{0, 1}}, sizes[] = {1, 1};
    int base[2];
    struct graph graph = graph_of_pairs(arena, 2, pairs, 1);
    struct blocks *blocks = blocks_of_graph(arena, &graph, sizes, base);
    struct sparse matrix = sparse_new(arena, blocks);
    struct pivots pivots = sparse_factor(arena, &matrix, NULL);
    cr_assert(!pivots.sound && !pivots_positive(&pivots), "nothing to divide by");
    matrix = sparse_new(arena, blocks);
    *sparse_at(&matrix, 0, 0) = *sparse_at(&matrix, 1, 1) = 1.0;
    *sparse_at(&matrix, 1, 0) = 2.0;
    pivots = sparse_factor(arena, &matrix, NULL);
    cr_assert(pivots.sound && pivots.negative == 1 && !pivots_positive(&pivots), "%zu",
              pivots.negative);
    NEAR_ABS(pivots.least, -3.0, 1e-15);
    matrix = sparse_new(arena, blocks);
    *sparse_at(&matrix, 0, 0) = NAN;
    pivots = sparse_factor(arena, &matrix, NULL);
    cr_assert(!pivots.sound && !pivots_positive(&pivots), "NaN");
    arena_free(arena);
}

Test(sparse, nothing_has_a_factor_too) {
    struct arena *arena = arena_new();
    static const int sizes[] = {0, 0};
    int base[2];
    struct graph graph = graph_of_pairs(arena, 2, NULL, 0);
    struct blocks *blocks = blocks_of_graph(arena, &graph, sizes, base);
    struct sparse matrix = sparse_new(arena, blocks);
    struct pivots pivots = sparse_factor(arena, &matrix, NULL);
    cr_assert(blocks->unknowns == 0 && pivots_positive(&pivots), "empty");
    arena_free(arena);
}

/* A line of springs that nothing ties to the ground moves as one: one unknown is left over. */
Test(sparse, a_movement_that_nothing_resists_is_found_once) {
    struct arena *arena = arena_new();
    enum { N = 30 };
    int pairs[N - 1][2], sizes[N], base[N];
    bool fixed[N], barred[N] = {false};
    for (int k = 0; k < N; k++)
        sizes[k] = 1;
    for (int k = 0; k + 1 < N; k++)
        pairs[k][0] = k, pairs[k][1] = k + 1;
    struct graph graph = graph_of_pairs(arena, N, (const int(*)[2])pairs, N - 1);
    struct sparse matrix = sparse_new(arena, blocks_of_graph(arena, &graph, sizes, base));
    for (int k = 0; k + 1 < N; k++) {
        size_t a = (size_t)base[k], b = (size_t)base[k + 1];
        *sparse_diagonal(&matrix, a) += 1e6;
        *sparse_diagonal(&matrix, b) += 1e6;
        *sparse_at(&matrix, a > b ? a : b, a > b ? b : a) -= 1e6;
    }
    struct loose_pivots loose = {.share = 1e-9, .fixed = fixed, .barred = barred};
    struct pivots pivots = sparse_factor(arena, &matrix, &loose);
    cr_assert(loose.found == 1 && pivots_positive(&pivots), "%zu", loose.found);
    arena_free(arena);
}

Test(sparse, a_part_is_the_rows_and_columns_kept) {
    struct given given = given_of(9, 0.0, 0.0);
    size_t n = given.dense->size1, count = 0;
    bool *kept = ARENA_ARRAY(given.arena, bool, n);
    int *from = ARENA_ARRAY(given.arena, int, n);
    for (size_t i = 0; i < n; i++) {
        kept[i] = gsl_rng_uniform(given.rng) < 0.4;
        if (kept[i])
            from[count++] = (int)i;
    }
    struct sparse part = sparse_part(given.arena, &given.sparse, kept);
    cr_assert(part.blocks->unknowns == count, "%zu, not %zu", part.blocks->unknowns, count);
    struct entries entries = entries_of(given.arena, &part);
    size_t found = 0;
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j <= i; j++)
            found += gsl_matrix_get(given.dense, (size_t)from[i], (size_t)from[j]) != 0.0;
    cr_assert(entries.count == found, "%zu numbers, not %zu", entries.count, found);
    for (size_t k = 0; k < entries.count; k++)
        NEAR_REL(entries.items[k].value,
                 gsl_matrix_get(given.dense, (size_t)from[entries.items[k].row],
                                (size_t)from[entries.items[k].column]),
                 1e-12);
    given_free(&given);
}

Test(sparse, gsl_by_choice_gives_the_same_answers) {
    for (unsigned seed = 1; seed <= 30; seed++) {
        struct given given = given_of(seed, 2.0, 0.0);
        size_t n = given.dense->size1;
        double *ours = ARENA_ARRAY(given.arena, double, n);
        double *theirs = ARENA_ARRAY(given.arena, double, n);
        for (size_t i = 0; i < n; i++)
            ours[i] = theirs[i] = gsl_rng_uniform(given.rng) - 0.5;
        struct solver_factor gsl = solver_factor(given.arena, SOLVER_GSL, &given.sparse);
        struct solver_factor own = solver_factor(given.arena, SOLVER_OWN, &given.sparse);
        cr_assert(own.positive && gsl.positive, "seed %u", seed);
        solver_solve(given.arena, &own, 1, &ours);
        solver_solve(given.arena, &gsl, 1, &theirs);
        for (size_t i = 0; i < n; i++)
            NEAR(ours[i], theirs[i], 1e-8, 1e-9);
        given_free(&given);
    }
}
