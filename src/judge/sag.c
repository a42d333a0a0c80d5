#include "check/sag.h"
#include "base/vector.h"
#include "judge/standing.h"
#include "judge/steps.h"
#include "solve/stations.h"

#include <math.h>

/* One span of a rail: between two holding joints, or past the last one. */
struct span {
    double from, to;      /* m along the member */
    bool overhang_before; /* free at `from`, held at `to` */
    bool overhang_after;  /* held at `from`, free at `to` */
};

struct sag_line { /* a rail under the standing and the brief part of one combination */
    const struct run *run;
    const struct model_member *rail;
    double up[3];                         /* upward normal of the stick in its vertical plane */
    struct stick_state *standing, *brief; /* per segment of the rail */
};

struct sag_found {
    double standing, brief, total;
    double slope; /* of the total against its baseline */
};

static void upward_normal(const struct model_member *rail, double up[3]) {
    for (int c = 0; c < 3; c++)
        up[c] = (c == 2) - rail->axes[0][2] * rail->axes[0][c];
    vector_unit(up);
}

/* Upward movement of the axis and its slope, of one part of the load. */
static double rise(const struct sag_line *line, const struct stick_state *states, double at,
                   double *slope) {
    const struct model *model = line->run->model;
    size_t k = 0;
    while (k + 1 < line->rail->segment_count &&
           at > model->segments[line->rail->first_segment + k + 1].start)
        k++;
    double local[3], slopes[3], up = 0.0;
    double start = model->segments[line->rail->first_segment + k].start;
    stick_movement(&states[k], at - start, local, slopes);
    *slope = 0.0;
    for (int i = 0; i < 3; i++) {
        double share = vector_dot(line->rail->axes[i], line->up);
        up += share * local[i];
        *slope += share * slopes[i];
    }
    return up;
}

/* What sag is measured from: the chord of the span, or the tangent of an overhang at its held end.
 */
struct baseline {
    double at, height, slope;
};

static struct baseline baseline_of(const struct sag_line *line, const struct stick_state *states,
                                   const struct span *span) {
    struct baseline first = {.at = span->from}, last = {.at = span->to};
    first.height = rise(line, states, span->from, &first.slope);
    last.height = rise(line, states, span->to, &last.slope);
    if (span->overhang_after)
        return first;
    if (span->overhang_before)
        return last;
    first.slope = (last.height - first.height) / (span->to - span->from);
    return first;
}

struct sag_curve { /* one span of a line */
    const struct sag_line *line;
    struct baseline standing, brief;
    double creep;
};

static struct sag_found sag_at(const struct sag_curve *curve, double at) {
    const struct baseline *standing = &curve->standing, *brief = &curve->brief;
    double standing_slope, brief_slope;
    struct sag_found found = {.standing =
                                  rise(curve->line, curve->line->standing, at, &standing_slope) -
                                  (standing->height + standing->slope * (at - standing->at)),
                              .brief = rise(curve->line, curve->line->brief, at, &brief_slope) -
                                       (brief->height + brief->slope * (at - brief->at))};
    found.total = curve->creep * found.standing + found.brief;
    found.slope = curve->creep * (standing_slope - standing->slope) + (brief_slope - brief->slope);
    return found;
}

/* Where the slope goes through zero between two places (or jumps through it, under a point load
 * that shears the stick): the Illinois form of false position, every third step a halving so that a
 * jump is closed in on too. */
static struct sag_found flat_between(const struct sag_curve *curve, double low, double high,
                                     double low_slope, double high_slope) {
    enum { STEPS = 90 };
    const double wide = high - low, flat = 1e-9 * fmax(fabs(low_slope), fabs(high_slope));
    struct sag_found found = sag_at(curve, (low + high) / 2.0);
    for (int k = 0; k < STEPS && high - low > 1e-9 * wide; k++) {
        double share = k % 3 == 2 ? 0.5 : low_slope / (low_slope - high_slope);
        double at = low + (high - low) * share;
        found = sag_at(curve, at);
        if (!(fabs(found.slope) > flat) || !(at > low && at < high))
            break;
        if ((found.slope > 0.0) == (low_slope > 0.0)) {
            low = at;
            low_slope = found.slope;
            high_slope /= 2.0;
        } else {
            high = at;
            high_slope = found.slope;
            low_slope /= 2.0;
        }
    }
    return found;
}

