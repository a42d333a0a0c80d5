/* Speed as ratios inside one run: medians of nine, one thread. See `make bench`.
 *
 *   bench BATTEN TRIVIAL FRAME.yaml
 */
#include "brace/trial.h"
#include "fold/ways.h"
#include "loads/loads.h"
#include "sway/sway.h"

#include "base/text.h"

#include <fcntl.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_rng.h>
#include <lapacke.h>
#include <math.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>

enum { RUNS = 9 };
extern char **environ;

static double now(void) {
    struct timespec at;
    clock_gettime(CLOCK_MONOTONIC, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

static int ascending(const void *left, const void *right) {
    double a = *(const double *)left, b = *(const double *)right;
    return (a > b) - (a < b);
}

/* Median of RUNS calls after one to warm up, s. */
static double median_of(void (*work)(void *), void *with) {
    double times[RUNS];
    work(with);
    for (int k = 0; k < RUNS; k++) {
        double start = now();
        work(with);
        times[k] = now() - start;
    }
    qsort(times, RUNS, sizeof *times, ascending);
    return times[RUNS / 2];
}

static void row(const char *what, double ours, double theirs, double goal) {
    double ratio = ours / theirs;
    printf("%-58s %10.3f %10.3f %8.3f", what, 1e3 * ours, 1e3 * theirs, ratio);
    if (goal > 0.0)
        printf("  goal %.3g: %s", goal, ratio <= goal ? "met" : "missed");
    printf("\n");
    fflush(stdout);
}

/* ---- whole processes ---- */

struct process {
    char *const *arguments;
    long peak; /* KiB */
};

static void run_process(void *with) {
    struct process *process = with;
    posix_spawn_file_actions_t actions;
    pid_t child;
    int status;
    struct rusage usage;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
    if (posix_spawn(&child, process->arguments[0], &actions, NULL, process->arguments, environ) !=
        0)
        exit(1);
    posix_spawn_file_actions_destroy(&actions);
    if (wait4(child, &status, 0, &usage) < 0)
        exit(1);
    process->peak = usage.ru_maxrss;
}

static void whole_check(char **argv) {
    char *const ours[] = {argv[1], "check", argv[3], NULL}, *const floor[] = {argv[2], NULL};
    struct process check = {.arguments = ours}, trivial = {.arguments = floor};
    double a = median_of(run_process, &check), b = median_of(run_process, &trivial);
    row("whole check of the stand / trivial program", a, b, 1.5);
    printf("    peak memory %.1f MB, goal 10: %s\n", (double)check.peak / 1024.0,
           check.peak < 10 * 1024 ? "met" : "missed");
}

/* ---- frames: stands in a row ---- */

static const char *const corners[] = {"fl", "fr", "br", "bl"};

static void one_stand(struct text *joints, struct text *members, struct text *supports, int k,
                      const char *ends) {
    for (int level = 0; level <= 3; level++)
        for (int c = 0; c < 4; c++)
            text_print(joints, "  %s%d-%d: [%g, %g, %g]\n", corners[c], level, k,
                       60.0 * k + (c == 1 || c == 2 ? 46.5 : 0.0), c >= 2 ? 23.25 : 0.0,
                       level ? 11.25 + 18.0 * (level - 1) : 0.0);
    for (int c = 0; c < 4; c++) {
        text_print(members, "  post-%s-%d: {from: %s0-%d, to: %s3-%d, stick: post}\n", corners[c],
                   k, corners[c], k, corners[c], k);
        text_print(supports, "  %s0-%d: pinned\n", corners[c], k);
    }
    for (int level = 1; level <= 3; level++)
        for (int c = 0; c < 4; c++)
            text_print(members,
                       "  rail-%d-%d-%d: {from: %s%d-%d, to: %s%d-%d, stick: rail, ends: %s}\n",
                       level, c, k, corners[c], level, k, corners[(c + 1) % 4], level, k, ends);
    if (k > 0) /* side by side: tied at the top */
        text_print(members, "  link-%d: {from: fr3-%d, to: fl3-%d, stick: rail, ends: %s}\n", k,
                   k - 1, k, ends);
}

struct made {
    struct arena *arena;
    const struct frame *frame;
    struct model *model;
    struct loads *loads;
};

static struct made stands(int count, const char *ends) {
    struct made made = {.arena = arena_new()};
    if (!made.arena || ARENA_TRAP(made.arena))
        exit(1);
    struct text joints = text_new(made.arena), members = text_new(made.arena);
    struct text supports = text_new(made.arena), all = text_new(made.arena);
    for (int k = 0; k < count; k++)
        one_stand(&joints, &members, &supports, k, ends);
    text_print(&all,
               "batten: 1\nsticks:\n"
               "  post: {size: 2x2, species: hem-fir, grade: no-2}\n"
               "  rail: {size: 1x3, species: hem-fir, grade: ungraded}\n"
               "connections: {lap: {type: screwed-lap, screw: 8, length: 2 in, count: 2}}\n"
               "joints:\n%smembers:\n%ssupports:\n%s",
               text_string(&joints), text_string(&members), text_string(&supports));
    struct problems problems = problems_new(made.arena);
    made.frame = frame_read(made.arena, text_string(&all), all.count, (struct frame_limits){true},
                            &problems);
    if (!made.frame) {
        fprintf(stderr, "bench: %s\n", problems.items[0].message);
        exit(1);
    }
    made.model = model_build(made.arena, made.frame, &problems);
    made.loads = loads_build(made.arena, made.model);
    return made;
}

/* ---- order, assemble, factor, solve ---- */

static void solve_all(void *with) {
    struct made *made = with;
    struct arena_mark mark = arena_mark(made->arena);
    struct system *system = system_build(made->arena, made->model, STIFFNESS_MIDDLE, NULL, 0);
    response_solve(made->arena, system, made->loads, false);
    arena_rewind(made->arena, mark);
}

struct banded {
    lapack_int n, half, columns;
    double *matrix, *loads, *work_matrix, *work_loads;
};

static void lapack_banded(void *with) {
    struct banded *banded = with;
    size_t size = (size_t)banded->n * (size_t)(banded->half + 1);
    memcpy(banded->work_matrix, banded->matrix, size * sizeof(double));
    memcpy(banded->work_loads, banded->loads,
           (size_t)(banded->n * banded->columns) * sizeof(double));
    LAPACKE_dpbtrf_work(LAPACK_COL_MAJOR, 'L', banded->n, banded->half, banded->work_matrix,
                        banded->half + 1);
    LAPACKE_dpbtrs_work(LAPACK_COL_MAJOR, 'L', banded->n, banded->half, banded->columns,
                        banded->work_matrix, banded->half + 1, banded->work_loads, banded->n);
}

/* K = L L' from the factor held, which has LAPACK's own band layout. */
static double *matrix_of(struct arena *arena, const struct band *factor) {
    size_t wide = factor->half + 1;
    double *matrix = ARENA_ARRAY(arena, double, factor->count *wide);
    for (size_t i = 0; i < factor->count; i++)
        for (size_t j = 0; j < wide && i + j < factor->count; j++) {
            size_t first = i + j > factor->half ? i + j - factor->half : 0;
            for (size_t k = first; k <= i; k++)
                matrix[i * wide + j] +=
                    factor->items[k * wide + (i + j - k)] * factor->items[k * wide + (i - k)];
        }
    return matrix;
}

static void solution(int count) {
    char what[80];
    struct made made = stands(count, "lap");
    struct system *system = system_build(made.arena, made.model, STIFFNESS_MIDDLE, NULL, 0);
    struct response *response = response_solve(made.arena, system, made.loads, false);
    struct banded banded = {.n = (lapack_int)system->count,
                            .half = (lapack_int)system->factor.half,
                            .columns = (lapack_int)response->column_count,
                            .matrix = matrix_of(made.arena, &system->factor)};
    size_t size = system->count * (system->factor.half + 1);
    banded.work_matrix = ARENA_ARRAY(made.arena, double, size);
    banded.loads = ARENA_ARRAY(made.arena, double, system->count * response->column_count);
    banded.work_loads = ARENA_ARRAY(made.arena, double, system->count * response->column_count);
    for (size_t k = 0; k < system->count * response->column_count; k++)
        banded.loads[k] = 1.0;
    snprintf(what, sizeof what, "%d stand%s: order to forces / dpbtrf + dpbtrs alone", count,
             count == 1 ? "" : "s");
    double ours = median_of(solve_all, &made);
    row(what, ours, median_of(lapack_banded, &banded), 0.0);
    arena_free(made.arena);
}

/* ---- candidate braces ---- */

struct braces {
    struct made made;
    const struct system *system;
    struct bar *bars;
    size_t count;
    double *pushes[2];
    double *limits;
};

static void try_by_rank_one(void *with) {
    static const int axes[] = {0, 1};
    struct braces *braces = with;
    struct arena_mark mark = arena_mark(braces->made.arena);
    struct trial *trial = trial_prepare(braces->made.arena, braces->system, braces->bars,
                                        braces->count, braces->pushes, axes, 2, braces->limits);
    for (int k = 0; k < (int)braces->count; k++)
        trial_run(braces->made.arena, trial, &k, 1, NULL);
    arena_rewind(braces->made.arena, mark);
}

static void try_anew(void *with) {
    struct braces *braces = with;
    for (size_t k = 0; k < braces->count; k++) {
        struct arena_mark mark = arena_mark(braces->made.arena);
        struct system *system = system_build(braces->made.arena, braces->made.model,
                                             STIFFNESS_MIDDLE, &braces->bars[k], 1);
        response_solve(braces->made.arena, system, braces->made.loads, false);
        arena_rewind(braces->made.arena, mark);
    }
}

static void candidates(void) {
    struct braces braces = {.made = stands(1, "lap")};
    struct arena *arena = braces.made.arena;
    size_t joints = braces.made.frame->joints.count;
    braces.system = system_build(arena, braces.made.model, STIFFNESS_MIDDLE, NULL, 0);
    struct response *response = response_solve(arena, braces.system, braces.made.loads, false);
    braces.bars = ARENA_ARRAY(arena, struct bar, joints * joints);
    for (size_t a = 0; a < joints; a++)
        for (size_t b = 0; b < a; b++)
            braces.bars[braces.count++] = (struct bar){{(int)b, (int)a}, 1e6};
    for (int axis = 0; axis < 2; axis++) {
        braces.pushes[axis] = ARENA_ARRAY(arena, double, 3 * braces.made.model->slot_count);
        response_gather(
            arena, response,
            (size_t)response_column(response, axis ? SET_PUSH_Y : SET_PUSH_X, LEAN_NONE),
            braces.pushes[axis]);
    }
    braces.limits = lean_limits(arena, braces.made.model);
    double ours = median_of(try_by_rank_one, &braces);
    row("candidate braces, all pairs: rank one / solved anew", ours, median_of(try_anew, &braces),
        1.0 / 8.0);
    arena_free(arena);
}

/* ---- ways to fold ---- */

static void find_ways(void *with) {
    struct made *made = with;
    struct arena_mark mark = arena_mark(made->arena);
    fold_ways(made->arena, made->model, NULL, 0);
    arena_rewind(made->arena, mark);
}

struct dense {
    lapack_int rows, columns;
    double *matrix, *work, *values, *left, *right;
};

static void lapack_singular(void *with) {
    struct dense *dense = with;
    size_t size = (size_t)dense->rows * (size_t)dense->columns;
    memcpy(dense->work, dense->matrix, size * sizeof(double));
    LAPACKE_dgesdd(LAPACK_COL_MAJOR, 'S', dense->rows, dense->columns, dense->work, dense->rows,
                   dense->values, dense->left, dense->rows, dense->right, dense->columns);
}

static void folding(void) {
    struct made made = stands(24, "pinned");
    struct straight straight = straight_build(made.arena, made.model, NULL, 0);
    size_t rows = straight.rows.count, columns = 3 * made.frame->joints.count;
    struct dense dense = {.rows = (lapack_int)columns,
                          .columns = (lapack_int)rows,
                          .matrix = ARENA_ARRAY(made.arena, double, rows *columns),
                          .work = ARENA_ARRAY(made.arena, double, rows *columns),
                          .values = ARENA_ARRAY(made.arena, double, rows + columns),
                          .left = ARENA_ARRAY(made.arena, double, columns *columns),
                          .right = ARENA_ARRAY(made.arena, double, rows *rows)};
    for (size_t r = 0; r < rows; r++)
        for (int k = 0; k < straight.rows.items[r].count; k++)
            for (int c = 0; c < 3; c++)
                dense.matrix[r * columns + 3 * (size_t)straight.rows.items[r].joints[k] +
                             (size_t)c] += straight.rows.items[r].factors[k][c];
    if (rows > columns) { /* tall side first, as dgesdd likes it least square */
        dense.left = ARENA_ARRAY(made.arena, double, rows *columns);
        dense.right = ARENA_ARRAY(made.arena, double, rows *rows);
    }
    char what[80];
    snprintf(what, sizeof what, "ways to fold with modes, %zu sticks / dgesdd",
             made.frame->members.count);
    double ours = median_of(find_ways, &made);
    row(what, ours, median_of(lapack_singular, &dense), 0.3);
    arena_free(made.arena);
}

/* ---- verdict on buckling ---- */

struct buckling {
    struct made made;
    struct sway_frame *frame;
    lapack_int n;
    double *K, *G, *work_K, *work_G, *values, *shapes;
    lapack_int *failed;
};

static void count_pivots(void *with) {
    struct buckling *buckling = with;
    struct arena_mark mark = arena_mark(buckling->made.arena);
    sway_count_below(buckling->made.arena, buckling->frame, 2.0);
    arena_rewind(buckling->made.arena, mark);
}

static void lapack_largest(void *with) {
    struct buckling *buckling = with;
    size_t size = (size_t)buckling->n * (size_t)buckling->n;
    lapack_int found;
    memcpy(buckling->work_K, buckling->K, size * sizeof(double));
    memcpy(buckling->work_G, buckling->G, size * sizeof(double));
    LAPACKE_dsygvx(LAPACK_COL_MAJOR, 1, 'N', 'I', 'L', buckling->n, buckling->work_G, buckling->n,
                   buckling->work_K, buckling->n, 0.0, 0.0, buckling->n, buckling->n, 0.0, &found,
                   buckling->values, buckling->shapes, buckling->n, buckling->failed);
}

/* Dense matrices of the size of the frame's own unknowns: the count works on the finer cut. */
static void buckling_verdict(void) {
    struct buckling buckling = {.made = stands(1, "lap")};
    struct arena *arena = buckling.made.arena;
    struct system *system = system_build(arena, buckling.made.model, STIFFNESS_LOW, NULL, 0);
    struct response *response = response_solve(arena, system, buckling.made.loads, false);
    double *weights = ARENA_ARRAY(arena, double, response->column_count);
    weights[response_column(response, SET_SELF, LEAN_NONE)] = 1.0;
    struct sway_input input = {.setting = {.model = buckling.made.model,
                                           .stiffness = STIFFNESS_LOW,
                                           .least_stiffness = true}};
    input.axial = (const double(*)[2])sway_axial(arena, response, weights);
    buckling.frame = sway_prepare(arena, &input);
    size_t n = system->count;
    buckling.n = (lapack_int)n;
    buckling.K = ARENA_ARRAY(arena, double, n *n);
    buckling.G = ARENA_ARRAY(arena, double, n *n);
    buckling.work_K = ARENA_ARRAY(arena, double, n *n);
    buckling.work_G = ARENA_ARRAY(arena, double, n *n);
    buckling.values = ARENA_ARRAY(arena, double, n);
    buckling.shapes = ARENA_ARRAY(arena, double, n);
    buckling.failed = ARENA_ARRAY(arena, lapack_int, n);
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    for (size_t i = 0; i < n; i++)
        for (size_t j = 0; j <= i; j++) {
            buckling.G[j * n + i] = gsl_rng_uniform(random) - 0.5;
            buckling.K[j * n + i] = (i == j ? (double)n : 0.0) + gsl_rng_uniform(random);
        }
    gsl_rng_free(random);
    double ours = median_of(count_pivots, &buckling);
    row("buckling verdict of the stand, count of pivots / dsygvx", ours,
        median_of(lapack_largest, &buckling), 0.2);
    arena_free(arena);
}

int main(int argc, char **argv) {
    if (argc != 4) {
        fprintf(stderr, "bench BATTEN TRIVIAL FRAME.yaml\n");
        return 2;
    }
    gsl_set_error_handler_off();
    printf("%-58s %10s %10s %8s\n", "medians of nine, ms", "ours", "theirs", "ratio");
    whole_check(argv);
    solution(1);
    solution(10);
    solution(50);
    candidates();
    folding();
    buckling_verdict();
    return 0;
}
