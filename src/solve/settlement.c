#include "solve/settlement.h"

#include "solve/spins.h"
#include "solve/trust.h"

#include <math.h>

int settlement_column(const struct response *response, int support, int axis) {
    for (size_t c = response->column_count; c > 0 && response->columns[c - 1].foot >= 0; c--)
        if (response->columns[c - 1].foot == support && response->columns[c - 1].axis == axis)
            return (int)(c - 1);
    return -1;
}

/* The unknowns move as if the forces that the moved foot puts on its sticks were loads. */
static void solve_column(struct arena *arena, struct response *response, size_t column,
                         const struct spins *spins) {
    const struct system *system = response->system;
    const struct column *which = &response->columns[column];
    int joint = system->model->frame->supports.items[which->foot].joint;
    size_t all = 3 * system->model->slot_count;
    size_t moved = 3 * (size_t)system->model->move_slot[joint] + (size_t)which->axis;
    double *foot = ARENA_ARRAY(arena, double, all), *forces = ARENA_ARRAY(arena, double, all);
    double *loads = ARENA_ARRAY(arena, double, all), *products = ARENA_ARRAY(arena, double, all);
    double *none = ARENA_ARRAY(arena, double, all), *x = ARENA_ARRAY(arena, double, system->count);
    response->slots[column] = ARENA_ARRAY(arena, double, all);
    foot[moved] = 1.0;
    system_multiply(system, 1, &foot, &forces);
    for (size_t k = 0; k < all; k++)
        loads[k] = -forces[k];
    double error = trust_solve(arena, system, 1, &loads, &x, &response->slots[column], &products);
    if (!(error <= response->backward_error))
        response->backward_error = error;
    spins_unwind(system, spins, response->slots[column]);
    response->slots[column][moved] += 1.0;
    for (size_t k = 0; k < all; k++)
        products[k] += forces[k];
    response_recover_ends(arena, response, column, column + 1);
    response_room_for_reactions(arena, response, column);
    response_recover_reactions(response, column, products, none);
    response->solved[column] = true;
    if (column >= response->live_count)
        response->live_count = column + 1;
    double balance = trust_equilibrium(response, column);
    if (!(balance <= response->equilibrium_error))
        response->equilibrium_error = balance;
}

void settlement_solve(struct arena *arena, struct response *response, int support) {
    int columns[3];
    bool solved = true;
    for (int axis = 0; axis < 3; axis++) {
        columns[axis] = settlement_column(response, support, axis);
        solved &= columns[axis] < 0 || response->solved[columns[axis]];
    }
    if (solved)
        return;
    struct spins spins = spins_find(arena, response->system);
    for (int axis = 0; axis < 3; axis++)
        if (columns[axis] >= 0)
            solve_column(arena, response, (size_t)columns[axis], &spins);
}
