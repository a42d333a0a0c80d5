#include "judge/strength.h"

#include "fixing/fixing.h"
#include "judge/answers.h"
#include "judge/eccentric.h"
#include "judge/load_shape.h"
#include "sway/second_order.h"

#include <math.h>

struct section judge_section(const struct model_member *member, const struct stick *stick,
                             int *strong) {
    if (stick->has_section) {
        *strong = member->Iy >= member->Iz ? 1 : 2;
        return section_own(member->A, fmax(member->Iy, member->Iz), fmin(member->Iy, member->Iz),
                           stick->thickness, stick->width);
    }
    *strong = member->size_z >= member->size_y ? 1 : 2;
    return section_rectangle(member->size_y, member->size_z);
}

/* What of the bending input belongs to the segment and the combination, not to the station. The
 * shape of the load is taken as the general row, which is never kinder than the others. */
struct bend_input strength_bend_input(const struct stick_work *work, size_t segment,
                                      enum duration duration) {
    const struct model *model = work->run->model;
    const struct stretch *sideways = work->run->holding->sideways[segment];
    /* along the wide face, and along the thickness */
    const struct stretch *wide = &sideways[work->strong == 1 ? 1 : 0];
    const struct stretch *thin = &sideways[work->strong == 1 ? 0 : 1];
    struct bend_input input = {
        .lumber = &work->stick->lumber,
        .section = work->section,
        .conditions = {.wet = model->wet, .repetitive = work->repetitive, .duration = duration},
        .net_area = work->net_area,
        .shape = LOAD_SHAPE_ANY};
    input.effective_length[0] = stretch_column_length(wide);
    if (work->held_along)
        return input;
    input.effective_length[1] = stretch_column_length(thin);
    input.unheld = thin->to - thin->from;
    return input;
}

static void keep_worse(struct worst_place *worst, const struct worst_place *other) {
    bool worse = !worst->found || rating_is_worse(&other->rating, &worst->rating);
    bool slender = worst->rating.slender || other->rating.slender;
    if (worse)
        *worst = *other;
    worst->rating.slender = slender;
}

/* The largest ratio that any station could have: each force at its largest over the stations, once
 * with the pull, once with the push, once with neither. */
static double most_ratio(const struct stick_work *work, const struct bend_limits *limits,
                         const struct segment_forces *at, double *push) {
    double pull = 0.0, edgewise = 0.0, flatwise = 0.0, most = 0.0;
    *push = 0.0;
    for (size_t i = 0; i < at->count; i++) {
        const double *f = at->forces[i];
        pull = fmax(pull, f[FORCE_N]);
        *push = fmin(*push, f[FORCE_N]);
        edgewise = fmax(edgewise, fabs(work->strong == 1 ? f[FORCE_MY] : f[FORCE_MZ]));
        flatwise = fmax(flatwise, fabs(work->strong == 1 ? f[FORCE_MZ] : f[FORCE_MY]));
        if (!isfinite(f[FORCE_N] + f[FORCE_MY] + f[FORCE_MZ]))
            return INFINITY;
    }
    const double along[] = {0.0, pull, *push};
    for (int k = 0; k < 3; k++) {
        if (k > 0 && along[k] == 0.0)
            continue;
        struct rating rating = bend_rating(limits, along[k], edgewise, flatwise);
        if (!rating.covered || isnan(rating.ratio))
            return INFINITY;
        most = fmax(most, rating.ratio);
    }
    return most;
}

static enum load_shape shape_at(const struct stick_work *work, size_t segment,
                                const struct stick_state *states) {
    const struct stretch *thin = &work->run->holding->sideways[segment][work->strong == 1 ? 0 : 1];
    return load_shape_of(work->run->model, work->stick, states, thin, work->strong);
}

static struct stick_state *states_of(const struct stick_work *work, const struct answer *answer) {
    struct arena *arena = work->run->arena;
    size_t count = work->stick->segment_count, first = work->stick->first_segment;
    struct stick_state *states = ARENA_ARRAY(arena, struct stick_state, count);
    for (size_t k = 0; k < count; k++)
        states[k] = answer->second
                        ? second_order_state(arena, answer->second, first + k)
                        : stick_state(arena, answer->response, first + k, answer->weights);
    return states;
}

/* Bending of one segment: by the general row first; only where that would be the worst so far is
 * the shape of the load looked at. */
