#include "judge/load_shape.h"

#include <math.h>

#define SMALL 0.01 /* share of the largest below which a force or moment counts as none */

struct survey {
    double largest_moment, largest_shear;
    double end_moments[2], end_shears[2];
    double uniform;      /* N, sum of all uniform parts */
    bool even;           /* one intensity over the whole stretch */
    size_t points;       /* single loads between the ends that are not small */
    double point, place; /* the last of them; place m from the stretch's start */
};

static void forces_at(const struct stick_state *state, double x, bool after, int strong,
                      double *shear, double *moment) {
    double forces[FORCE_COUNT];
    stick_forces(state, x, after, forces);
    *shear = strong == 1 ? forces[FORCE_VZ] : forces[FORCE_VY];
    *moment = strong == 1 ? forces[FORCE_MY] : forces[FORCE_MZ];
}

static void measure_ends(const struct model *model, const struct model_member *member,
                         const struct stick_state *states, size_t first, size_t last, int strong,
                         struct survey *survey) {
    forces_at(&states[first], 0.0, true, strong, &survey->end_shears[0], &survey->end_moments[0]);
    forces_at(&states[last], model->segments[member->first_segment + last].length, false, strong,
              &survey->end_shears[1], &survey->end_moments[1]);
    for (size_t k = first; k <= last; k++)
        for (int part = 0; part <= 8; part++) {
            double shear, moment;
            forces_at(&states[k], states[k].length * part / 8.0, part < 8, strong, &shear, &moment);
            survey->largest_moment = fmax(survey->largest_moment, fabs(moment));
            survey->largest_shear = fmax(survey->largest_shear, fabs(shear));
        }
}

static void note_point(struct survey *survey, double force, double place) {
    if (fabs(force) <= SMALL * survey->largest_shear)
        return;
    survey->points++;
    survey->point = force;
    survey->place = place;
}

static void measure_loads(const struct model *model, const struct model_member *member,
                          const struct stick_state *states, size_t first, size_t last, int strong,
                          double from, struct survey *survey) {
    int axis = strong == 1 ? 2 : 1;
    double intensity = NAN;
    survey->even = true;
    for (size_t k = first; k <= last; k++) {
        double start = model->segments[member->first_segment + k].start - from;
        double line = 0.0;
        for (size_t i = 0; i < states[k].load_count; i++) {
            const struct element_load *load = &states[k].loads[i];
            double length = load->b - load->a;
            if (!(length > 0.0)) {
                note_point(survey, load->force[axis], start + load->a);
                continue;
            }
            survey->uniform += load->force[axis] * length;
            survey->even &= length > (1.0 - SMALL) * states[k].length;
            line += load->force[axis];
        }
        if (k > first) {
            double before, behind, moment;
            forces_at(&states[k - 1], states[k - 1].length, false, strong, &before, &moment);
            forces_at(&states[k], 0.0, true, strong, &behind, &moment);
            note_point(survey, behind - before, start);
            survey->even &= fabs(line - intensity) <= SMALL * fabs(intensity);
        }
        intensity = line;
    }
}

enum load_shape load_shape_of(const struct model *model, const struct model_member *member,
                              const struct stick_state *states, const struct stretch *stretch,
                              int strong) {
    size_t first = 0, last = 0;
    while (model->segments[member->first_segment + first].start < stretch->from - ALONG_TOLERANCE)
        first++;
    for (last = first; last + 1 < member->segment_count; last++)
        if (model->segments[member->first_segment + last + 1].start > stretch->to - ALONG_TOLERANCE)
            break;
    struct survey survey = {0};
    measure_ends(model, member, states, first, last, strong, &survey);
    measure_loads(model, member, states, first, last, strong, stretch->from, &survey);
    double length = stretch->to - stretch->from;
    double small_moment = SMALL * survey.largest_moment, small_shear = SMALL * survey.largest_shear;
    bool only_uniform = survey.points == 0 && survey.even && fabs(survey.uniform) > small_shear;
    if (stretch->held[0] && stretch->held[1]) {
        if (fabs(survey.end_moments[0]) > small_moment ||
            fabs(survey.end_moments[1]) > small_moment)
            return LOAD_SHAPE_ANY;
        if (only_uniform)
            return LOAD_SHAPE_UNIFORM;
        bool middle = survey.points == 1 && fabs(survey.place - length / 2.0) <= SMALL * length &&
                      fabs(survey.uniform) <= SMALL * fabs(survey.point);
        return middle ? LOAD_SHAPE_MIDDLE : LOAD_SHAPE_ANY;
    }
    if (!stretch->held[0] && !stretch->held[1])
        return LOAD_SHAPE_ANY;
    int tip = stretch->held[0] ? 1 : 0;
    if (fabs(survey.end_moments[tip]) > small_moment)
        return LOAD_SHAPE_ANY;
    if (only_uniform && fabs(survey.end_shears[tip]) <= small_shear)
        return LOAD_SHAPE_CANTILEVER;
    bool only_tip = survey.points == 0 && fabs(survey.uniform) <= small_shear;
    return only_tip ? LOAD_SHAPE_CANTILEVER_TIP : LOAD_SHAPE_ANY;
}
