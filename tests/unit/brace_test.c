/* Braces: rank-one trials against full solutions, the search against Bolker and Crapo's counts, and
 * frames that a builder asks about. */
#include "near.h"

#include "brace/brace.h"
#include "brace/trial.h"
#include "fold/ways.h"
#include "loads/loads.h"

#include <criterion/criterion.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_rng.h>
#include <math.h>
#include <string.h>

#include "base/text.h"

static const struct frame *read_text(struct arena *arena, const char *text) {
    struct problems problems = problems_new(arena);
    const struct frame *frame =
        frame_read(arena, text, strlen(text), (struct frame_limits){false}, &problems);
    cr_assert(frame != NULL, "%s\n%s", problems.count ? problems.items[0].message : "?", text);
    return frame;
}

/* ---- rank-one trials ---- */

/* A stand of random size: posts that run through, rails fastened in a random way, some braced. */
static void random_stand(gsl_rng *random, struct text *yaml) {
    static const char *const ends[] = {"pinned", "lap", "butt", "stiff"};
    int levels = 1 + (int)gsl_rng_uniform_int(random, 3);
    double wide = 20.0 + 40.0 * gsl_rng_uniform(random),
           deep = 12.0 + 20.0 * gsl_rng_uniform(random);
    double step = 10.0 + 14.0 * gsl_rng_uniform(random);
    static const char *const corners[] = {"fl", "fr", "br", "bl"};
    text_add(yaml, "batten: 1\nsticks:\n"
                   "  post: {size: 2x2, species: hem-fir, grade: no-2}\n"
                   "  rail: {size: 1x3, species: spruce-pine-fir, grade: ungraded}\n"
                   "connections:\n"
                   "  lap: {type: screwed-lap, screw: 8, length: 2 in, count: 2}\n"
                   "  butt: {type: screwed-butt, screw: 8, length: 3 in, count: 2}\n"
                   "  stiff: {type: springs, rotation: 4000 lb-in/rad, slip: 9000 lb/in}\n"
                   "joints:\n");
    for (int level = 0; level <= levels; level++)
        for (int c = 0; c < 4; c++)
            text_print(yaml, "  %s%d: [%.4f, %.4f, %.4f]\n", corners[c], level,
                       c == 1 || c == 2 ? wide : 0.0, c >= 2 ? deep : 0.0, step * level);
    text_add(yaml, "members:\n");
    for (int c = 0; c < 4; c++)
        text_print(yaml, "  post-%s: {from: %s0, to: %s%d, stick: post}\n", corners[c], corners[c],
                   corners[c], levels);
    for (int level = 1; level <= levels; level++)
        for (int c = 0; c < 4; c++) {
            /* one rail a side at least turns with its posts, so that the frame as fastened stands
             */
            const char *end = level == 1 ? "stiff" : ends[gsl_rng_uniform_int(random, 4)];
            text_print(yaml, "  rail-%d-%d: {from: %s%d, to: %s%d, stick: rail, ends: %s}\n", level,
                       c, corners[c], level, corners[(c + 1) % 4], level, end);
            if (gsl_rng_uniform(random) < 0.25)
                text_print(yaml,
                           "  brace-%d-%d: {from: %s%d, to: %s%d, stick: rail, ends: pinned, "
                           "acts-as: brace}\n",
                           level, c, corners[c], level - 1, corners[(c + 1) % 4], level);
        }
    text_add(yaml, "supports:\n");
    for (int c = 0; c < 4; c++)
        text_print(yaml, "  %s0: pinned\n", corners[c]);
}

static size_t push_loads(struct arena *arena, const struct response *response, double **pushes,
                         int *axes) {
    static const int sets[] = {SET_PUSH_X, SET_PUSH_Y};
    for (int axis = 0; axis < 2; axis++) {
        pushes[axis] = ARENA_ARRAY(arena, double, 3 * response->system->model->slot_count);
        axes[axis] = axis;
        response_gather(arena, response, (size_t)response_column(response, sets[axis], LEAN_NONE),
                        pushes[axis]);
    }
    return 2;
}

/* Rank-one results equal full solutions to 1e-9, for 200 random braced frames. */
static void quiet(void) {
    gsl_set_error_handler_off();
}

