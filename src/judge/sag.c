#include "check/sag.h"
#include "base/vector.h"
#include "judge/sag_curve.h"
#include "judge/standing.h"
#include "judge/steps.h"
#include "loads/weather.h"

#include <math.h>

/* One stick to be judged. */
struct sag_place {
    int member;
    const char *id, *where;
    const char *place; /* in words */
    const struct limit *limit;
    bool under_snow; /* only where snow lies */
};

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
    struct mix part = {.weights = {[STIFFNESS_MIDDLE] = standing}, .edge = -1};
    standing_settle(run, STIFFNESS_MIDDLE, &part);
    for (size_t c = 0; c < response->live_count; c++)
        if (response->columns[c].set < 0)
            brief[c] = upright->weights[STIFFNESS_MIDDLE][c] - standing[c];
}

static bool feet_lift(const struct run *run, int combination) {
    return run->upright[combination].stances[STIFFNESS_MIDDLE].let_go > 0;
}

static struct sag_line sag_line(struct run *run, int member, int combination) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    struct sag_line line = {.run = run, .rail = &run->model->members[member]};
    sag_upward(line.rail, line.up);
    bool lift = feet_lift(run, combination);
    size_t columns = lift ? response->column_count : response->live_count;
    double *standing = ARENA_ARRAY(run->arena, double, columns);
    double *brief = ARENA_ARRAY(run->arena, double, columns);
    run_weights(run, response, combination, SHARE_STANDING, standing);
    run_weights(run, response, combination, SHARE_BRIEF, brief);
    if (lift)
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
                                  const struct span *span, struct sag_found found,
                                  const struct limit *limit) {
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

static void look_at(struct run *run, const struct sag_place *place, const struct span *spans,
                    size_t span_count, struct worst_sag *worst) {
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        if (run_pushes(run, (int)c) || !run_wants_combination(run, place->id, (int)c) ||
            (place->under_snow && loads_case_factor(run->loads, (int)c, CASE_SNOW) == 0.0) ||
            !run_weights(run, run->responses[STIFFNESS_MIDDLE], (int)c, SHARE_ALL, NULL))
            continue;
        struct arena_mark mark = arena_mark(run->arena);
        struct sag_line line = sag_line(run, place->member, (int)c);
        for (size_t k = 0; k < span_count; k++) {
            struct sag_found found = sag_of_span(&line, &spans[k]);
            struct sag_input input = sag_input(run, &line, &spans[k], found, place->limit);
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
        if (!feet_lift(run, (int)c)) /* else what was found for the feet is kept */
            arena_rewind(run->arena, mark);
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

static void judge_stick(struct run *run, const struct sag_place *at) {
    struct span *spans =
        ARENA_ARRAY(run->arena, struct span, run->model->members[at->member].segment_count);
    size_t span_count = spans_of(run, at->member, spans);
    struct worst_sag worst = {0};
    look_at(run, at, spans, span_count, &worst);
    if (!worst.found)
        return;
    struct sag_line line = sag_line(run, at->member, worst.combination);
    struct sag_input input = sag_input(run, &line, &worst.span, worst.sag, at->limit);
    struct working *working = run_working(run, at->id);
    struct rating rating = check_sag(&input, working);
    struct check *check =
        run_add_check(run, "sag", at->where, run->loads->combinations[worst.combination].name,
                      rating, at->place, advice(run, at->member), working);
    if (worst.slip > 0.00005) {
        check->beside.words = "its screws give, with creep,";
        check->beside.value = worst.slip;
        check->beside.kind = QUANTITY_LENGTH;
    }
}

/* A stick under `whole`, the name of a shelf or a panel. */
static void judge_under(struct run *run, const char *whole, const char *kind, int member,
                        const struct limit *limit, bool under_snow) {
    struct arena *arena = run->arena;
    const char *name = run->frame->members.items[member].name;
    const char *where = arena_print(arena, "%s/%s", whole, name);
    judge_stick(run,
                &(struct sag_place){.member = member,
                                    .id = arena_print(arena, "sag/%s", where),
                                    .where = where,
                                    .place = arena_print(arena, "%s %s, %s", whole, kind, name),
                                    .limit = limit,
                                    .under_snow = under_snow});
}

static bool bears_twice(const struct cover *cover, size_t bearer) {
    for (size_t k = 0; k < bearer; k++)
        if (cover->bearers[k].member == cover->bearers[bearer].member)
            return true;
    return false;
}

/* The sticks that carry a roof panel, in the combinations that have snow. */
static void judge_roof(struct run *run, size_t index) {
    const struct cover *cover = &run->loads->weather->covers[index];
    if (cover->kind != COVER_ROOF)
        return;
    for (size_t k = 0; k < cover->bearer_count; k++)
        if (cover->bearers[k].member >= 0 && !bears_twice(cover, k))
            judge_under(run, cover->panel->name, "panel", cover->bearers[k].member,
                        &run->frame->limits.roof_sag, true);
}

void judge_sag(struct run *run) {
    for (size_t k = 0; k < run->frame->shelves.count; k++) {
        const struct shelf *shelf = &run->frame->shelves.items[k];
        for (size_t r = 0; r < shelf->rail_count; r++)
            judge_under(run, shelf->name, "shelf", shelf->rails[r], &run->frame->limits.shelf_sag,
                        false);
    }
    for (size_t k = 0; k < run->loads->weather->cover_count; k++)
        judge_roof(run, k);
}