/* The worst place of a span: sixteen parts, then where the slope vanishes beside the worst. */
static struct sag_found worst_of_span(const struct sag_line *line, const struct span *span) {
    enum { PARTS = 16 };
    struct sag_curve curve = {.line = line,
                              .standing = baseline_of(line, line->standing, span),
                              .brief = baseline_of(line, line->brief, span),
                              .creep = creep_factor(line->run->model->wet).value};
    double step = (span->to - span->from) / PARTS;
    struct sag_found parts[PARTS + 1], best = {0};
    int best_part = 0;
    for (int k = 0; k <= PARTS; k++) {
        parts[k] = sag_at(&curve, span->from + (span->to - span->from) * k / PARTS);
        if (ratio_worse(fabs(parts[k].total), fabs(best.total))) {
            best = parts[k];
            best_part = k;
        }
    }
    struct sag_found worst = best;
    for (int k = best_part - 1; k <= best_part; k++) {
        if (k < 0 || k >= PARTS || !(parts[k].slope * parts[k + 1].slope < 0.0))
            continue;
        double from = span->from + step * k;
        struct sag_found found = flat_between(&curve, from, k + 1 == PARTS ? span->to : from + step,
                                              parts[k].slope, parts[k + 1].slope);
        if (fabs(found.total) > fabs(worst.total))
            worst = found;
    }
    return worst;
}

/* The rail cut at the joints that hold it. A rail that nothing holds is judged from end to end. */
static size_t spans_of(struct run *run, int member, struct span *spans) {
    const struct model *model = run->model;
    size_t first = model->along.first[member], last = model->along.first[member + 1] - 1;
    size_t count = 0, begin = first;
    bool begin_held = holding_rail(model, run->holding, member, model->along.joints[first].joint);
    for (size_t k = first + 1; k <= last; k++) {
        bool held = holding_rail(model, run->holding, member, model->along.joints[k].joint);
        if (!held && k < last)
            continue;
        spans[count++] = (struct span){.from = model->along.joints[begin].at,
                                       .to = model->along.joints[k].at,
                                       .overhang_before = !begin_held && held,
                                       .overhang_after = begin_held && !held};
        begin = k;
        begin_held = held;
    }
    return count;
}

/* Largest movement of a rail's own end, up or down, against the joint that it is fastened to: with
 * creep, of which screws have twice as much as sticks (EN 1995-1-1 2.3.2.2). */
static double end_slip(const struct sag_line *line) {
    double slip = 0.0, creep = 2.0 * creep_factor(line->run->model->wet).value - 1.0;
    for (int end = 0; end < 2; end++) {
        size_t k = end ? line->rail->segment_count - 1 : 0;
        double apart = 0.0;
        for (int part = 0; part < 2; part++) {
            double local[3];
            stick_slip(part ? &line->brief[k] : &line->standing[k], end, local);
            for (int i = 0; i < 3; i++)
                apart +=
                    (part ? 1.0 : creep) * vector_dot(line->rail->axes[i], line->up) * local[i];
        }
        slip = fmax(slip, fabs(apart));
    }
    return slip;
}

/* Where feet have lifted under the whole load, what stands for long is settled by itself, and the
 * rest is what comes on top. */
static void on_lifted_feet(struct run *run, int combination, double *standing, double *brief) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    const struct mix *upright = &run->upright[combination];
    if (upright->stances[STIFFNESS_MIDDLE].let_go == 0)
        return;
    struct mix part = {.weights = {[STIFFNESS_MIDDLE] = standing}, .edge = -1};
    standing_settle(run, STIFFNESS_MIDDLE, &part);
    for (size_t c = 0; c < response->column_count; c++)
        if (response->columns[c].set < 0)
            brief[c] = upright->weights[STIFFNESS_MIDDLE][c] - standing[c];
}