Test(brace, rank_one_equals_full_solution, .init = quiet) {
    enum { FRAMES = 200 };
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 20261);
    for (int k = 0; k < FRAMES; k++) {
        struct arena *arena = arena_new();
        cr_assert(!ARENA_TRAP(arena), "out of memory");
        struct text yaml = text_new(arena);
        random_stand(random, &yaml);
        const struct frame *frame = read_text(arena, text_string(&yaml));
        struct problems problems = problems_new(arena);
        struct model *model = model_build(arena, frame, &problems);
        struct loads *loads = loads_build(arena, model);
        double *limits = lean_limits(arena, model);
        int joints = (int)frame->joints.count, set[3] = {0, 1, 2};
        size_t count = 1 + gsl_rng_uniform_int(random, 3);
        struct bar bars[3];
        for (size_t b = 0; b < count; b++) {
            int one = (int)gsl_rng_uniform_int(random, (unsigned long)joints), other = one;
            while (other == one)
                other = (int)gsl_rng_uniform_int(random, (unsigned long)joints);
            bars[b] = (struct bar){{one, other}, pow(10.0, 4.0 + 3.0 * gsl_rng_uniform(random))};
        }
        struct system *bare = system_build(arena, model, STIFFNESS_MIDDLE, NULL, 0);
        struct response *response = response_solve(arena, bare, loads, false);
        double *pushes[2], forces[6];
        int axes[2];
        size_t push_count = push_loads(arena, response, pushes, axes);
        struct trial *trial =
            trial_prepare(arena, bare, bars, count, pushes, axes, push_count, limits);
        struct trial_result tried = trial_run(arena, trial, set, count, forces);
        struct system *whole = system_build(arena, model, STIFFNESS_MIDDLE, bars, count);
        struct response *full = response_solve(arena, whole, loads, false);
        cr_assert(tried.stands, "frame %d does not stand", k);
        for (int axis = 0; axis < 2; axis++) {
            int column = response_column(full, axis ? SET_PUSH_Y : SET_PUSH_X, LEAN_NONE);
            cr_assert(full->solvable[column], "frame %d cannot be solved", k);
            struct lean lean = lean_worst(model, limits, full->slots[column]);
            NEAR_REL(tried.lean[axis].ratio, lean.ratio, 1e-9);
            NEAR_REL(tried.lean[axis].movement, lean.movement, 1e-9);
            double largest = 0.0;
            for (size_t b = 0; b < count; b++)
                largest = fmax(largest, fabs(forces[(size_t)axis * count + b]));
            for (size_t b = 0; b < count; b++)
                NEAR(forces[(size_t)axis * count + b],
                     bars[b].stiffness * bar_elongation(model, &bars[b], full->slots[column]), 1e-9,
                     1e-9 * largest + 1e-9); /* a bar between two supports carries nothing */
        }
        arena_free(arena);
    }
    gsl_rng_free(random);
}

/* ---- the fewest braces of grids ---- */

/* r x c rectangles of unequal size, pinned everywhere, with diagonals in some; held as a body at
 * two joints. `braced[i * columns + j]`. */
static void grid(gsl_rng *random, int rows, int columns, const bool *braced, struct text *yaml) {
    text_add(yaml, "batten: 1\nself-weight: no\nlimits: {lean: 1000 ft}\n"
                   "sticks: {s: {size: 2x2, species: hem-fir, grade: no-2}}\njoints:\n");
    double x = 0.0, z = 0.0;
    double xs[6], zs[6];
    for (int j = 0; j <= columns; j++, x += 10.0 + 20.0 * gsl_rng_uniform(random))
        xs[j] = x;
    for (int i = 0; i <= rows; i++, z += 10.0 + 20.0 * gsl_rng_uniform(random))
        zs[i] = z;
    for (int i = 0; i <= rows; i++)
        for (int j = 0; j <= columns; j++)
            text_print(yaml, "  j%d-%d: [%.5f, %.5f]\n", i, j, xs[j], zs[i]);
    text_add(yaml, "members:\n");
    for (int i = 0; i <= rows; i++)
        for (int j = 0; j < columns; j++)
            text_print(yaml, "  h%d-%d: {from: j%d-%d, to: j%d-%d, stick: s, ends: pinned}\n", i, j,
                       i, j, i, j + 1);
    for (int i = 0; i < rows; i++)
        for (int j = 0; j <= columns; j++)
            text_print(yaml, "  v%d-%d: {from: j%d-%d, to: j%d-%d, stick: s, ends: pinned}\n", i, j,
                       i, j, i + 1, j);
    for (int i = 0; i < rows; i++)
        for (int j = 0; j < columns; j++)
            if (braced[i * columns + j])
                text_print(yaml,
                           "  d%d-%d: {from: j%d-%d, to: j%d-%d, stick: s, ends: pinned, acts-as: "
                           "brace}\n",
                           i, j, i, j, i + 1, j + 1);
    text_print(yaml, "supports: {j0-0: pinned, j0-%d: [z]}\n", columns);
}

static int find(int *parent, int node) {
    while (parent[node] != node)
        node = parent[node];
    return node;
}

/* Parts of the brace graph: a vertex a row and a column, an edge a braced rectangle. */
static int components(int rows, int columns, const bool *braced) {
    int parent[12], count = rows + columns;
    for (int k = 0; k < rows + columns; k++)
        parent[k] = k;
    for (int i = 0; i < rows; i++)
        for (int j = 0; j < columns; j++)
            if (braced[i * columns + j]) {
                int a = find(parent, i), b = find(parent, rows + j);
                if (a != b) {
                    parent[a] = b;
                    count--;
                }
            }
    return count;
}

