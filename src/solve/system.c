#include "solve/system.h"

#include "base/vector.h"
#include "solve/modes.h"

#include <math.h>
#include <string.h>

static struct graph graph_of_joints(struct arena *arena, const struct system *system) {
    const struct model *model = system->model;
    size_t pairs = model->segment_count + system->bar_count;
    int(*pair)[2] = arena_room(arena, pairs, sizeof *pair);
    for (size_t s = 0; s < model->segment_count; s++)
        memcpy(pair[s], model->segments[s].joints, sizeof *pair);
    for (size_t b = 0; b < system->bar_count; b++)
        memcpy(pair[model->segment_count + b], system->bars[b].joints, sizeof *pair);
    return graph_of_pairs(arena, model->frame->joints.count, (const int(*)[2])pair, pairs);
}

/* All that is free at a joint is numbered together; `base` gets the first unknown of each joint. */
static struct blocks *find_blocks(struct arena *arena, const struct system *system, int *base) {
    const struct model *model = system->model;
    int *sizes = ARENA_ARRAY(arena, int, model->frame->joints.count);
    for (size_t s = 0; s < model->slot_count; s++)
        for (int c = 0; c < 3; c++)
            sizes[model->slots[s].joint] += !model->slots[s].held[c];
    struct graph graph = graph_of_joints(arena, system);
    return blocks_of_graph(arena, &graph, sizes, base);
}

static void number_unknowns(struct arena *arena, struct system *system) {
    const struct model *model = system->model;
    int *next = ARENA_ARRAY(arena, int, model->frame->joints.count);
    system->blocks = find_blocks(arena, system, next);
    system->count = system->blocks->unknowns;
    system->unknown = ARENA_ARRAY(arena, int, 3 * model->slot_count);
    for (size_t s = 0; s < model->slot_count; s++)
        for (int c = 0; c < 3; c++)
            system->unknown[3 * s + c] =
                model->slots[s].held[c] ? -1 : next[model->slots[s].joint]++;
}

struct blocks *system_blocks(struct arena *arena, const struct system *system) {
    return find_blocks(arena, system, ARENA_ARRAY(arena, int, system->model->frame->joints.count));
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

/* Add a small matrix, row sums for the norm as well. */
static void add_part(const struct sparse *matrix, double *row_sums, const int *unknowns, int count,
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
                *sparse_at(matrix, (size_t)unknowns[i], (size_t)unknowns[j]) += value;
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

/* `norm` gets the largest row sum. */
static struct sparse assemble(struct arena *arena, const struct system *system, double *norm) {
    const struct model *model = system->model;
    struct sparse matrix = sparse_new(arena, system->blocks);
    double *row_sums = ARENA_ARRAY(arena, double, system->count);
    for (size_t s = 0; s < model->segment_count; s++) {
        int unknowns[ELEMENT_DOFS];
        double room[ELEMENT_DOFS][ELEMENT_DOFS];
        segment_unknowns(system, &model->segments[s], unknowns);
        add_part(&matrix, row_sums, unknowns, ELEMENT_DOFS, &stiffness_of(system, s, room)[0][0]);
    }
    for (size_t b = 0; b < system->bar_count; b++) {
        int unknowns[6];
        double K[6][6];
        bar_unknowns(system, &system->bars[b], unknowns);
        bar_matrix(model, &system->bars[b], K);
        add_part(&matrix, row_sums, unknowns, 6, &K[0][0]);
    }
    for (size_t i = 0; i < system->count; i++)
        *norm = fmax(*norm, row_sums[i]);
    return matrix;
}

struct sparse system_matrix(struct arena *arena, const struct system *system) {
    double norm = 0.0;
    struct sparse matrix = assemble(arena, system, &norm);
    for (size_t k = 0; k < system->spin_count; k++)
        *sparse_diagonal(&matrix, system->spins[k]) += system->spin_springs[k];
    for (size_t m = 0; m < system->mode_count; m++)
        *sparse_diagonal(&matrix, system->modes[m].fixed) += system->modes[m].spring;
    return matrix;
}

struct system *system_build(struct arena *arena, const struct model *model,
                            enum stiffness stiffness, const struct bar *bars, size_t bar_count) {
    struct system *system = ARENA_NEW(arena, struct system);
    *system = (struct system){
        .model = model, .stiffness = stiffness, .bars = bars, .bar_count = bar_count};
    number_unknowns(arena, system);
    make_elements(arena, system);
    struct sparse matrix = assemble(arena, system, &system->norm);
    modes_hold_spins(arena, system, &matrix);
    system->factor = solver_factor(arena, model->frame->solver, &matrix);
    system->trusted = true;
    if (system->factor.positive && system->factor.least > MODES_SUSPECT)
        return system;
    matrix = system_matrix(arena, system);
    modes_find(arena, system, &matrix);
    system->factor = solver_factor(arena, model->frame->solver, &matrix);
    system->trusted = system->factor.positive;
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