static void judge_bend(struct stick_work *work, const struct bend_limits *limits,
                       const struct segment_forces *at, const struct answer *answer,
                       struct worst_place place) {
    if (!run_wants_combination(work->run, work->bend_id, place.combination))
        return;
    double push, most = most_ratio(work, limits, at, &push);
    bool slender = -push / work->section.area > 1.0 &&
                   fmax(limits->column.slenderness[0], limits->column.slenderness[1]) >
                       table_constant("slenderness-limit").value;
    work->bend.rating.slender |= slender;
    if (work->bend.found && work->bend.rating.covered && most <= work->bend.rating.ratio)
        return;
    double start = work->run->model->segments[at->segment].start;
    bool shape_matters =
        limits->input.unheld > 0.0 && work->section.width > work->section.thickness;
    struct bend_limits exact = *limits;
    bool exact_made = false;
    for (size_t i = 0; i < at->count; i++) {
        const double *f = at->forces[i];
        double edgewise = work->strong == 1 ? f[FORCE_MY] : f[FORCE_MZ];
        double flatwise = work->strong == 1 ? f[FORCE_MZ] : f[FORCE_MY];
        place.rating = bend_rating(limits, f[FORCE_N], edgewise, flatwise);
        if (work->bend.found && !rating_is_worse(&place.rating, &work->bend.rating))
            continue;
        if (shape_matters && !exact_made) {
            struct bend_input input = limits->input;
            input.shape = shape_at(work, at->segment, states_of(work, answer));
            exact = bend_limits_of(&input);
            exact_made = true;
        }
        if (exact_made)
            place.rating = bend_rating(&exact, f[FORCE_N], edgewise, flatwise);
        place.found = true;
        place.at = start + at->stations[i].x;
        place.bend = exact.input;
        place.bend.N = f[FORCE_N];
        place.bend.edgewise = edgewise;
        place.bend.flatwise = flatwise;
        keep_worse(&work->bend, &place);
    }
}

static void judge_shear(struct stick_work *work, const struct bend_limits *limits,
                        const struct segment_forces *at, struct worst_place place) {
    if (!run_wants_combination(work->run, work->shear_id, place.combination))
        return;
    double start = work->run->model->segments[at->segment].start;
    for (size_t i = 0; i < at->count; i++) {
        const double *f = at->forces[i];
        double largest = work->largest_shear[place.combination];
        if (f[FORCE_VY] * f[FORCE_VY] + f[FORCE_VZ] * f[FORCE_VZ] <= largest * largest &&
            largest > 0.0)
            continue; /* without the root, which takes longer */
        double shear = hypot(f[FORCE_VY], f[FORCE_VZ]);
        if (shear <= largest * (1.0 + 1e-9))
            continue;
        work->largest_shear[place.combination] = shear;
        place.found = true;
        place.at = start + at->stations[i].x;
        place.shear =
            (struct shear_input){.lumber = limits->input.lumber,
                                 .conditions = limits->input.conditions,
                                 .section = limits->input.section,
                                 .edgewise = work->strong == 1 ? f[FORCE_VZ] : f[FORCE_VY],
                                 .flatwise = work->strong == 1 ? f[FORCE_VY] : f[FORCE_VZ]};
        place.rating = check_shear(&place.shear, NULL);
        keep_worse(&work->shear, &place);
    }
}

/* A section without inertia (a wire) hangs in a curve instead of bending. */
static void forget_bending(const struct model_member *stick, double forces[FORCE_COUNT]) {
    if (!(stick->Iy > 0.0))
        forces[FORCE_MY] = forces[FORCE_VZ] = 0.0;
    if (!(stick->Iz > 0.0))
        forces[FORCE_MZ] = forces[FORCE_VY] = 0.0;
}

static void judge_answer(struct stick_work *work, const struct bend_limits *limits,
                         struct segment_forces *at, const struct answer *answer) {
    struct worst_place place = {
        .combination = answer->mix->combination, .lean = answer->mix->lean, .how = answer->how};
    for (size_t k = 0; k < work->stick->segment_count; k++) {
        for (size_t i = 0; i < at[k].count; i++)
            forget_bending(work->stick, at[k].forces[i]);
        judge_bend(work, &limits[k], &at[k], answer, place);
        judge_shear(work, &limits[k], &at[k], place);
    }
}

/* Limits of each segment under each combination, one after another. */
static struct bend_limits *all_limits(const struct stick_work *work) {
    const struct run *run = work->run;
    size_t count = work->stick->segment_count;
    struct bend_limits *limits =
        ARENA_ARRAY(run->arena, struct bend_limits, count * run->loads->combination_count);
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        size_t same = c;
        for (size_t b = 0; b < c && same == c; b++)
            if (run->loads->combinations[b].duration == run->loads->combinations[c].duration)
                same = b;
        for (size_t k = 0; k < count; k++) {
            struct bend_input frame = strength_bend_input(work, work->stick->first_segment + k,
                                                          run->loads->combinations[c].duration);
            limits[c * count + k] = same < c ? limits[same * count + k] : bend_limits_of(&frame);
        }
    }
    return limits;
}

