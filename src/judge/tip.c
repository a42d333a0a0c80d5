#include "judge/ground.h"

#include "check/ground.h"
#include "units/decimal.h"

#include <math.h>

struct worst_tip {
    bool found;
    struct rating rating;
    const struct variant *variant;
    size_t edge;
};

struct tip_work {
    struct ground_work *ground;
    struct run *run;
    size_t *part_of; /* per column: its case, behind the cases what leans out of plumb */
    size_t part_count;
    double **moments; /* per edge and column */
};

/* Trays of a pattern belong to the case of the trays. */
static size_t case_of(const struct loads *loads, int set) {
    for (size_t c = 0; c < loads->case_count; c++) {
        if (set >= loads->first_pattern_set && loads->cases[c].frame_case == CASE_TRAY)
            return c;
        for (int k = 0; k < loads->cases[c].set_count; k++)
            if (loads->cases[c].sets[k] == set)
                return c;
    }
    return loads->case_count;
}

static struct tip_work tip_work(struct ground_work *ground) {
    struct run *run = ground->run;
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    const struct footprint *footprint = run->footprint;
    struct tip_work work = {.ground = ground, .run = run, .part_count = run->loads->case_count + 1};
    work.part_of = ARENA_ARRAY(run->arena, size_t, response->column_count);
    work.moments = ARENA_ARRAY(run->arena, double *, footprint->edge_count);
    for (size_t c = 0; c < response->live_count; c++)
        work.part_of[c] = response->columns[c].lean == LEAN_NONE
                              ? case_of(run->loads, response->columns[c].set)
                              : run->loads->case_count;
    for (size_t e = 0; e < footprint->edge_count; e++) {
        work.moments[e] = ARENA_ARRAY(run->arena, double, response->column_count);
        for (size_t c = 0; c < response->live_count; c++)
            work.moments[e][c] =
                edge_moment(&footprint->edges[e], &run->resultants[c], run->model->middle);
    }
    return work;
}

static const char *part_words(const struct tip_work *work, const struct variant *variant,
                              size_t part) {
    const struct loads *loads = work->run->loads;
    if (part == loads->case_count)
        return "weight out of plumb";
    const char *name = loads->cases[part].name;
    double factor =
        loads_case_factor(loads, variant->mix->combination, loads->cases[part].frame_case);
    if (fabs(factor) == 1.0)
        return name;
    return arena_print(work->run->arena, "%s of %s",
                       decimal_significant(work->run->arena, factor, 3), name);
}

/* Forces of each part; of one that both presses down and pushes over, the moment alone. */
static void find_forces(const struct tip_work *work, const struct variant *variant,
                        const struct tip_edge *edge, struct tip_part *parts) {
    const struct response *response = work->run->responses[STIFFNESS_MIDDLE];
    for (size_t c = 0; c < response->live_count; c++) {
        const double *force = work->run->resultants[c].force;
        struct tip_part *part = &parts[work->part_of[c]];
        part->down -= variant->weights[c] * force[2];
        part->level += variant->weights[c] * (force[0] * edge->axis[1] - force[1] * edge->axis[0]);
    }
    for (size_t k = 0; k < work->part_count; k++) {
        struct tip_part *part = &parts[k];
        double small = 1e-9 * fmax(fabs(part->down), fabs(part->level));
        bool down = fabs(part->down) > small, level = fabs(part->level) > small;
        part->words = part_words(work, variant, k);
        if (down == level || !down)
            part->down = 0.0;
        if (down == level || !level)
            part->level = 0.0;
    }
}

static struct rating rate(const struct tip_work *work, const struct variant *variant, size_t e,
                          struct working *working) {
    struct run *run = work->run;
    const struct tip_edge *edge = &run->footprint->edges[e];
    struct arena_mark mark = arena_mark(run->arena);
    struct tip_part *parts = ARENA_ARRAY(run->arena, struct tip_part, work->part_count);
    struct tip_hold *holds = ARENA_ARRAY(run->arena, struct tip_hold, run->frame->supports.count);
    struct tip_input input = {.parts = parts, .part_count = work->part_count, .holds = holds};
    for (size_t c = 0; c < run->responses[STIFFNESS_MIDDLE]->live_count; c++)
        if (variant->weights[c] != 0.0)
            parts[work->part_of[c]].moment += variant->weights[c] * work->moments[e][c];
    for (size_t k = 0; k < run->frame->supports.count; k++) {
        const struct support *support = &run->frame->supports.items[k];
        double arm = edge_arm(run->footprint, edge, k);
        if (support->foot && !support_lifts(support) && arm > 0.0)
            holds[input.hold_count++] = (struct tip_hold){support->hold_down.value, arm};
    }
    if (working)
        find_forces(work, variant, edge, parts);
    struct rating rating = check_tip(&input, working);
    if (!working)
        arena_rewind(run->arena, mark);
    return rating;
}

