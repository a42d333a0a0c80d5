#include "solve/stations.h"

#include "base/vector.h"

#include <math.h>
#include <stdlib.h>

enum { PARTS = 8 };

size_t stick_loads(struct arena *arena, const struct response *response, size_t segment,
                   const double *weights, struct element_load **loads) {
    size_t room = 0, count = 0;
    for (size_t c = 0; c < response->live_count; c++)
        if (weights[c] != 0.0)
            room += response_loads(response, c, segment, NULL, 0);
    *loads = ARENA_ARRAY(arena, struct element_load, room);
    for (size_t c = 0; c < response->live_count; c++) {
        if (weights[c] == 0.0)
            continue;
        struct element_load *added = *loads + count;
        size_t found = response_loads(response, c, segment, added, room - count);
        for (size_t k = 0; k < found; k++)
            for (int i = 0; i < 3; i++)
                added[k].force[i] *= weights[c];
        count += found;
    }
    return count;
}

struct stick_state stick_state(struct arena *arena, const struct response *response, size_t segment,
                               const double *weights) {
    const struct model *model = response->system->model;
    struct stick_state state = {.member = &model->members[model->segments[segment].member],
                                .length = model->segments[segment].length};
    const struct segment *cut = &model->segments[segment];
    state.load_count = stick_loads(arena, response, segment, weights, &state.loads);
    for (size_t c = 0; c < response->live_count; c++) {
        if (weights[c] == 0.0)
            continue;
        for (int i = 0; i < ELEMENT_DOFS; i++) {
            state.ends[i] += weights[c] * response->ends[c][ELEMENT_DOFS * segment + i];
            state.own[i] += weights[c] * response->own[c][ELEMENT_DOFS * segment + i];
        }
        for (int end = 0; end < 2; end++)
            for (int i = 0; i < 3; i++)
                state.joints[end][i] +=
                    weights[c] *
                    vector_dot(state.member->axes[i], &response->slots[c][3 * cut->move[end]]);
    }
    return state;
}

void stick_slip(const struct stick_state *state, int end, double out[3]) {
    for (int i = 0; i < 3; i++)
        out[i] = state->own[6 * end + i] - state->joints[end][i];
}

static double power(double x, int order) {
    double product = 1.0;
    for (int k = 0; k < order; k++)
        product *= x;
    return product;
}

/* Integrals of a load on [0, x] by the distance to x: order 0 the force itself, 1 its moment, 2 and
 * 3 the next integrals (Macaulay brackets). */
static double bracket(double x, const struct element_load *load, int order, bool after) {
    static const double factorial[] = {1.0, 1.0, 2.0, 6.0, 24.0};
    if (!(load->b > load->a)) {
        bool counts = after ? x >= load->a : x > load->a;
        return counts ? power(x - load->a, order) / factorial[order] : 0.0;
    }
    double from = x > load->a ? x - load->a : 0.0, past = x > load->b ? x - load->b : 0.0;
    return (power(from, order + 1) - power(past, order + 1)) / factorial[order + 1];
}

static double loads_to(const struct stick_state *state, double x, int axis, int order, bool after) {
    double sum = 0.0;
    for (size_t k = 0; k < state->load_count; k++)
        if (state->loads[k].force[axis] != 0.0)
            sum += state->loads[k].force[axis] * bracket(x, &state->loads[k], order, after);
    return sum;
}

void stick_forces(const struct stick_state *state, double x, bool after, double out[FORCE_COUNT]) {
    const double *f = state->ends;
    out[FORCE_N] = -(f[0] + loads_to(state, x, 0, 0, after));
    out[FORCE_VY] = -(f[1] + loads_to(state, x, 1, 0, after));
    out[FORCE_VZ] = -(f[2] + loads_to(state, x, 2, 0, after));
    out[FORCE_T] = -f[3];
    out[FORCE_MY] = -(f[4] + x * f[2] + loads_to(state, x, 2, 1, after));
    out[FORCE_MZ] = -(f[5] - x * f[1] - loads_to(state, x, 1, 1, after));
}

/* One bending plane: movement and slope from the start's own movement, turn (as a slope), moment
 * and shear of the joint on the stick. */
static double bent(const struct stick_state *state, double x, int axis, double start, double slope,
                   double moment, double shear, double EI, double GA, double *slope_at) {
    double curve = 0.0, curve_slope = 0.0;
    if (EI > 0.0) {
        curve =
            (moment * x * x / 2.0 + shear * x * x * x / 6.0 + loads_to(state, x, axis, 3, true)) /
            EI;
        curve_slope = (moment * x + shear * x * x / 2.0 + loads_to(state, x, axis, 2, true)) / EI;
    }
    double slip = 0.0, slip_slope = 0.0;
    if (GA > 0.0) {
        slip = -(shear * x + loads_to(state, x, axis, 1, true)) / GA;
        slip_slope = -(shear + loads_to(state, x, axis, 0, true)) / GA;
    }
    *slope_at = slope + curve_slope + slip_slope;
    return start + slope * x + curve + slip;
}

void stick_movement(const struct stick_state *state, double x, double out[3], double *slopes) {
    const double *own = state->own, *f = state->ends;
    const struct model_member *member = state->member;
    double at[3];
    out[0] = own[0] + (own[6] - own[0]) * x / state->length;
    at[0] = (own[6] - own[0]) / state->length;
    out[1] = bent(state, x, 1, own[1], own[5], -f[5], f[1], member->E * member->Iz,
                  member->G * member->Ay, &at[1]);
    out[2] = bent(state, x, 2, own[2], -own[4], f[4], f[2], member->E * member->Iy,
                  member->G * member->Az, &at[2]);
    if (slopes)
        for (int c = 0; c < 3; c++)
            slopes[c] = at[c];
}

static int compare_stations(const void *left, const void *right) {
    const struct station *a = left, *b = right;
    if (a->x != b->x)
        return a->x < b->x ? -1 : 1;
    return (int)a->after - (int)b->after;
}

size_t stations_of(struct arena *arena, const struct response *response, size_t segment,
                   struct station **stations) {
    double L = response->system->model->segments[segment].length;
    size_t points = 0;
    for (size_t c = 0; c < response->live_count; c++)
        points += response_loads(response, c, segment, NULL, 0);
    struct element_load *loads = ARENA_ARRAY(arena, struct element_load, points);
    struct station *list = ARENA_ARRAY(arena, struct station, PARTS + 1 + 2 * points);
    size_t count = 0;
    for (int k = 0; k <= PARTS; k++)
        list[count++] = (struct station){k == PARTS ? L : L * k / PARTS, k != PARTS};
    for (size_t c = 0; c < response->live_count; c++) {
        size_t found = response_loads(response, c, segment, loads, points);
        for (size_t k = 0; k < found; k++)
            if (!(loads[k].b > loads[k].a)) {
                list[count++] = (struct station){loads[k].a, false};
                list[count++] = (struct station){loads[k].a, true};
            }
    }
    qsort(list, count, sizeof *list, compare_stations);
    /* one station a place and side; round-off apart is the same place */
    size_t kept = 0;
    for (size_t k = 0; k < count; k++) {
        bool same = kept > 0 && list[k].x - list[kept - 1].x <= 1e-9 * L;
        if (same && list[k].after == list[kept - 1].after)
            continue;
        if (same)
            list[k].x = list[kept - 1].x;
        list[kept++] = list[k];
    }
    *stations = list;
    return kept;
}
