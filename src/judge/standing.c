#include "judge/standing.h"

#include "solve/trust.h"

#include <math.h>
#include <string.h>

enum { UP = 2 };

void standing_prepare(struct run *run) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    struct resultant *resultants =
        ARENA_ARRAY(run->arena, struct resultant, response->column_count);
    for (size_t c = 0; c < response->live_count; c++)
        resultants[c] = response_resultant(response, c, run->model->middle);
    run->resultants = resultants;
    run->footprint = footprint_of(run->arena, run->model);
    for (size_t m = 0; m < run->model->member_count; m++)
        run->has_ties |= run->frame->members.items[m].acts_as == ACTS_AS_TIE;
}

double standing_pressure(const struct run *run, enum stiffness stiffness, const double *weights,
                         size_t support) {
    const struct response *response = run->responses[stiffness];
    double force = 0.0;
    for (size_t c = 0; c < response->live_count; c++)
        if (weights[c] != 0.0)
            force += weights[c] * response->reactions[c][support][UP];
    return force;
}

/* Is a foot pulled that can lift? */
static bool any_pulled(const struct run *run, enum stiffness stiffness, const double *weights) {
    double largest = 0.0, least = 0.0;
    for (size_t k = 0; k < run->frame->supports.count; k++) {
        if (!run->frame->supports.items[k].foot)
            continue;
        double force = standing_pressure(run, stiffness, weights, k);
        if (support_lifts(&run->frame->supports.items[k]))
            least = fmin(least, force);
        largest = fmax(largest, fabs(force));
    }
    return least < -1e-9 * largest;
}

/* The edge over which the loads turn the frame most; -1 where they turn it over none. Whatever the
 * sticks are like, feet that only push cannot hold it then. */
static int turned_over(const struct run *run, const double *weights) {
    const struct footprint *footprint = run->footprint;
    int worst = -1;
    double most = 0.0;
    for (size_t e = 0; e < footprint->edge_count; e++) {
        const struct tip_edge *edge = &footprint->edges[e];
        double net = 0.0, all = 0.0;
        for (size_t c = 0; c < run->responses[STIFFNESS_MIDDLE]->live_count; c++) {
            if (weights[c] == 0.0)
                continue;
            double moment = weights[c] * edge_moment(edge, &run->resultants[c], run->model->middle);
            net += moment;
            all += fabs(moment);
        }
        if (edge->held_down || !(net > 1e-9 * all) || !(net > most))
            continue;
        most = net;
        worst = (int)e;
    }
    return worst;
}

/* A mix with lifted feet is a sum of large numbers: may it be trusted? */
static void note_balance(struct run *run, enum stiffness stiffness, const double *weights) {
    struct response *response = run->responses[stiffness];
    response_need_ends(run->arena, response, weights);
    double error = trust_mix_equilibrium(response, weights);
    if (!(error <= run->result->equilibrium_error))
        run->result->equilibrium_error = error;
    if (!(response->backward_error <= run->result->backward_error))
        run->result->backward_error = response->backward_error;
}

void standing_settle(struct run *run, enum stiffness stiffness, struct mix *mix) {
    struct response *response = run->responses[stiffness];
    double *weights = mix->weights[stiffness];
    struct stance *stance = &mix->stances[stiffness];
    if (run->has_ties && !stance_settle(run->arena, response, FEET_HOLD, weights, stance)) {
        mix->stands = false;
        return;
    }
    if (!any_pulled(run, stiffness, weights))
        return;
    mix->edge = turned_over(run, weights);
    mix->tips |= mix->edge >= 0;
    if (mix->edge >= 0)
        return;
    if (stance_settle(run->arena, response, FEET_PUSH, weights, stance))
        note_balance(run, stiffness, weights);
    else
        mix->tips = true;
}

const bool (*standing_held(const struct run *run, const struct stance *stance))[3] {
    if (stance->let_go == 0)
        return NULL;
    const struct model *model = run->model;
    bool(*held)[3] = arena_take(run->arena, model->slot_count, sizeof *held);
    for (size_t s = 0; s < model->slot_count; s++)
        memcpy(held[s], model->slots[s].held, sizeof *held);
    for (size_t k = 0; k < run->frame->supports.count; k++)
        for (int c = 0; c < 3; c++)
            if (stance->freed[k][c])
                held[model->move_slot[run->frame->supports.items[k].joint]][c] = false;
    return (const bool(*)[3])held;
}
