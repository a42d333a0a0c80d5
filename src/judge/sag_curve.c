#include "judge/sag_curve.h"

#include "base/vector.h"
#include "check/sag.h"

#include <math.h>

void sag_upward(const struct model_member *rail, double up[3]) {
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

struct sag_found sag_of_span(const struct sag_line *line, const struct span *span) {
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
