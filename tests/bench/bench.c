/* Speed as ratios inside one run: medians of nine, one thread. See tests/bench/run.
 *
 *   bench BATTEN TRIVIAL FRAME.yaml FOLDER
 *
 * Both sides of a row get the same matrices and the same loads, and their answers are compared
 * before they are timed: where those differ the row says so and the status is 1.
 */
#include "brace/trial.h"
#include "fold/ways.h"
#include "loads/loads.h"
#include "sway/sway.h"

#include "cutting.h"
#include "fixing.h"
#include "solving.h"
#include "timing.h"

#include "base/text.h"
#include "solve/entries.h"
#include "solve/system.h"

#include <fcntl.h>
#include <gsl/gsl_errno.h>
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

static double median(double times[RUNS]) {
    qsort(times, RUNS, sizeof *times, ascending);
    return times[RUNS / 2];
}

/* Median of RUNS calls after one to warm up, s. */
double median_of(void (*work)(void *), void *with) {
    double times[RUNS];
    work(with);
    for (int k = 0; k < RUNS; k++) {
        double start = now();
        work(with);
        times[k] = now() - start;
    }
    return median(times);
}

static const char *verdict(double value, double goal) {
    return value <= goal ? "met" : "missed";
}

static void row(const char *what, double ours, double theirs, double goal) {
    double ratio = ours / theirs;
    printf("%-66s %10.3f %10.3f %9.4f", what, 1e3 * ours, 1e3 * theirs, ratio);
    if (goal > 0.0)
        printf(" %8.4g  %s", goal, verdict(ratio, goal));
    printf("\n");
    fflush(stdout);
}

static bool all_agree = true;

/* `apart`: the largest relative difference between our answers and theirs. */
static void agree(const char *what, double apart, double most) {
    if (apart <= most)
        return;
    all_agree = false;
    printf("%s: the answers DIFFER by %.2g\n", what, apart);
}

/* ---- whole processes ---- */

struct process {
    char *const *arguments;
    long peak;          /* KiB */
    double times[RUNS]; /* s of the processor: other programs do not count */
};

static double seconds(struct timeval time) {
    return (double)time.tv_sec + 1e-6 * (double)time.tv_usec;
}

