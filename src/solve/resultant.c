#include "solve/resultant.h"

#include "base/vector.h"

void resultant_add(struct resultant *sum, const double at[3], const double about[3],
                   const double force[3]) {
    double arm[3], moment[3];
    vector_between(about, at, arm);
    vector_cross(arm, force, moment);
    for (int c = 0; c < 3; c++) {
        sum->force[c] += force[c];
        sum->moment[c] += moment[c];
    }
}

/* A force as the column has it: leaned copies turn weight into a level force. */
static void as_leaned(const double load[3], double factor, int lean, double force[3]) {
    for (int c = 0; c < 3; c++)
        force[c] = lean == LEAN_NONE ? factor * load[c] : 0.0;
    if (lean != LEAN_NONE)
        force[lean] = -factor * load[2];
}

struct resultant response_resultant(const struct response *response, size_t column,
                                    const double about[3]) {
    const struct model *model = response->system->model;
    const struct column *which = &response->columns[column];
    struct resultant sum = {{0.0}, {0.0}};
    if (which->set < 0)
        return sum;
    const struct load_set *set = &response->loads->sets[which->set];
    double force[3];
    for (size_t j = 0; j < model->frame->joints.count; j++) {
        as_leaned(set->joints[j], 1.0, which->lean, force);
        resultant_add(&sum, model->frame->joints.items[j].at, about, force);
        for (int c = 0; which->lean == LEAN_NONE && c < 3; c++)
            sum.moment[c] += set->joints[j][3 + c];
    }
    for (size_t k = 0; k < set->on_segments.count; k++) {
        const struct segment_load *load = &set->on_segments.items[k];
        const struct segment *segment = &model->segments[load->segment];
        const struct model_member *member = &model->members[segment->member];
        double place = segment->start + (load->a + load->b) / 2.0, at[3];
        for (int c = 0; c < 3; c++)
            at[c] = member->from[c] + place * member->axes[0][c];
        as_leaned(load->force, load->b > load->a ? load->b - load->a : 1.0, which->lean, force);
        resultant_add(&sum, at, about, force);
    }
    return sum;
}
