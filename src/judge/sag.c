#include "check/sag.h"
#include "base/vector.h"
#include "judge/steps.h"
#include "solve/stations.h"

#include <math.h>

#define STEEP_SHARE 0.70710678118654752 /* cosine of 45 degrees */

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

/* Movement at `at` against the chord of the span, or the tangent of an overhang. */
static double against_chord(const struct sag_line *line, const struct stick_state *states,
                            const struct span *span, double at) {
    double slope, here = rise(line, states, at, &slope);
    double first = rise(line, states, span->from, &slope), first_slope = slope;
    double last = rise(line, states, span->to, &slope), last_slope = slope;
    if (span->overhang_after)
        return here - (first + first_slope * (at - span->from));
    if (span->overhang_before)
        return here - (last + last_slope * (at - span->to));
    return here - (first + (last - first) * (at - span->from) / (span->to - span->from));
}

static struct sag_found sag_at(const struct sag_line *line, const struct span *span, double at) {
    double creep = creep_factor(line->run->model->wet).value;
    struct sag_found found = {.standing = against_chord(line, line->standing, span, at),
                              .brief = against_chord(line, line->brief, span, at)};
    found.total = creep * found.standing + found.brief;
    return found;
}

/* The worst place of a span: sixteen parts, then a search between the neighbours of the worst. */
static struct sag_found worst_of_span(const struct sag_line *line, const struct span *span) {
    enum { PARTS = 16, NARROWINGS = 40 };
    double length = span->to - span->from, best_at = span->from;
    struct sag_found best = {0};
    for (int k = 0; k <= PARTS; k++) {
        struct sag_found found = sag_at(line, span, span->from + length * k / PARTS);
        if (!(fabs(found.total) <= fabs(best.total))) {
            best = found;
            best_at = span->from + length * k / PARTS;
        }
    }
    double low = fmax(span->from, best_at - length / PARTS);
    double high = fmin(span->to, best_at + length / PARTS);
    for (int k = 0; k < NARROWINGS; k++) {
        double a = low + (high - low) / 3.0, b = high - (high - low) / 3.0;
        if (fabs(sag_at(line, span, a).total) < fabs(sag_at(line, span, b).total))
            low = a;
        else
            high = b;
    }
    struct sag_found found = sag_at(line, span, (low + high) / 2.0);
    return fabs(found.total) > fabs(best.total) ? found : best;
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

/* Largest movement of a rail's own end, up or down, against the joint that it is fastened to. */
static double end_slip(const struct sag_line *line) {
    double slip = 0.0;
    for (int end = 0; end < 2; end++) {
        size_t k = end ? line->rail->segment_count - 1 : 0;
        double apart = 0.0;
        for (int part = 0; part < 2; part++) {
            double local[3];
            stick_slip(part ? &line->brief[k] : &line->standing[k], end, local);
            for (int i = 0; i < 3; i++)
                apart += vector_dot(line->rail->axes[i], line->up) * local[i];
        }
        slip = fmax(slip, fabs(apart));
    }
    return slip;
}

static struct sag_line sag_line(struct run *run, int member, int combination) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    struct sag_line line = {.run = run, .rail = &run->model->members[member]};
    upward_normal(line.rail, line.up);
    double *standing = ARENA_ARRAY(run->arena, double, response->column_count);
    double *brief = ARENA_ARRAY(run->arena, double, response->column_count);
    run_weights(run, response, combination, SHARE_STANDING, standing);
    run_weights(run, response, combination, SHARE_BRIEF, brief);
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
            if (worst->found && rating.ratio <= worst->ratio)
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
    bool flat = fabs(vector_dot(rail->axes[1], (double[3]){0, 0, 1})) > STEEP_SHARE
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
        check->beside.words = "its screws give";
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