static void run_process(struct process *process, int run) {
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
    process->times[run] = seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

static void whole_check(char **argv) {
    char *const ours[] = {argv[1], "check", argv[3], NULL}, *const floor[] = {argv[2], NULL};
    struct process check = {.arguments = ours}, trivial = {.arguments = floor};
    run_process(&check, 0); /* to warm up */
    run_process(&trivial, 0);
    for (int k = 0; k < RUNS; k++) {
        run_process(&check, k);
        run_process(&trivial, k);
    }
    row("whole check of the stand / trivial program", median(check.times), median(trivial.times),
        1.2);
    double megabytes = (double)check.peak * 1024.0 / 1e6;
    /* that of the trivial program would be our own: a child starts with its parent's pages */
    printf("%-66s %7.1f MB %20s %5d MB  %s\n", "    its peak memory", megabytes, "", 10,
           verdict(megabytes, 10.0));
}

/* How time and memory of a whole `check` grow along a row: exponents of the number of sections. */
static void growth(char **argv, const char *shorter, const char *longer, double times) {
    double seconds_of[2], peaks[2];
    for (int k = 0; k < 2; k++) {
        char path[256];
        snprintf(path, sizeof path, "%s/%s.yaml", argv[4], k ? longer : shorter);
        char *const arguments[] = {argv[1], "check", "--large", path, NULL};
        struct process process = {.arguments = arguments};
        enum { FEW = 3 };
        for (int run = 0; run < FEW; run++)
            run_process(&process, run);
        qsort(process.times, FEW, sizeof *process.times, ascending);
        seconds_of[k] = process.times[FEW / 2];
        peaks[k] = (double)process.peak;
    }
    double time = log(seconds_of[1] / seconds_of[0]) / log(times);
    double memory = log(peaks[1] / peaks[0]) / log(times);
    printf("whole check of %s: %.2f s, %.0f MB; from %s on as n to the\n", longer, seconds_of[1],
           peaks[1] * 1024.0 / 1e6, shorter);
    printf("%-66s %31.2f %8.4g  %s\n", "    time", time, 1.15, verdict(time, 1.15));
    printf("%-66s %31.2f %8.4g  %s\n", "    memory", memory, 1.0, verdict(memory, 1.0));
    fflush(stdout);
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

static struct made made_new(void) {
    struct made made = {.arena = arena_new()};
    if (!made.arena || ARENA_TRAP(made.arena))
        exit(1);
    return made;
}

static void make(struct made *made, const struct text *all) {
    struct problems problems = problems_new(made->arena);
    made->frame = frame_read(made->arena, text_string(all), all->count, (struct frame_limits){.large = true},
                             &problems);
    if (!made->frame) {
        fprintf(stderr, "bench: %s\n", problems.items[0].message);
        exit(1);
    }
    made->model = model_build(made->arena, made->frame, &problems);
    made->loads = loads_build(made->arena, made->model);
}

static struct made of_file(const char *path) {
    struct made made = made_new();
    struct text all = text_new(made.arena);
    char piece[4096];
    FILE *file = fopen(path, "r");
    if (!file)
        exit(1);
    for (size_t count; (count = fread(piece, 1, sizeof piece, file)) > 0;)
        text_print(&all, "%.*s", (int)count, piece);
    fclose(file);
    make(&made, &all);
    return made;
}

static struct made stands(int count, const char *ends) {
    struct made made = made_new();
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
    make(&made, &all);
    return made;
}

/* ---- order, factor, ten cases ---- */

/* One of the frames that tests/tools/make-frame made; `goal` of the ratio to CHOLMOD. */
static void solution(const char *folder, const char *name, double goal) {
    char path[256], what[80];
    snprintf(path, sizeof path, "%s/%s.yaml", folder, name);
    struct made made = of_file(path);
    struct solving found = solving(made.arena, made.model, made.frame->members.count < 2000);
    agree(name, found.apart, 1e-6);
    snprintf(what, sizeof what, "%s, %zu unknowns: order, factor, ten cases / CHOLMOD", name,
             found.unknowns);
    row(what, found.ours, found.theirs, goal);
    printf("%-66s %31.3f\n", "    the same, memory of the factor", found.memory);
    if (isfinite(found.gsl))
        row("    the same / GSL's band, --solver gsl", found.ours, found.gsl, 0.0);
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

/* How far the worst lean of any candidate is from that of the frame solved anew with it. */
static double leans_apart(struct braces *braces) {
    static const int axes[] = {0, 1};
    struct arena *arena = braces->made.arena;
    struct arena_mark before = arena_mark(arena);
    double worst = 0.0;
    struct trial *trial = trial_prepare(arena, braces->system, braces->bars, braces->count,
                                        braces->pushes, axes, 2, braces->limits);
    for (int k = 0; k < (int)braces->count; k++) {
        struct arena_mark mark = arena_mark(arena);
        struct trial_result tried = trial_run(arena, trial, &k, 1, NULL);
        struct system *system =
            system_build(arena, braces->made.model, STIFFNESS_MIDDLE, &braces->bars[k], 1);
        struct response *response = response_solve(arena, system, braces->made.loads, false);
        double anew = 0.0;
        for (int axis = 0; axis < 2; axis++) {
            int column = response_column(response, axis ? SET_PUSH_Y : SET_PUSH_X, LEAN_NONE);
            anew =
                fmax(anew,
                     lean_worst(braces->made.model, braces->limits, response->slots[column]).ratio);
        }
        worst = fmax(worst, tried.stands ? fabs(tried.worst - anew) / anew : INFINITY);
        arena_rewind(arena, mark);
    }
    arena_rewind(arena, before);
    return worst;
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
    agree("candidate braces", leans_apart(&braces), 1e-6);
    char what[80];
    snprintf(what, sizeof what, "%zu candidate braces: rank one / solved anew", braces.count);
    double ours = median_of(try_by_rank_one, &braces);
    row(what, ours, median_of(try_anew, &braces), 1.0 / 8.0);
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
    LAPACKE_dgesdd(LAPACK_COL_MAJOR, 'A', dense->rows, dense->columns, dense->work, dense->rows,
                   dense->values, dense->left, dense->rows, dense->right, dense->columns);
}

static size_t zeros_of(const struct dense *dense) {
    size_t count = 0, found = (size_t)(dense->rows < dense->columns ? dense->rows : dense->columns);
    for (size_t k = 0; k < found; k++)
        count += dense->values[k] < 1e-9 * dense->values[0];
    return count + (size_t)dense->rows - found;
}

/* The strain matrix turned over: a row a free movement, a column a strain. */
static void folding(void) {
    struct made made = stands(24, "pinned");
    struct straight straight = straight_build(made.arena, made.model, NULL, 0);
    size_t joints = made.frame->joints.count, columns = straight.rows.count, rows = 0;
    int *unknown = ARENA_ARRAY(made.arena, int, 3 * joints);
    for (size_t j = 0; j < joints; j++)
        for (int c = 0; c < 3; c++)
            unknown[3 * j + c] =
                made.model->slots[made.model->move_slot[j]].held[c] ? -1 : (int)rows++;
    size_t least = rows < columns ? rows : columns;
    struct dense dense = {.rows = (lapack_int)rows,
                          .columns = (lapack_int)columns,
                          .matrix = ARENA_ARRAY(made.arena, double, rows *columns),
                          .work = ARENA_ARRAY(made.arena, double, rows *columns),
                          .values = ARENA_ARRAY(made.arena, double, least),
                          .left = ARENA_ARRAY(made.arena, double, rows *rows),
                          .right = ARENA_ARRAY(made.arena, double, columns *columns)};
    for (size_t r = 0; r < columns; r++)
        for (int k = 0; k < straight.rows.items[r].count; k++)
            for (int c = 0; c < 3; c++) {
                int row = unknown[3 * straight.rows.items[r].joints[k] + c];
                if (row >= 0)
                    dense.matrix[r * rows + (size_t)row] += straight.rows.items[r].factors[k][c];
            }
    lapack_singular(&dense);
    size_t ways = fold_ways(made.arena, made.model, NULL, 0).count;
    agree("ways to fold", fabs((double)ways - (double)zeros_of(&dense)), 0.0);
    char what[80];
    snprintf(what, sizeof what, "%zu ways to fold of %zu sticks, with modes / dgesdd", ways,
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

/* The lower triangle, dense, times a sign. */
static double *dense_of(struct arena *arena, const struct sparse *matrix, double sign) {
    struct entries entries = entries_of(arena, matrix);
    double *dense = ARENA_ARRAY(arena, double, entries.unknowns * entries.unknowns);
    for (size_t k = 0; k < entries.count; k++)
        dense[(size_t)entries.items[k].column * entries.unknowns + (size_t)entries.items[k].row] =
            sign * entries.items[k].value;
    return dense;
}

/* Forces along the sticks under the first combination of the file. */
static double (*axial_of(struct made *made))[2] {
    struct system *system = system_build(made->arena, made->model, STIFFNESS_LOW, NULL, 0);
    struct response *response = response_solve(made->arena, system, made->loads, false);
    double *weights = ARENA_ARRAY(made->arena, double, response->column_count);
    const struct load_combination *first = &made->loads->combinations[0];
    for (size_t t = 0; t < first->term_count; t++) {
        const struct load_case *load_case = &made->loads->cases[first->terms[t].load_case];
        for (int k = 0; k < load_case->set_count; k++) {
            int column = response_column(response, load_case->sets[k], LEAN_NONE);
            if (column >= 0)
                weights[column] += first->terms[t].factor;
        }
    }
    return sway_axial(made->arena, response, weights);
}

/* The refined matrices that the count itself works on. */
static void buckling_verdict(const char *path, int pieces) {
    struct buckling buckling = {.made = of_file(path)};
    struct arena *arena = buckling.made.arena;
    const struct sparse *elastic, *geometric;
    struct sway_input input = {.setting = {.model = buckling.made.model,
                                           .stiffness = STIFFNESS_LOW,
                                           .least_stiffness = true},
                               .axial = (const double(*)[2])axial_of(&buckling.made),
                               .pieces = pieces};
    buckling.frame = sway_prepare(arena, &input);
    sway_matrices(buckling.frame, &elastic, &geometric);
    size_t n = elastic->blocks->unknowns;
    buckling.n = (lapack_int)n;
    buckling.K = dense_of(arena, elastic, 1.0);
    buckling.G = dense_of(arena, geometric, -1.0);
    buckling.work_K = ARENA_ARRAY(arena, double, n *n);
    buckling.work_G = ARENA_ARRAY(arena, double, n *n);
    buckling.values = ARENA_ARRAY(arena, double, n);
    buckling.shapes = ARENA_ARRAY(arena, double, n);
    buckling.failed = ARENA_ARRAY(arena, lapack_int, n);
    lapack_largest(&buckling);
    double factor = sway_factor(arena, buckling.frame).factor;
    agree("buckling", fabs(1.0 / buckling.values[0] - factor) / factor, 1e-6);
    for (int k = 0; k < 2; k++) { /* close below it none counts, close above it one does */
        bool counts = sway_count_below(arena, buckling.frame, factor * (k ? 1.001 : 0.999)) > 0;
        agree("count of pivots", counts == (k == 1) ? 0.0 : 1.0, 0.0);
    }
    char what[80];
    snprintf(what, sizeof what, "buckling verdict of the stand, %zu unknowns / dsygvx", n);
    double ours = median_of(count_pivots, &buckling);
    row(what, ours, median_of(lapack_largest, &buckling), 0.2);
    arena_free(arena);
}

int main(int argc, char **argv) {
    if (argc != 5) {
        fprintf(stderr, "bench BATTEN TRIVIAL FRAME.yaml FOLDER\n");
        return 2;
    }
    gsl_set_error_handler_off();
    printf("%-66s %10s %10s %9s %8s\n", "medians of nine, ms", "ours", "theirs", "ratio", "goal");
    whole_check(argv);
    growth(argv, "row-10", "row-100", 10.0);
    growth(argv, "row-10", "row-1000", 100.0);
    solution(argv[4], "row-1", 1.0);
    solution(argv[4], "row-10", 0.8);
    solution(argv[4], "row-100", 0.8);
    solution(argv[4], "row-1000", 0.8);
    solution(argv[4], "cube-4", 0.0);
    solution(argv[4], "cube-8", 0.0);
    solution(argv[4], "cube-10", 1.2);
    solution(argv[4], "cube-12", 1.2);
    candidates();
    folding();
    buckling_verdict(argv[3], 1);
    buckling_verdict(argv[3], 0);
    cutting();
    if (!fixing(argv[3]))
        return 1;
    return all_agree ? 0 : 1;
}
