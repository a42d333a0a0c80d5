#include "judge/judge.h"

#include "judge/steps.h"
#include "solve/trust.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static int order_of(enum verdict verdict) {
    switch (verdict) {
    case VERDICT_FAILS:
        return 0;
    case VERDICT_NOT_COVERED:
        return 1;
    case VERDICT_CLOSE:
        return 2;
    default:
        return 3;
    }
}

/* Ratios are as fine as a `float`, and next to nothing is nothing: what differs in the last bits
 * alone, as in the halves of a frame that is the same on both sides, is in the order of the ids on
 * every machine. */
static float coarse(double ratio) {
    return isnan(ratio) ? INFINITY : ratio < 1e-9 ? 0.0f : (float)ratio;
}

/* Fails, not-covered, close, ok; ratio down (not finite first); then id. */
static int compare_checks(const void *left, const void *right) {
    const struct check *a = left, *b = right;
    if (order_of(a->verdict) != order_of(b->verdict))
        return order_of(a->verdict) - order_of(b->verdict);
    float ra = coarse(a->ratio), rb = coarse(b->ratio);
    if (ra != rb)
        return ra > rb ? -1 : 1;
    return strcmp(a->id, b->id);
}

static enum verdict worst_verdict(const struct result *result) {
    /* a frame of which nothing was checked, or under nothing, is not one that holds */
    enum verdict worst =
        result->checks.count && result->combinations.count ? VERDICT_OK : VERDICT_NOT_COVERED;
    for (size_t k = 0; k < result->checks.count; k++)
        if (result->checks.items[k].verdict > worst)
            worst = result->checks.items[k].verdict;
    return worst;
}

static void fail(struct run *run, const char *trouble) {
    run->result->verdict = VERDICT_FAILED;
    run->result->trouble = trouble;
    run->result->checks.count = 0;
}

/* A load that twists a stick about its own axis, which nothing resists: an error of the
 * description. */
static void report_twist(struct run *run, const struct response *response) {
    if (response->twisted_column < 0 || run->result->problems.count)
        return;
    const struct slot *slot = &run->model->slots[response->twisted_slot];
    int stick = slot->member >= 0 ? slot->member : run->model->host[slot->joint];
    const char *name = run->frame->members.items[stick].name;
    problem_add(&run->result->problems, run->frame->members.items[stick].place,
                arena_print(run->arena, "members.%s", name),
                "a load twists this stick about its own axis and nothing at joint %s or elsewhere "
                "on it resists that; fasten it so that it cannot turn, or leave the twist out",
                run->frame->joints.items[slot->joint].name);
}

static bool trusted(struct run *run) {
    const struct result *result = run->result;
    if (result->backward_error <= TRUST_BACKWARD && result->equilibrium_error <= TRUST_EQUILIBRIUM)
        return true;
    fail(run, "the solution does not satisfy the equations closely enough to be trusted; look for "
              "sticks of very unlike stiffness, or a frame that is almost loose");
    return false;
}

static bool leans(const struct run *run) {
    for (size_t c = 0; c < run->loads->combination_count; c++)
        if (run->loads->combinations[c].out_of_plumb)
            return true;
    return false;
}

static bool build_systems(struct run *run) {
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        if (!run_uses(run, s))
            continue;
        run->systems[s] = system_build(run->arena, run->model, s, run->bars[s], run->bar_counts[s]);
        if (run->systems[s]->trusted)
            continue;
        fail(run, "the equations of this frame could not be solved, and no joint that moves "
                  "freely was found to explain it");
        return false;
    }
    return true;
}

static bool solve(struct run *run) {
    struct result *result = run->result;
    result->backward_error = result->equilibrium_error = 0.0;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        if (!run_uses(run, s))
            continue;
        run->responses[s] = response_solve(run->arena, run->systems[s], run->loads, leans(run));
        report_twist(run, run->responses[s]);
        double backward = run->responses[s]->backward_error;
        double balance = run->responses[s]->equilibrium_error;
        if (!(backward <= result->backward_error))
            result->backward_error = backward;
        if (!(balance <= result->equilibrium_error))
            result->equilibrium_error = balance;
    }
    /* what holds a twisted stick quietly bears something: the errors are then those of the file */
    if (result->problems.count)
        return true;
    return trusted(run);
}

static bool folds(const struct run *run) {
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        if (!run_uses(run, s))
            continue;
        for (size_t c = 0; c < run->responses[s]->live_count; c++) {
            int set = run->responses[s]->columns[c].set;
            if (!run->responses[s]->solvable[c] && set >= 0 && set < run->loads->first_pattern_set)
                return true;
        }
    }
    for (size_t x = 0; x < run->mix_count; x++)
        if (!run->mixes[x].stands)
            return true;
    return false;
}

static void load(struct run *run) {
    run->loads = loads_build(run->arena, run->model);
    run->sheets = bracing_sheets(run->arena, run->model);
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        run->bar_counts[s] =
            bracing_bars(run->arena, run->model, run->sheets, s, false, &run->bars[s], NULL);
}