/* A tie that is pushed hangs loose: nothing to judge. */
static bool hangs_slack(const struct answer *answer, size_t member) {
    return answer->slack && answer->slack[member];
}

static void judge_stick(struct stick_work *work) {
    struct run *run = work->run;
    size_t count = work->stick->segment_count, places = 0;
    struct bend_limits *limits = all_limits(work);
    struct segment_forces *at = ARENA_ARRAY(run->arena, struct segment_forces, count);
    for (size_t k = 0; k < count; k++) {
        at[k].segment = work->stick->first_segment + k;
        at[k].count = stations_of(run->arena, run->responses[STIFFNESS_MIDDLE], at[k].segment,
                                  &at[k].stations);
        places += at[k].count;
    }
    double(*room)[FORCE_COUNT] = arena_take(run->arena, places, sizeof *room);
    for (size_t k = 0, before = 0; k < count; before += at[k++].count)
        at[k].forces = &room[before];
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        if (!run_uses(run, s))
            continue;
        struct column_forces columns = strength_tabulate(work, run->responses[s], at);
        for (size_t x = 0; x < run->mix_count; x++) {
            struct answer answer = answer_first_order(run, &run->mixes[x], s);
            if (!answer.weights || hangs_slack(&answer, work->member))
                continue;
            strength_mix(&columns, run->responses[s]->live_count, answer.weights, room);
            eccentric_add(run, work->laps, work->member, &answer, at);
            judge_answer(work, &limits[(size_t)answer.mix->combination * count], at, &answer);
        }
    }
    for (size_t x = 0; x < run->mix_count; x++) {
        struct answer answer = answer_second_order(run, &run->mixes[x]);
        if (!answer.second || hangs_slack(&answer, work->member))
            continue;
        struct stick_state *states = states_of(work, &answer);
        for (size_t k = 0; k < count; k++)
            for (size_t i = 0; i < at[k].count; i++)
                stick_forces(&states[k], at[k].stations[i].x, at[k].stations[i].after,
                             at[k].forces[i]);
        eccentric_add(run, work->laps, work->member, &answer, at);
        judge_answer(work, &limits[(size_t)answer.mix->combination * count], at, &answer);
    }
}

/* What the screw holes of one joint take from the pull, the worst joint of each stick, m2. All
 * screws of a joint count as standing in one line across the grain. */
static double *holes(const struct run *run) {
    double *holes = ARENA_ARRAY(run->arena, double, run->model->member_count);
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct fixing fixing;
            if (!fixing_of(run->model, m, end, &fixing) ||
                fixing.connection->type != CONNECTION_SCREWED_LAP)
                continue;
            double wide = fixing.connection->diameter * fixing.count;
            holes[m] = fmax(holes[m], wide * fixing.plane.thick_ending);
            holes[fixing.host] = fmax(holes[fixing.host], wide * fixing.plane.thick_host);
        }
    return holes;
}

void judge_strength(struct run *run) {
    const struct eccentric_laps laps = eccentric_laps(run);
    const double *hole = holes(run);
    struct strength_lines lines = {.no_bend = {.kind = "bend"}, .no_shear = {.kind = "shear"}};
    for (size_t m = 0; m < run->model->member_count; m++) {
        const struct member *member = &run->frame->members.items[m];
        struct stick_work work = {.run = run,
                                  .member = m,
                                  .stick = &run->model->members[m],
                                  .held_along = member->held_along,
                                  .repetitive = member->repetitive,
                                  .bend_id = arena_print(run->arena, "bend/%s", member->name),
                                  .shear_id = arena_print(run->arena, "shear/%s", member->name)};
        work.section =
            judge_section(work.stick, &run->frame->sticks.items[member->stick], &work.strong);
        work.laps = &laps;
        work.net_area = hole[m] > 0.0 ? fmax(1e-12, work.section.area - hole[m]) : 0.0;
        work.largest_shear = ARENA_ARRAY(run->arena, double, run->loads->combination_count);
        for (size_t c = 0; c < run->loads->combination_count; c++)
            work.largest_shear[c] = -1.0;
        struct arena_mark mark = arena_mark(run->arena);
        judge_stick(&work);
        arena_rewind(run->arena, mark);
        strength_add(&work, &lines);
    }
    strength_finish(run, &lines);
}