static struct sag_line sag_line(struct run *run, int member, int combination) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    struct sag_line line = {.run = run, .rail = &run->model->members[member]};
    upward_normal(line.rail, line.up);
    double *standing = ARENA_ARRAY(run->arena, double, response->column_count);
    double *brief = ARENA_ARRAY(run->arena, double, response->column_count);
    run_weights(run, response, combination, SHARE_STANDING, standing);
    run_weights(run, response, combination, SHARE_BRIEF, brief);
    on_lifted_feet(run, combination, standing, brief);
    size_t count = line.rail->segment_count;
    line.standing = ARENA_ARRAY(run->arena, struct stick_state, count);
    line.brief = ARENA_ARRAY(run->arena, struct stick_state, count);
    for (size_t k = 0; k < count; k++) {
        size_t s = line.rail->first_segment + k;
        line.standing[k] = stick_state(run->arena, response, s, standing);
        line.brief[k] = stick_state(run->arena, response, s, brief);
    }
    return line;
}

struct worst_sag {
    bool found;
    int combination;
    struct span span;
    struct sag_found sag;
    double ratio, slip;
};

static struct sag_input sag_input(const struct run *run, const struct sag_line *line,
                                  const struct span *span, struct sag_found found) {
    const struct limit *limit = &run->frame->limits.shelf_sag;
    double length = span->to - span->from;
    bool overhang = span->overhang_before || span->overhang_after;
    return (struct sag_input){.lumber = &line->rail->lumber,
                              .wet = run->model->wet,
                              .standing = -found.standing,
                              .brief = -found.brief,
                              .span = overhang ? 2.0 * length : length,
                              .divisor = limit->divisor,
                              .limit = limit->length};
}

static void look_at(struct run *run, const char *id, int member, const struct span *spans,
                    size_t span_count, struct worst_sag *worst) {
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        double *weights =
            ARENA_ARRAY(run->arena, double, run->responses[STIFFNESS_MIDDLE]->column_count);
        if (run_pushes(run, (int)c) || !run_wants_combination(run, id, (int)c) ||
            !run_weights(run, run->responses[STIFFNESS_MIDDLE], (int)c, SHARE_ALL, weights))
            continue;
        struct sag_line line = sag_line(run, member, (int)c);
        for (size_t k = 0; k < span_count; k++) {
            struct sag_found found = worst_of_span(&line, &spans[k]);
            struct sag_input input = sag_input(run, &line, &spans[k], found);
            struct rating rating = check_sag(&input, NULL);
            if (worst->found && !ratio_worse(rating.ratio, worst->ratio))
                continue;
            *worst = (struct worst_sag){.found = true,
                                        .combination = (int)c,
                                        .span = spans[k],
                                        .sag = found,
                                        .ratio = rating.ratio,
                                        .slip = end_slip(&line)};
        }
    }
}

static const char *advice(const struct run *run, int member) {
    const struct model_member *rail = &run->model->members[member];
    bool flat = fabs(vector_dot(rail->axes[1], (double[3]){0, 0, 1})) > SINE_45
                    ? rail->size_y < rail->size_z
                    : rail->size_z < rail->size_y;
    return flat ? "stand this stick on edge, or put a leg under its middle"
                : "put a leg under its middle, or use the next size up";
}

static void judge_rail(struct run *run, const struct shelf *shelf, int member) {
    const char *name = run->frame->members.items[member].name;
    const char *where = arena_print(run->arena, "%s/%s", shelf->name, name);
    const char *id = arena_print(run->arena, "sag/%s", where);
    struct span *spans =
        ARENA_ARRAY(run->arena, struct span, run->model->members[member].segment_count);
    size_t span_count = spans_of(run, member, spans);
    struct worst_sag worst = {0};
    look_at(run, id, member, spans, span_count, &worst);
    if (!worst.found)
        return;
    struct sag_line line = sag_line(run, member, worst.combination);
    struct sag_input input = sag_input(run, &line, &worst.span, worst.sag);
    struct working *working = run_working(run, id);
    struct rating rating = check_sag(&input, working);
    const char *place = arena_print(run->arena, "%s shelf, %s", shelf->name, name);
    struct check *check =
        run_add_check(run, "sag", where, run->loads->combinations[worst.combination].name, rating,
                      place, advice(run, member), working);
    if (worst.slip > 0.00005) {
        check->beside.words = "its screws give, with creep,";
        check->beside.value = worst.slip;
        check->beside.kind = QUANTITY_LENGTH;
    }
}

void judge_sag(struct run *run) {
    for (size_t k = 0; k < run->frame->shelves.count; k++) {
        const struct shelf *shelf = &run->frame->shelves.items[k];
        for (size_t r = 0; r < shelf->rail_count; r++)
            judge_rail(run, shelf, shelf->rails[r]);
    }
}
