#include "margin/curves.h"

#include "judge/judge.h"
#include "margin/raised.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { STEPS = 8, LOADS_MOST = STEPS + 3 };

struct sampled {
    struct arena *arena;
    const struct frame *frame;
    enum margin_load load;
    const char *id;
};

static struct result judged_at(const struct sampled *sampled, double value) {
    const struct judge_options plain = {0};
    struct result result = {0};
    /* the result holds on to its frame */
    struct frame *frame = ARENA_NEW(sampled->arena, struct frame);
    *frame = margin_raised(sampled->frame, sampled->load, value);
    judge_frame(sampled->arena, frame, &plain, &result);
    return result;
}

static bool has_ratio(const struct check *check) {
    return check->verdict != VERDICT_NOT_COVERED && isfinite(check->ratio);
}

/* NAN where the frame has no such check under this load, or no ratio for it. */
static double ratio_of(const struct result *result, const char *id) {
    for (size_t k = 0; k < result->checks.count; k++)
        if (strcmp(result->checks.items[k].id, id) == 0)
            return has_ratio(&result->checks.items[k]) ? result->checks.items[k].ratio : NAN;
    return NAN;
}

static double excess(double value, void *params) {
    const struct sampled *sampled = params;
    struct arena_mark mark = arena_mark(sampled->arena);
    struct result result = judged_at(sampled, value);
    double over = ratio_of(&result, sampled->id) - 1.0;
    arena_rewind(sampled->arena, mark);
    return over;
}

/* One for which so much load is not published counts as farthest past its limit, as in the search.
 */
static double badness(const struct check *check) {
    return check->beyond ? INFINITY : check->ratio;
}

/* The worst checks, each of a kind of its own. */
static void pick(struct sampled *sampled, double at, struct margin_plot *plot) {
    struct result result = judged_at(sampled, at);
    for (size_t count = 0; count < MARGIN_CURVES; count++) {
        const struct check *worst = NULL;
        for (size_t k = 0; k < result.checks.count; k++) {
            const struct check *check = &result.checks.items[k];
            bool known = !has_ratio(check) && !check->beyond;
            for (size_t c = 0; c < plot->count; c++)
                known |= strcmp(plot->curves[c].kind, check->kind) == 0;
            if (!known && (!worst || badness(check) > badness(worst)))
                worst = check;
        }
        if (worst)
            plot->curves[plot->count++] =
                (struct margin_curve){.id = worst->id,
                                      .kind = worst->kind,
                                      .beyond = worst->beyond,
                                      .words = check_words(sampled->arena, worst),
                                      .points = NULL,
                                      .limit_at = NAN};
    }
}

static int ascending(const void *left, const void *right) {
    double a = *(const double *)left, b = *(const double *)right;
    return (a > b) - (a < b);
}

/* Even steps, the load as described, and that at which the first check fails; each once. */
static size_t loads_to_judge(const struct margin *margin, double loads[LOADS_MOST]) {
    size_t count = 0, kept = 0;
    for (int k = 0; k <= STEPS; k++)
        loads[count++] = margin->plot.to * k / STEPS;
    loads[count++] = margin->as_described;
    if (margin->reach == REACH_FOUND)
        loads[count++] = margin->value;
    qsort(loads, count, sizeof *loads, ascending);
    for (size_t k = 0; k < count; k++)
        if (!kept || loads[k] > loads[kept - 1])
            loads[kept++] = loads[k];
    return kept;
}

static void sample(struct sampled *sampled, struct margin *margin) {
    struct margin_plot *plot = &margin->plot;
    struct margin_point *points[MARGIN_CURVES];
    double loads[LOADS_MOST];
    size_t load_count = loads_to_judge(margin, loads);
    for (size_t c = 0; c < plot->count; c++)
        plot->curves[c].points = points[c] =
            ARENA_ARRAY(sampled->arena, struct margin_point, LOADS_MOST);
    for (size_t k = 0; k < load_count; k++) {
        struct arena_mark mark = arena_mark(sampled->arena);
        struct result result = judged_at(sampled, loads[k]);
        for (size_t c = 0; c < plot->count; c++) {
            double ratio = ratio_of(&result, plot->curves[c].id);
            if (isfinite(ratio))
                points[c][plot->curves[c].count++] = (struct margin_point){loads[k], ratio};
        }
        arena_rewind(sampled->arena, mark);
    }
}

static void find_limit(struct sampled *sampled, const struct margin *margin,
                       struct margin_curve *curve) {
    bool first = margin->reach == REACH_FOUND && strcmp(curve->id, margin->first) == 0;
    if (first && !curve->beyond)
        curve->limit_at = margin->value;
    if (first)
        return;
    sampled->id = curve->id;
    for (size_t k = 1; k < curve->count; k++)
        if (curve->points[k - 1].ratio < 1.0 && curve->points[k].ratio >= 1.0) {
            curve->limit_at = margin_root(sampled->arena, excess, sampled,
                                          curve->points[k - 1].load, curve->points[k].load);
            return;
        }
}

static double picked_at(const struct margin *margin, double described) {
    if (margin->reach == REACH_FOUND)
        return margin->value * (1.0 + 1e-9);
    return margin->reach == REACH_BEYOND ? 2.0 * described : described;
}

static void curves_of(struct arena *arena, const struct frame *frame, enum margin_load load,
                      struct margin *margin) {
    const double beyond = 1.25;
    struct sampled sampled = {arena, frame, load, ""};
    double described = margin->as_described > 0.0 ? margin->as_described : MARGIN_START[load];
    double at = picked_at(margin, described);
    margin->plot.to = fmax(described, at) * beyond;
    pick(&sampled, at, &margin->plot);
    if (!margin->plot.count) /* it sways over there: a little less */
        pick(&sampled, at * (1.0 - 1e-6), &margin->plot);
    sample(&sampled, margin);
    for (size_t c = 0; c < margin->plot.count; c++)
        find_limit(&sampled, margin, &margin->plot.curves[c]);
}

void margin_curves(struct arena *arena, struct margin_answer *answer) {
    for (int load = 0; load < MARGIN_COUNT; load++)
        if (answer->loads[load].reach != REACH_NOT_ASKED &&
            answer->loads[load].reach != REACH_UNKNOWN)
            curves_of(arena, answer->frame, (enum margin_load)load, &answer->loads[load]);
}