/* Bolker and Crapo 1979: a grid is rigid if and only if its brace graph is connected; otherwise it
 * has (parts - 1) ways to fold, and as many braces are the fewest that make it rigid. */
Test(brace, grids_after_bolker_and_crapo, .init = quiet, .timeout = 120) {
    enum { GRIDS = 60 };
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 1979);
    for (int k = 0; k < GRIDS; k++) {
        struct arena *arena = arena_new();
        cr_assert(!ARENA_TRAP(arena), "out of memory");
        int rows = 1 + (int)gsl_rng_uniform_int(random, 5);
        int columns = 1 + (int)gsl_rng_uniform_int(random, 5);
        double share = gsl_rng_uniform(random);
        bool braced[25];
        for (int c = 0; c < rows * columns; c++)
            braced[c] = gsl_rng_uniform(random) < share;
        struct text yaml = text_new(arena);
        grid(random, rows, columns, braced, &yaml);
        const struct frame *frame = read_text(arena, text_string(&yaml));
        int expected = components(rows, columns, braced) - 1;
        struct brace_answer *answer = brace_find(arena, frame);
        cr_assert_eq(answer->ways, expected, "%d x %d, grid %d: %d ways, want %d", rows, columns, k,
                     answer->ways, expected);
        cr_assert_eq(answer->fewest, expected, "%d x %d, grid %d: fewest %d, want %d", rows,
                     columns, k, answer->fewest, expected);
        arena_free(arena);
    }
    gsl_rng_free(random);
}

/* ---- ways that tighten ---- */

static const struct brace_answer *answer_of(struct arena *arena, const char *body) {
    return brace_find(arena, read_text(arena, arena_print(arena,
                                                          "batten: 1\nself-weight: no\n"
                                                          "connections: {default: pinned}\n"
                                                          "sticks: {s: {size: 2x2, species: "
                                                          "hem-fir, grade: no-2}}\n%s",
                                                          body)));
}

/* Pellegrino and Calladine 1986: two bars in line between two pins give sideways at the middle, of
 * first order only; they have one self-stress, and it stiffens that. A bay of three bars has none
 * and folds for good. */
Test(brace, ways_that_tighten_are_told_apart, .init = quiet) {
    struct arena *arena = arena_new();
    cr_assert(!ARENA_TRAP(arena), "out of memory");
    const struct brace_answer *line =
        answer_of(arena, "joints: {a: [0, 0], b: [40, 0], c: [80, 0]}\n"
                         "members: {l: {from: a, to: b, stick: s}, r: {from: b, to: c, stick: s}}\n"
                         "supports: {a: pinned, c: pinned}\n");
    cr_assert_eq(line->motion_count, 1);
    cr_assert(line->motions[0].tightens, "two bars in line do not tighten");
    const struct brace_answer *bay =
        answer_of(arena, "joints: {a: [0, 0], b: [0, 40], c: [50, 40], d: [50, 0]}\n"
                         "members: {l: {from: a, to: b, stick: s}, t: {from: b, to: c, stick: s}, "
                         "r: {from: c, to: d, stick: s}}\n"
                         "supports: {a: pinned, d: pinned}\n");
    cr_assert_eq(bay->motion_count, 1);
    cr_assert(!bay->motions[0].tightens, "a bay without a diagonal tightens");
    arena_free(arena);
}

/* A lean-to whose level and sloped side rails tie a short and a tall post that run through cannot
 * fold front to back on paper, and leans many times its limit because the posts bend. */
Test(brace, a_lean_to_that_cannot_fold_leans_all_the_same, .init = quiet) {
    struct arena *arena = arena_new();
    cr_assert(!ARENA_TRAP(arena), "out of memory");
    const struct brace_answer *answer = answer_of(
        arena, "joints: {f0: [0, 0, 0], f1: [0, 0, 25], f2: [0, 0, 43], b0: [0, 24, 0], "
               "b1: [0, 24, 25], b2: [0, 24, 51]}\n"
               "members: {front: {from: f0, to: f2, stick: s}, back: {from: b0, to: b2, "
               "stick: s}, level: {from: f1, to: b1, stick: s}, slope: {from: f2, to: b2, "
               "stick: s}}\n"
               "supports: {f0: [x, y, z, rz], b0: [x, y, z, rz], f1: [x], f2: [x], b1: "
               "[x], b2: [x]}\n");
    cr_assert_eq(answer->ways, 0, "%d ways", answer->ways);
    cr_assert_eq(answer->soft_count, 1);
    cr_assert_eq(answer->soft[0].axis, 1);
    cr_assert(answer->soft[0].lean > 2.0 * answer->soft[0].limit, "leans only %g of %g",
              answer->soft[0].lean, answer->soft[0].limit);
    cr_assert_eq(answer->fewest, 1, "fewest %d", answer->fewest);
    arena_free(arena);
}
