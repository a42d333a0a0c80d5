#include "solve/trust.h"

#include "base/vector.h"
#include "solve/resultant.h"

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
        solver_solve(arena, &system->factor, count, residuals);
        for (size_t c = 0; c < count; c++) {
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

/* A joint may lie up to 1 mm beside the axis of a stick that passes it; the model puts it on the
 * axis. Forces between the two act at both places: their moment is no error. */
static void add_offsets(const struct response *response, const double *ends, double weight,
                        struct resultant *sum) {
    const struct model *model = response->system->model;
    for (size_t s = 0; s < model->segment_count; s++) {
        const struct segment *segment = &model->segments[s];
        const struct model_member *member = &model->members[segment->member];
        for (int end = 0; end < 2; end++) {
            const double *joint = model->frame->joints.items[segment->joints[end]].at;
            double place = segment->start + end * segment->length;
            double offset[3], force[3] = {0}, moment[3];
            for (int c = 0; c < 3; c++) {
                offset[c] = joint[c] - member->from[c] - place * member->axes[0][c];
                for (int i = 0; i < 3; i++)
                    force[c] += member->axes[i][c] * ends[ELEMENT_DOFS * s + 6 * end + i];
            }
            vector_cross(offset, force, moment);
            for (int c = 0; c < 3; c++)
                sum->moment[c] -= weight * moment[c];
        }
    }
}

/* Loads and reactions of a column. Returns its largest load: of the columns without loads the pair
 * of 1 N along a tie, and the largest reaction where a foot gives way. */
static double add_column(const struct response *response, size_t column, double weight,
                         struct resultant *sum) {
    const struct model *model = response->system->model;
    const struct frame *frame = model->frame;
    const struct column *which = &response->columns[column];
    struct resultant loads = response_resultant(response, column, model->middle);
    double largest = which->set >= 0 ? response->loads->sets[which->set].largest : 1.0;
    for (size_t k = 0; k < frame->supports.count; k++) {
        const double *reaction = response->reactions[column][k];
        resultant_add(&loads, frame->joints.items[frame->supports.items[k].joint].at, model->middle,
                      reaction);
        for (int c = 0; c < 3; c++) {
            loads.moment[c] += reaction[3 + c];
            if (which->foot >= 0)
                largest = fmax(largest, fabs(reaction[c]));
        }
    }
    for (int c = 0; c < 3; c++) {
        sum->force[c] += weight * loads.force[c];
        sum->moment[c] += weight * loads.moment[c];
    }
    add_offsets(response, response->ends[column], weight, sum);
    return largest;
}

static double imbalance(const struct model *model, const struct resultant *sum, double largest) {
    double error = 0.0, arm = model->size > 0.0 ? model->size : 1.0;
    for (int c = 0; c < 3; c++) {
        /* a plane frame is held everywhere across its plane; those parts need no balance */
        bool across = c == 1;
        if (!model->frame->plane || !across)
            error = fmax(error, fabs(sum->force[c]));
        if (!model->frame->plane || across)
            error = fmax(error, fabs(sum->moment[c]) / arm);
    }
    return largest > 0.0 ? error / largest : 0.0;
}

double trust_equilibrium(const struct response *response, size_t column) {
    struct resultant sum = {{0.0}, {0.0}};
    double largest = add_column(response, column, 1.0, &sum);
    return imbalance(response->system->model, &sum, largest);
}

double trust_mix_equilibrium(const struct response *response, const double *weights) {
    struct resultant sum = {{0.0}, {0.0}};
    double largest = 0.0;
    for (size_t c = 0; c < response->live_count; c++) {
        if (weights[c] == 0.0)
            continue;
        double of_column = fabs(weights[c]) * add_column(response, c, weights[c], &sum);
        if (response->columns[c].set >= 0)
            largest = fmax(largest, of_column);
    }
    return imbalance(response->system->model, &sum, largest);
}
