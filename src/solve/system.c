#include "solve/system.h"

#include "base/vector.h"
#include "solve/modes.h"
#include "solve/order.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Slots in the order of their joints. */
static int *slots_in_order(struct arena *arena, const struct model *model, const struct bar *bars,
                           size_t bar_count) {
    size_t joints = model->frame->joints.count;
    size_t pairs = model->segment_count + bar_count;
    int(*pair)[2] = arena_take(arena, pairs, sizeof *pair);
    for (size_t s = 0; s < model->segment_count; s++)
        memcpy(pair[s], model->segments[s].joints, sizeof *pair);
    for (size_t b = 0; b < bar_count; b++)
        memcpy(pair[model->segment_count + b], bars[b].joints, sizeof *pair);
    struct graph graph = graph_of_pairs(arena, joints, (const int(*)[2])pair, pairs);
    int *order = order_band(arena, &graph);
    size_t *first = ARENA_ARRAY(arena, size_t, joints + 1);
    for (size_t s = 0; s < model->slot_count; s++)
        first[model->slots[s].joint + 1]++;
    for (size_t j = 0; j < joints; j++)
        first[j + 1] += first[j];
    size_t *next = ARENA_ARRAY(arena, size_t, joints + 1);
    memcpy(next, first, joints * sizeof *next);
    int *by_joint = ARENA_ARRAY(arena, int, model->slot_count);
    for (size_t s = 0; s < model->slot_count; s++)
        by_joint[next[model->slots[s].joint]++] = (int)s;
    int *slots = ARENA_ARRAY(arena, int, model->slot_count);
    size_t count = 0;
    for (size_t k = 0; k < joints; k++)
        for (size_t i = first[order[k]]; i < first[order[k] + 1]; i++)
            slots[count++] = by_joint[i];
    return slots;
}

static void number_unknowns(struct arena *arena, struct system *system) {
    const struct model *model = system->model;
    int *order = slots_in_order(arena, model, system->bars, system->bar_count);
    system->unknown = ARENA_ARRAY(arena, int, 3 * model->slot_count);
    for (size_t k = 0; k < model->slot_count; k++)
        for (int c = 0; c < 3; c++)
            system->unknown[3 * order[k] + c] =
                model->slots[order[k]].held[c] ? -1 : (int)system->count++;
}

/* Numbers of the twelve unknowns of a segment; -1 where held or without a turning slot. */
static void segment_unknowns(const struct system *system, const struct segment *segment,
                             int unknowns[ELEMENT_DOFS]) {
    for (int end = 0; end < 2; end++)
        for (int c = 0; c < 3; c++) {
            unknowns[6 * end + c] = system->unknown[3 * segment->move[end] + c];
            unknowns[6 * end + 3 + c] =
                segment->turn[end] < 0 ? -1 : system->unknown[3 * segment->turn[end] + c];
        }
}

static void spread(const int *unknowns, int count, size_t *half) {
    for (int i = 0; i < count; i++)
        for (int j = 0; j < i; j++)
            if (unknowns[i] >= 0 && unknowns[j] >= 0) {
                size_t apart = (size_t)abs(unknowns[i] - unknowns[j]);
                if (apart > *half)
                    *half = apart;
            }
}

static void bar_unknowns(const struct system *system, const struct bar *bar, int unknowns[6]) {
    for (int end = 0; end < 2; end++)
        for (int c = 0; c < 3; c++)
            unknowns[3 * end + c] =
                system->unknown[3 * system->model->move_slot[bar->joints[end]] + c];
}

void bar_direction(const struct model *model, const struct bar *bar, double n[3]) {
    const struct frame *frame = model->frame;
    vector_between(frame->joints.items[bar->joints[0]].at, frame->joints.items[bar->joints[1]].at,
                   n);
    vector_unit(n);
}

static void bar_matrix(const struct model *model, const struct bar *bar, double K[6][6]) {
    double n[3];
    bar_direction(model, bar, n);
    for (int i = 0; i < 6; i++)
        for (int j = 0; j < 6; j++)
            K[i][j] = bar->stiffness * n[i % 3] * n[j % 3] * ((i < 3) == (j < 3) ? 1.0 : -1.0);
}

static void find_half(struct system *system) {
    for (size_t s = 0; s < system->model->segment_count; s++) {
        int unknowns[ELEMENT_DOFS];
        segment_unknowns(system, &system->model->segments[s], unknowns);
        spread(unknowns, ELEMENT_DOFS, &system->half);
    }
    for (size_t b = 0; b < system->bar_count; b++) {
        int unknowns[6];
        bar_unknowns(system, &system->bars[b], unknowns);
        spread(unknowns, 6, &system->half);
    }
}

/* Add a small matrix, row sums for the norm as well. */
static void add_part(struct band *band, double *row_sums, const int *unknowns, int count,
                     const double *K) {
    for (int i = 0; i < count; i++) {
        if (unknowns[i] < 0)
            continue;
        for (int j = 0; j < count; j++) {
            if (unknowns[j] < 0)
                continue;
            double value = K[i * count + j];
            row_sums[unknowns[i]] += fabs(value);
            if (unknowns[j] <= unknowns[i])
                *band_at(band, (size_t)unknowns[i], (size_t)unknowns[j]) += value;
        }
    }
}

/* Frames up to this many segments keep their elements, about 5 KiB each. */
enum { KEPT_SEGMENTS = 1024 };

static void make_elements(struct arena *arena, struct system *system) {
    const struct model *model = system->model;
    if (model->segment_count > KEPT_SEGMENTS)
        return;
    system->elements = ARENA_ARRAY(arena, struct element, model->segment_count);
    system->stiffnesses = arena_take(arena, model->segment_count, sizeof *system->stiffnesses);
    for (size_t s = 0; s < model->segment_count; s++) {
        system->elements[s] = element_of(model, &model->segments[s], system->stiffness);
        element_global_stiffness(&system->elements[s], system->stiffnesses[s]);
    }
}

