#include "solve/trust.h"

#include "base/vector.h"

#include <math.h>
#include <string.h>

static double largest_of(const double *items, size_t count) {
    double largest = 0.0;
    for (size_t k = 0; k < count; k++)
        if (!(fabs(items[k]) <= largest))
            largest = fabs(items[k]);
    return largest;
}

static void spread_out(const struct system *system, const double *x, double *slots) {
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        slots[k] = system->unknown[k] < 0 ? 0.0 : x[system->unknown[k]];
}

/* f - K u over the unknowns into `residual`; returns the backward error. */
static double residual_of(const struct system *system, const double *loads, const double *x,
                          const double *product, double *residual) {
    double load = 0.0;
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        if (system->unknown[k] >= 0) {
            residual[system->unknown[k]] = loads[k] - product[k];
            load = fmax(load, fabs(loads[k]));
        }
    double scale = system->norm * largest_of(x, system->count) + load;
    return scale > 0.0 ? largest_of(residual, system->count) / scale : 0.0;
}

double trust_solve(struct arena *arena, const struct system *system, size_t count,
                   double *const *loads, double *const *x, double *const *slots,
                   double *const *products) {
    enum { REFINEMENTS = 3 };
    size_t all = 3 * system->model->slot_count;
    double **residuals = ARENA_ARRAY(arena, double *, count);
    for (size_t c = 0; c < count; c++) {
        residuals[c] = ARENA_ARRAY(arena, double, system->count);
        for (size_t k = 0; k < all; k++)
            if (system->unknown[k] >= 0)
                residuals[c][system->unknown[k]] = loads[c][k];
    }
    double largest = 0.0;
    for (int pass = 0; pass <= REFINEMENTS; pass++) {
        for (size_t c = 0; c < count; c++) {
            band_solve(&system->factor, residuals[c]);
            for (size_t i = 0; i < system->count; i++)
                x[c][i] += residuals[c][i];
            spread_out(system, x[c], slots[c]);
            memset(products[c], 0, all * sizeof *products[c]);
        }
        system_multiply(system, count, slots, products);
        largest = 0.0;
        for (size_t c = 0; c < count; c++) {
            double error = residual_of(system, loads[c], x[c], products[c], residuals[c]);
            if (!(error <= largest))
                largest = error;
        }
        if (largest < 1e-3 * TRUST_BACKWARD)
            break;
    }
    return largest;
}

static void add_force(const double at[3], const double middle[3], const double force[3],
                      double sum[6]) {
    double arm[3], moment[3];
    vector_between(middle, at, arm);
    vector_cross(arm, force, moment);
    for (int c = 0; c < 3; c++) {
        sum[c] += force[c];
        sum[3 + c] += moment[c];
    }
}

/* Loads of the column as they were described, not as they were turned into joint forces. */
static double add_loads(const struct response *response, size_t column, double sum[6]) {
    const struct model *model = response->system->model;
    const struct column *which = &response->columns[column];
    if (which->tie >= 0)
        return 1.0; /* a pair of forces along one line: nothing to balance */
    const struct load_set *set = &response->loads->sets[which->set];
    double largest = set->largest;
    for (size_t j = 0; j < model->frame->joints.count; j++) {
        const double *load = set->joints[j];
        double force[3] = {load[0], load[1], load[2]};
        if (which->lean != LEAN_NONE) {
            force[0] = force[1] = force[2] = 0.0;
            force[which->lean] = -load[2];
        }
        add_force(model->frame->joints.items[j].at, model->middle, force, sum);
        for (int c = 0; which->lean == LEAN_NONE && c < 3; c++)
            sum[3 + c] += load[3 + c];
    }
    for (size_t k = 0; k < set->on_segments.count; k++) {
        const struct segment_load *load = &set->on_segments.items[k];
        const struct segment *segment = &model->segments[load->segment];
        const struct model_member *member = &model->members[segment->member];
        double place = segment->start + (load->a + load->b) / 2.0;
        double whole = load->b > load->a ? load->b - load->a : 1.0;
        double at[3], force[3] = {0};
        for (int c = 0; c < 3; c++)
            at[c] = member->from[c] + place * member->axes[0][c];
        if (which->lean == LEAN_NONE)
            for (int c = 0; c < 3; c++)
                force[c] = load->force[c] * whole;
        else
            force[which->lean] = -load->force[2] * whole;
        add_force(at, model->middle, force, sum);
    }
    return largest;
}

/* A joint may lie up to 1 mm beside the axis of a stick that passes it; the model puts it on the
 * axis. Forces between the two act at both places: their moment is no error. */
static void add_offsets(const struct response *response, size_t column, double sum[6]) {
    const struct model *model = response->system->model;
    for (size_t s = 0; s < model->segment_count; s++) {
        const struct segment *segment = &model->segments[s];
        const struct model_member *member = &model->members[segment->member];
        const double *ends = &response->ends[column][ELEMENT_DOFS * s];
        for (int end = 0; end < 2; end++) {
            const double *joint = model->frame->joints.items[segment->joints[end]].at;
            double place = segment->start + end * segment->length;
            double offset[3], force[3] = {0}, moment[3];
            for (int c = 0; c < 3; c++) {
                offset[c] = joint[c] - member->from[c] - place * member->axes[0][c];
                for (int i = 0; i < 3; i++)
                    force[c] += member->axes[i][c] * ends[6 * end + i];
            }
            vector_cross(offset, force, moment);
            for (int c = 0; c < 3; c++)
                sum[3 + c] -= moment[c];
        }
    }
}

double trust_equilibrium(const struct response *response, size_t column) {
    const struct model *model = response->system->model;
    const struct frame *frame = model->frame;
    double sum[6] = {0};
    double largest = add_loads(response, column, sum);
    for (size_t k = 0; k < frame->supports.count; k++) {
        const double *reaction = response->reactions[column][k];
        add_force(frame->joints.items[frame->supports.items[k].joint].at, model->middle, reaction,
                  sum);
        for (int c = 0; c < 3; c++)
            sum[3 + c] += reaction[3 + c];
    }
    add_offsets(response, column, sum);
    /* A plane frame is held everywhere across its plane; those parts need no balance. */
    if (frame->plane)
        sum[1] = sum[3] = sum[5] = 0.0;
    double error = 0.0;
    for (int c = 0; c < 6; c++)
        error = fmax(error, fabs(sum[c]) / (c < 3 || !(model->size > 0.0) ? 1.0 : model->size));
    return largest > 0.0 ? error / largest : 0.0;
}
