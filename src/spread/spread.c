#include "spread/spread.h"

#include "judge/judge.h"
#include "spread/build.h"
#include "spread/rank.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct spreading {
    struct arena *arena;
    const struct spread_options *options;
    struct spread_answer *answer;
    struct frame frame; /* with shelves of its own */
    struct build build;
    double **values; /* per input, per build */
    bool *fell;      /* per build */
};

static void release_rng(void *rng) {
    gsl_rng_free(rng);
}

static gsl_rng *rng_of(struct arena *arena, uint32_t seed) {
    gsl_rng *rng = gsl_rng_alloc(gsl_rng_mt19937);
    if (!rng)
        arena_exhausted(arena);
    arena_defer(arena, release_rng, rng);
    gsl_rng_set(rng, seed);
    return rng;
}

/* The inputs that are not held. */
static void choose_inputs(struct spreading *work, const struct model *model) {
    struct spread_inputs all = spread_inputs(work->arena, model);
    size_t count = 0;
    for (size_t k = 0; k < all.count; k++)
        if (!work->options->held[all.items[k].kind])
            all.items[count++] = all.items[k];
    work->build = (struct build){all.items, count, ARENA_ARRAY(work->arena, double, count)};
    work->answer->inputs = all.items;
    work->answer->input_count = count;
    work->values = ARENA_ARRAY(work->arena, double *, count);
    for (size_t k = 0; k < count; k++)
        work->values[k] = ARENA_ARRAY(work->arena, double, work->options->builds);
}

static void own_shelves(struct spreading *work, const struct frame *frame) {
    size_t count = frame->shelves.count;
    work->frame = *frame;
    work->frame.shelves.items = ARENA_ARRAY(work->arena, struct shelf, count);
    if (count)
        memcpy(work->frame.shelves.items, frame->shelves.items,
               count * sizeof *frame->shelves.items);
}

/* The line of a check, NULL where no build had it before. */
static struct spread_check *line_of(const struct spreading *work, const char *id) {
    for (size_t k = 0; k < work->answer->checks.count; k++)
        if (strcmp(work->answer->checks.items[k].id, id) == 0)
            return &work->answer->checks.items[k];
    return NULL;
}

static struct spread_check *add_line(struct spreading *work, const struct check *check) {
    struct spread_check line = {.id = check->id,
                                .kind = check->kind,
                                .place = check->place[0] ? check->place : check->where,
                                .ratios = ARENA_ARRAY(work->arena, double, work->options->builds)};
    ARRAY_PUSH(work->arena, &work->answer->checks, line);
    return &work->answer->checks.items[work->answer->checks.count - 1];
}

/* True where the result brought checks that no build had before: it must then stay. */
static bool note_result(struct spreading *work, size_t build, const struct result *result) {
    bool added = false, failed = false;
    if (result->verdict == VERDICT_FOLDS || result->verdict == VERDICT_FAILED ||
        result->problems.count) {
        work->fell[build] = true;
        work->answer->fell++;
        work->answer->failed++;
        return false;
    }
    for (size_t k = 0; k < result->checks.count; k++) {
        const struct check *check = &result->checks.items[k];
        struct spread_check *line = line_of(work, check->id);
        if (!line) {
            line = add_line(work, check);
            added = true;
        }
        line->ratios[build] = isnan(check->ratio) ? INFINITY : check->ratio;
        line->not_covered += check->verdict == VERDICT_NOT_COVERED;
        line->failed += check->verdict == VERDICT_FAILS;
        failed |= check->verdict == VERDICT_FAILS;
    }
    work->answer->failed += failed;
    return added;
}

static void judge_build(struct spreading *work, gsl_rng *rng, size_t index) {
    build_draw(&work->build, rng);
    for (size_t k = 0; k < work->build.count; k++)
        work->values[k][index] = work->build.values[k];
    build_trays(&work->build, &work->frame);
    const struct judge_options options = {.vary = build_vary, .with = &work->build};
    struct arena_mark mark = arena_mark(work->arena);
    struct result result = {0};
    judge_frame(work->arena, &work->frame, &options, &result);
    if (!note_result(work, index, &result))
        arena_rewind(work->arena, mark);
    if (work->options->progress)
        work->options->progress(work->options->to, index + 1);
}

static void finish_line(const struct spreading *work, struct spread_check *line) {
    double *ratios = line->ratios;
    for (size_t b = 0; b < work->options->builds; b++)
        if (work->fell[b])
            ratios[b] = INFINITY;
    line->failed += work->answer->fell;
    for (size_t b = 1; b < work->options->builds; b++)
        line->changes |= ratios[b] != ratios[0];
    rank_matters(work->arena, (const double *const *)work->values, work->build.count,
                 work->options->builds, line);
}

static int compare_lines(const void *left, const void *right) {
    const struct spread_check *a = left, *b = right;
    if (a->failed != b->failed)
        return a->failed > b->failed ? -1 : 1;
    return strcmp(a->id, b->id);
}

const struct spread_answer *spread_find(struct arena *arena, const struct frame *frame,
                                        const struct spread_options *options) {
    struct spread_answer *answer = ARENA_NEW(arena, struct spread_answer);
    struct spreading work = {.arena = arena, .options = options, .answer = answer};
    struct problems problems = problems_new(arena);
    answer->builds = options->builds;
    answer->seed = options->seed;
    work.fell = ARENA_ARRAY(arena, bool, options->builds);
    own_shelves(&work, frame);
    const struct model *model = model_build(arena, &work.frame, &problems);
    if (!model)
        return answer;
    choose_inputs(&work, model);
    gsl_rng *rng = rng_of(arena, options->seed);
    for (size_t b = 0; b < options->builds; b++)
        judge_build(&work, rng, b);
    for (size_t k = 0; k < answer->checks.count; k++)
        finish_line(&work, &answer->checks.items[k]);
    if (answer->checks.count)
        qsort(answer->checks.items, answer->checks.count, sizeof *answer->checks.items,
              compare_lines);
    return answer;
}