static const char *id_of(enum side side, const struct run *run) {
    return arena_print(run->arena, "tip/%s", side_name(side));
}

static void look(const struct tip_work *work, size_t e, struct worst_tip *worst) {
    struct run *run = work->run;
    const struct tip_edge *edge = &run->footprint->edges[e];
    const char *id = id_of(edge->side, run);
    for (size_t v = 0; v < work->ground->variant_count; v++) {
        const struct variant *variant = &work->ground->variants[v];
        if (!run_wants_combination(run, id, variant->mix->combination))
            continue;
        struct rating rating = rate(work, variant, e, NULL);
        if (!worst->found || rating_is_worse(&rating, &worst->rating))
            *worst = (struct worst_tip){true, rating, variant, e};
    }
}

/* The feet furthest from the edge, and what each must be held down with so that they hold it. */
static const char *hold_down(const struct tip_work *work, const struct worst_tip *worst) {
    struct run *run = work->run;
    const struct tip_edge *edge = &run->footprint->edges[worst->edge];
    size_t supports = run->frame->supports.count;
    struct foot_group group = {.in = ARENA_ARRAY(run->arena, bool, supports)};
    double furthest = 0.0, arms = 0.0, need = 0.0;
    double missing = worst->rating.demand - worst->rating.limit;
    for (size_t k = 0; k < supports; k++)
        if (run->frame->supports.items[k].foot)
            furthest = fmax(furthest, edge_arm(run->footprint, edge, k));
    for (size_t k = 0; k < supports; k++) {
        double arm = edge_arm(run->footprint, edge, k);
        const struct support *support = &run->frame->supports.items[k];
        if (!support->foot || !(arm > 0.0) || arm < furthest - 0.025)
            continue;
        group.in[k] = true;
        group.count++;
        arms += arm;
        need = fmax(need, work->ground->needs[k]);
        if (!support_lifts(support))
            missing += support->hold_down.value * arm;
    }
    need = fmax(need, arms > 0.0 ? missing / arms : 0.0);
    return need > 0.0 ? ground_needs(run, &group, need) : "";
}

static const char *advice(const struct tip_work *work, const struct worst_tip *worst) {
    const char *side = side_name(work->run->footprint->edges[worst->edge].side);
    const char *down = hold_down(work, worst);
    return arena_print(work->run->arena,
                       "%s%sset its feet further out to the %s, or strap it to a "
                       "wall",
                       down, *down ? "; or " : "", side);
}

static void add_line(const struct tip_work *work, const struct worst_tip *worst) {
    struct run *run = work->run;
    const struct tip_edge *edge = &run->footprint->edges[worst->edge];
    struct working *working = run_working(run, id_of(edge->side, run));
    struct rating rating = rate(work, worst->variant, worst->edge, working);
    rating.governs = worst->variant->pattern;
    run_add_check(run, "tip", side_name(edge->side),
                  run->loads->combinations[worst->variant->mix->combination].name, rating,
                  footprint_over(run->arena, run->footprint, edge), advice(work, worst), working);
}

/* No edge tips, and yet no set of feet that only push holds the frame: a part of it tips. */
static void add_part_of_it(struct ground_work *ground) {
    struct run *run = ground->run;
    if (!ground->part)
        return;
    const char *governs = "tips by itself: no set of its feet holds it up by pushing alone";
    if (*ground->part->pattern)
        governs = arena_print(run->arena, "%s, %s", governs, ground->part->pattern);
    struct working *working = run_working(run, "tip/part");
    working_heading(working,
                    "No state of the feet was found in which those on the ground press and "
                    "those off it lie above");
    run_add_check(run, "tip", "part", run->loads->combinations[ground->part->mix->combination].name,
                  rating_of(INFINITY, 0.0, QUANTITY_MOMENT, "statics", governs), "a part of it",
                  "tie its parts together, or hold its feet down", working);
}

void judge_tip(struct ground_work *ground) {
    struct tip_work work = tip_work(ground);
    for (int side = 0; side < SIDE_COUNT; side++) {
        struct worst_tip worst = {0};
        for (size_t e = 0; e < ground->run->footprint->edge_count; e++)
            if (ground->run->footprint->edges[e].side == (enum side)side &&
                !ground->run->footprint->edges[e].held)
                look(&work, e, &worst);
        if (worst.found && worst.rating.ratio != 0.0)
            add_line(&work, &worst);
    }
    add_part_of_it(ground);
}