const struct element *system_element(const struct system *system, size_t segment,
                                     struct element *room) {
    if (system->elements)
        return &system->elements[segment];
    *room = element_of(system->model, &system->model->segments[segment], system->stiffness);
    return room;
}

/* K of a segment in global directions: the one kept, or made in `room`. */
static const double (*stiffness_of(const struct system *system, size_t segment,
                                   double room[ELEMENT_DOFS][ELEMENT_DOFS]))[ELEMENT_DOFS] {
    if (system->stiffnesses)
        return (const double(*)[ELEMENT_DOFS])system->stiffnesses[segment];
    struct element element =
        element_of(system->model, &system->model->segments[segment], system->stiffness);
    element_global_stiffness(&element, room);
    return (const double(*)[ELEMENT_DOFS])room;
}

static struct band assemble(struct arena *arena, struct system *system) {
    const struct model *model = system->model;
    struct band band = band_new(arena, system->count, system->half);
    double *row_sums = ARENA_ARRAY(arena, double, system->count);
    for (size_t s = 0; s < model->segment_count; s++) {
        int unknowns[ELEMENT_DOFS];
        double room[ELEMENT_DOFS][ELEMENT_DOFS];
        segment_unknowns(system, &model->segments[s], unknowns);
        add_part(&band, row_sums, unknowns, ELEMENT_DOFS, &stiffness_of(system, s, room)[0][0]);
    }
    for (size_t b = 0; b < system->bar_count; b++) {
        int unknowns[6];
        double K[6][6];
        bar_unknowns(system, &system->bars[b], unknowns);
        bar_matrix(model, &system->bars[b], K);
        add_part(&band, row_sums, unknowns, 6, &K[0][0]);
    }
    for (size_t i = 0; i < system->count; i++)
        system->norm = fmax(system->norm, row_sums[i]);
    return band;
}

struct system *system_build(struct arena *arena, const struct model *model,
                            enum stiffness stiffness, const struct bar *bars, size_t bar_count) {
    struct system *system = ARENA_NEW(arena, struct system);
    *system = (struct system){
        .model = model, .stiffness = stiffness, .bars = bars, .bar_count = bar_count};
    number_unknowns(arena, system);
    find_half(system);
    make_elements(arena, system);
    struct band band = assemble(arena, system);
    modes_hold_spins(arena, system, &band);
    system->factor = band_copy(arena, &band);
    double least;
    system->trusted = true;
    if (band_cholesky(&system->factor, &least) && least > MODES_SUSPECT)
        return system;
    modes_find(arena, system, &band);
    system->factor = band;
    system->trusted = band_cholesky(&system->factor, &least);
    return system;
}

void segment_movements(const struct segment *segment, const struct element *element,
                       const double *slots, double local[ELEMENT_DOFS]) {
    double global[ELEMENT_DOFS];
    for (int end = 0; end < 2; end++)
        for (int c = 0; c < 3; c++) {
            global[6 * end + c] = slots[3 * segment->move[end] + c];
            global[6 * end + 3 + c] =
                segment->turn[end] < 0 ? 0.0 : slots[3 * segment->turn[end] + c];
        }
    element_to_local(element, global, local);
}

double bar_elongation(const struct model *model, const struct bar *bar, const double *slots) {
    double n[3], longer = 0.0;
    bar_direction(model, bar, n);
    const double *u0 = &slots[3 * model->move_slot[bar->joints[0]]];
    const double *u1 = &slots[3 * model->move_slot[bar->joints[1]]];
    for (int c = 0; c < 3; c++)
        longer += n[c] * (u1[c] - u0[c]);
    return longer;
}

static void multiply_bar(const struct model *model, const struct bar *bar, const double *slots,
                         double *out) {
    double n[3], pull = bar->stiffness * bar_elongation(model, bar, slots);
    bar_direction(model, bar, n);
    for (int c = 0; c < 3; c++) {
        out[3 * model->move_slot[bar->joints[0]] + c] -= pull * n[c];
        out[3 * model->move_slot[bar->joints[1]] + c] += pull * n[c];
    }
}

void system_multiply(const struct system *system, size_t count, double *const *slots,
                     double *const *out) {
    const struct model *model = system->model;
    for (size_t s = 0; s < model->segment_count; s++) {
        const struct segment *segment = &model->segments[s];
        double room[ELEMENT_DOFS][ELEMENT_DOFS];
        const double(*K)[ELEMENT_DOFS] = stiffness_of(system, s, room);
        int at[4] = {segment->move[0], segment->turn[0], segment->move[1], segment->turn[1]};
        for (size_t c = 0; c < count; c++) {
            double u[ELEMENT_DOFS], f[ELEMENT_DOFS] = {0};
            for (int i = 0; i < ELEMENT_DOFS; i++)
                u[i] = at[i / 3] < 0 ? 0.0 : slots[c][3 * at[i / 3] + i % 3];
            for (int j = 0; j < ELEMENT_DOFS; j++) /* K is symmetric: its rows are its columns */
                for (int i = 0; i < ELEMENT_DOFS; i++)
                    f[i] += K[j][i] * u[j];
            for (int i = 0; i < ELEMENT_DOFS; i++)
                if (at[i / 3] >= 0)
                    out[c][3 * at[i / 3] + i % 3] += f[i];
        }
    }
    for (size_t b = 0; b < system->bar_count; b++)
        for (size_t c = 0; c < count; c++)
            multiply_bar(model, &system->bars[b], slots[c], out[c]);
}