static bool all_within_limits(const struct result *result) {
    bool within = true;
    for (size_t k = 0; k < result->checks.count; k++)
        within &= result->checks.items[k].ratio <= 1.0;
    return within;
}

/* With its fastenings at one stiffness: solved, on its feet, no way to fold. */
static bool stays_at(struct run *run, const enum stiffness *stiffness) {
    run->only = stiffness;
    if (!run_uses(run, *stiffness))
        return true;
    if (!build_systems(run) ||
        response_folds(run->arena, run->systems[*stiffness], run->loads, leans(run)) ||
        !solve(run) || run->result->problems.count)
        return false;
    mixes_build(run);
    return !folds(run);
}

static const struct model *model_of(const struct run *run) {
    struct model *model = model_build(run->arena, run->frame, &run->result->problems);
    if (model && run->options->vary)
        run->options->vary(run->options->with, model);
    return model;
}

/* What costs least and decides most often comes first; a variant that fails early is solved at one
 * stiffness, or not at all. */
bool judge_stays_upright(const struct run *run, const struct frame *frame) {
    static const enum stiffness low = STIFFNESS_LOW, middle = STIFFNESS_MIDDLE,
                                high = STIFFNESS_HIGH;
    const struct judge_options plain = {.vary = run->options->vary, .with = run->options->with};
    struct result result = {.frame = frame, .problems = problems_new(run->arena)};
    struct run other = {.arena = run->arena, .frame = frame, .options = &plain, .result = &result};
    other.model = model_of(&other);
    if (!other.model)
        return false;
    load(&other);
    if (!stays_at(&other, &middle))
        return false;
    result.combinations.items =
        ARENA_ARRAY(run->arena, struct combination_result, other.loads->combination_count);
    judge_lean(&other);
    if (!all_within_limits(&result) || !judge_stands(&other) || !stays_at(&other, &low))
        return false;
    judge_sway(&other);
    return all_within_limits(&result) && stays_at(&other, &high);
}

/* The checks that need neither buckling nor second order, those first that cost least; true where
 * some stage of them fails. */
static bool fails_early(struct run *run) {
    static void (*const stages[JUDGE_STAGES][4])(struct run *) = {
        {judge_slats, judge_sag, judge_lean},
        {judge_strength, judge_bearing},
        {judge_screws, judge_hang, judge_ground},
    };
    struct result *result = run->result;
    size_t cautions = result->cautions.count;
    for (int stage = 0; stage < JUDGE_STAGES; stage++) {
        for (int k = 0; stages[stage][k]; k++)
            stages[stage][k](run);
        result->verdict = worst_verdict(result);
        if (result->checks.count && result->verdict > VERDICT_CLOSE) {
            result->stopped_at = stage + 1;
            return true;
        }
    }
    result->checks.count = 0;
    result->cautions.count = cautions;
    return false;
}

static void judge_model(struct run *run) {
    load(run);
    if (!build_systems(run) || !solve(run))
        return;
    mixes_build(run);
    judge_ways(run);
    judge_cases(run);
    if (run->result->problems.count)
        return;
    if (folds(run)) {
        judge_fold(run);
        run->result->verdict = VERDICT_FOLDS;
        return;
    }
    run->holding = holding_build(run->arena, run->model);
    judge_mark_sway(run);
    if (run->options->first_failure && fails_early(run))
        return;
    judge_idle_modes(run);
    if (!judge_keeps_its_feet(run) || !judge_stands(run)) {
        run->result->verdict = VERDICT_FOLDS;
        return;
    }
    judge_second_order(run);
    judge_sag(run);
    judge_slats(run);
    judge_strength(run);
    judge_bearing(run);
    judge_lean(run);
    judge_sway(run);
    judge_racking(run);
    judge_ground(run);
    judge_screws(run);
    judge_joint_moments(run);
    judge_hang(run);
    judge_notches(run);
    judge_panels(run);
    judge_panel_screws(run);
    judge_hinges(run);
    judge_panel_advice(run);
    judge_carry(run);
    if (!trusted(run)) /* lifted feet have added to the errors */
        return;
    run->result->verdict = worst_verdict(run->result);
    if (run->result->checks.count)
        qsort(run->result->checks.items, run->result->checks.count,
              sizeof *run->result->checks.items, compare_checks);
    judge_bent(run);
}

void judge_frame(struct arena *arena, const struct frame *frame,
                 const struct judge_options *options, struct result *result) {
    struct run run = {.arena = arena, .frame = frame, .options = options, .result = result};
    *result = (struct result){.frame = frame,
                              .verdict = VERDICT_NOT_COVERED,
                              .basis = frame->site.edition == EDITION_ASCE7_22
                                           ? "US allowable stress design, NDS 2018 with ASCE 7-22"
                                           : "US allowable stress design, NDS 2018 with ASCE 7-16",
                              .backward_error = NAN,
                              .equilibrium_error = NAN};
    result->problems = problems_new(arena);
    if (frame->members.count) {
        run.model = model_of(&run);
        if (run.model)
            judge_model(&run);
    }
    judge_cautions(&run);
}
