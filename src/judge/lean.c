#include "lean/lean.h"

#include "check/sag.h"
#include "judge/patterns.h"
#include "judge/sideways.h"
#include "judge/steps.h"
#include "loads/push.h"

#include <string.h>

enum { ALL_FULL = -1 }; /* instead of a pattern of trays */

static double own_factor(const struct sideways *what, int set) {
    for (int k = 0; k < what->set_count; k++)
        if (what->sets[k] == set)
            return what->factor;
    return 0.0;
}

/* Movements of all slots under a push or a wind beside what stands for long: that part, and the
 * 1.5 % by which it leans the same way, with creep. False where it could not be solved. */
static bool movements(const struct run *run, struct response *response,
                      const struct sideways *action, int pattern, double *slots) {
    size_t all = 3 * run->model->slot_count;
    double creep = creep_factor(run->model->wet).value;
    double lean = table_constant("out-of-plumb").value * action->sign;
    double *weights = ARENA_ARRAY(run->arena, double, response->column_count);
    for (size_t c = 0; c < response->live_count; c++) {
        const struct column *column = &response->columns[c];
        bool tray = column->set == SET_TRAY_LONG || column->set == SET_TRAY_SHORT;
        double factor = own_factor(action, column->set);
        if (column->set == SET_SELF || (tray && action->full))
            factor = column->set == SET_TRAY_SHORT ? 1.0 : creep;
        /* only frames with trays carry the built-in lean; see the combinations */
        if (column->lean != LEAN_NONE)
            factor *= column->lean == action->axis && action->full ? lean : 0.0;
        if (factor == 0.0)
            continue;
        if (!response->solvable[c])
            return false;
        weights[c] = factor;
    }
    if (pattern != ALL_FULL && !pattern_apply(run, (size_t)pattern, weights))
        return false;
    if (run->has_ties && !stance_settle(run->arena, response, FEET_HOLD, weights, NULL))
        return false;
    memset(slots, 0, all * sizeof *slots);
    for (size_t c = 0; c < response->live_count; c++)
        for (size_t k = 0; weights[c] != 0.0 && k < all; k++)
            slots[k] += weights[c] * response->slots[c][k];
    return true;
}

struct worst_lean {
    struct lean lean;
    const struct sideways *action;
    int pattern;
};

static bool look(struct run *run, enum stiffness stiffness, int axis, const double *limits,
                 struct worst_lean *worst) {
    struct response *response = run->responses[stiffness];
    struct sideways *list;
    size_t count = sideways_along(run->arena, run->loads, axis, &list);
    double *slots = ARENA_ARRAY(run->arena, double, 3 * run->model->slot_count);
    *worst = (struct worst_lean){.lean = {.joint = -1}};
    for (size_t k = 0; k < count; k++) {
        const struct sideways *action = &list[k];
        const char *only = run->options->why_combination;
        if (only && run->options->why_id && strcmp(only, action->name) != 0 &&
            strcmp(run->options->why_id, axis ? "lean/y" : "lean/x") == 0)
            continue;
        int patterns = action->full ? (int)run->loads->pattern_count : 0;
        for (int pattern = ALL_FULL; pattern < patterns; pattern++) {
            if (!movements(run, response, action, pattern, slots))
                continue;
            struct lean lean = lean_worst(run->model, limits, slots);
            if (worst->lean.joint < 0 || ratio_worse(lean.ratio, worst->lean.ratio))
                *worst = (struct worst_lean){lean, action, pattern};
        }
    }
    return worst->lean.joint >= 0;
}

static void note_working(struct run *run, struct working *working, const struct worst_lean *worst) {
    const struct frame *frame = run->frame;
    const struct limit *limit = &frame->limits.lean;
    if (!working)
        return;
    working_heading(
        working, arena_print(run->arena,
                             "Joint %s, joints at their middle stiffness, no clear sheet counted",
                             frame->joints.items[worst->lean.joint].name));
    working_cited(working, "Kcr", "creep of what stands for long", creep_factor(run->model->wet),
                  QUANTITY_NUMBER);
    if (worst->action->full)
        working_cited(working, "op", "share of the weight that acts sideways, out of plumb",
                      table_constant("out-of-plumb"), QUANTITY_NUMBER);
    if (worst->action->wind)
        working_cited(working, "kw", "share of the wind that counts for moving sideways",
                      sideways_wind_share(run->loads), QUANTITY_NUMBER);
    else
        working_given(working, "F", "push at the top", push_force(run->loads), QUANTITY_WEIGHT);
    working_given(working, "y",
                  worst->action->wind
                      ? "level movement: the wind, and with creep what stands for long"
                      : "level movement: the push, and with creep what stands for long",
                  worst->lean.movement, QUANTITY_LENGTH);
    if (limit->divisor > 0.0) {
        working_given(working, "h", "height above the lowest support, at least 12 in",
                      worst->lean.limit * limit->divisor, QUANTITY_LENGTH);
        working_given(working, "n", "share of the height that it may lean: one in", limit->divisor,
                      QUANTITY_NUMBER);
        working_step(working, "ya", "most it may lean", "h / n", worst->lean.limit, QUANTITY_LENGTH,
                     "");
    } else {
        working_given(working, "ya", "most it may lean", worst->lean.limit, QUANTITY_LENGTH);
    }
    working_step(working, "r", "share of the limit", "y / ya", worst->lean.ratio, QUANTITY_NUMBER,
                 "");
}

static void judge_axis(struct run *run, int axis, const double *limits) {
    static const char *const places[] = {"left-right", "front-back"};
    static const char *const where[] = {"x", "y"};
    struct worst_lean worst, low;
    if (!look(run, STIFFNESS_MIDDLE, axis, limits, &worst))
        return;
    struct working *working = run_working(run, axis ? "lean/y" : "lean/x");
    note_working(run, working, &worst);
    struct rating rating = rating_of(
        worst.lean.movement, worst.lean.limit, QUANTITY_LENGTH, "engineering practice [trade]",
        arena_print(run->arena, "at joint %s%s%s", run->frame->joints.items[worst.lean.joint].name,
                    worst.pattern == ALL_FULL ? "" : ", ",
                    worst.pattern == ALL_FULL ? "" : run->loads->patterns[worst.pattern].words));
    struct check *check =
        run_add_check(run, "lean", where[axis], worst.action->name, rating, places[axis],
                      "put in a diagonal, or a plywood back; batten brace says where", working);
    if (!run_uses(run, STIFFNESS_LOW) || !look(run, STIFFNESS_LOW, axis, limits, &low))
        return;
    if (check->verdict == VERDICT_OK && !(low.lean.ratio <= 1.0)) {
        check->verdict = VERDICT_CLOSE;
        check->advice = "its joints may be softer than this counts on; a diagonal makes sure";
    }
    check->beside.words = "with joints as soft as they may be it moves";
    check->beside.value = low.lean.movement;
    check->beside.kind = QUANTITY_LENGTH;
}

void judge_lean(struct run *run) {
    double *limits = lean_limits(run->arena, run->model);
    for (int axis = 0; axis < 2; axis++)
        judge_axis(run, axis, limits);
}
