#include "solve/modes.h"

#include "solve/sweep.h"

#include <math.h>
#include <string.h>

static double largest_diagonal(const struct sparse *K) {
    double largest = 0.0;
    for (size_t i = 0; i < K->blocks->unknowns; i++)
        largest = fmax(largest, *sparse_diagonal(K, i));
    return largest > 0.0 ? largest : 1.0;
}

/* The part of K that belongs to turnings alone has all joints held in place. */
size_t modes_hold_turns(struct arena *arena, const struct sparse *K, const bool *turning,
                        size_t *held, double *springs) {
    struct arena_mark mark = arena_mark(arena);
    struct sparse part = sparse_part(arena, K, turning);
    bool *fixed = ARENA_ARRAY(arena, bool, part.blocks->unknowns);
    double spare = largest_diagonal(&part);
    struct loose_pivots loose = {.share = MODES_SUSPECT, .fixed = fixed};
    size_t count = 0, turn = 0;
    sparse_factor(arena, &part, &loose);
    for (size_t i = 0; i < K->blocks->unknowns; i++) {
        if (!turning[i] || !fixed[turn++])
            continue;
        double *diagonal = sparse_diagonal(K, i);
        held[count] = i;
        springs[count] = *diagonal > 0.0 ? *diagonal : spare;
        *diagonal += springs[count++];
    }
    arena_rewind(arena, mark);
    return count;
}

void modes_hold_spins(struct arena *arena, struct system *system, const struct sparse *K) {
    const struct model *model = system->model;
    bool *turning = ARENA_ARRAY(arena, bool, system->count);
    for (size_t s = 0; s < model->slot_count; s++)
        for (int c = 0; c < 3; c++)
            if (model->slots[s].turning && system->unknown[3 * s + c] >= 0)
                turning[system->unknown[3 * s + c]] = true;
    system->spins = ARENA_ARRAY(arena, size_t, system->count);
    system->spin_springs = ARENA_ARRAY(arena, double, system->count);
    system->spin_count = modes_hold_turns(arena, K, turning, system->spins, system->spin_springs);
}

static void to_slots(const struct system *system, const double *x, double *slots) {
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        slots[k] = system->unknown[k] < 0 ? 0.0 : x[system->unknown[k]];
}

static void to_unknowns(const struct system *system, const double *slots, double *x) {
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        if (system->unknown[k] >= 0)
            x[system->unknown[k]] = slots[k];
}

/* Strains of one segment's own ends and of the springs between them and the joints. */
static double segment_strain(const struct system *system, size_t index, const double *slots) {
    const struct segment *segment = &system->model->segments[index];
    struct element room;
    const struct element *element = system_element(system, index, &room);
    double u[ELEMENT_DOFS], x[ELEMENT_DOFS], none[ELEMENT_DOFS] = {0};
    segment_movements(segment, element, slots, u);
    element_own_ends(element, u, none, x);
    double size = system->model->size, L = element->length, strain = 0.0;
    if (element->EA > 0.0)
        strain = fmax(strain, fabs(x[6] - x[0]) / size);
    if (element->EIz > 0.0) {
        double chord = (x[7] - x[1]) / L;
        strain = fmax(strain, fmax(fabs(x[5] - chord), fabs(x[11] - chord)));
    }
    if (element->EIy > 0.0) {
        double chord = -(x[8] - x[2]) / L;
        strain = fmax(strain, fmax(fabs(x[4] - chord), fabs(x[10] - chord)));
    }
    if (element->GJ > 0.0)
        strain = fmax(strain, fabs(x[9] - x[3]));
    for (int i = 0; i < ELEMENT_DOFS; i++)
        if (element->S[i] > 0.0)
            strain = fmax(strain, fabs(u[i] - x[i]) / (i % 6 < 3 ? size : 1.0));
    return strain;
}

double movement_strain(const struct system *system, const double *slots) {
    const struct model *model = system->model;
    double largest = 0.0, strain = 0.0;
    for (size_t s = 0; s < model->slot_count; s++)
        for (int c = 0; c < 3; c++)
            largest = fmax(largest,
                           fabs(slots[3 * s + c]) / (model->slots[s].turning ? 1.0 : model->size));
    for (size_t s = 0; s < model->segment_count; s++)
        strain = fmax(strain, segment_strain(system, s, slots));
    for (size_t b = 0; b < system->bar_count; b++)
        strain = fmax(strain, fabs(bar_elongation(model, &system->bars[b], slots)) / model->size);
    return largest > 0.0 ? strain / largest : INFINITY;
}

/* The movement that belongs to one spring: what a force on it alone does, freed of the strain that
 * round-off left. */
static void release_spring(struct arena *arena, const struct system *system,
                           const struct sparse *factor, size_t unknown, double spring, double *x,
                           double *slots, double *work) {
    for (size_t i = 0; i < system->count; i++)
        x[i] = 0.0;
    x[unknown] = spring;
    sweep_all(arena, factor, 1, &x);
    for (int pass = 0; pass < 3; pass++) {
        size_t all = 3 * system->model->slot_count;
        to_slots(system, x, slots);
        double *residual = work, *step = work + all;
        for (size_t k = 0; k < all; k++)
            residual[k] = 0.0;
        system_multiply(system, 1, &slots, &residual);
        for (size_t i = 0; i < system->count; i++)
            step[i] = 0.0;
        to_unknowns(system, residual, step);
        sweep_all(arena, factor, 1, &step);
        for (size_t i = 0; i < system->count; i++)
            x[i] -= step[i];
    }
    to_slots(system, x, slots);
}

/* Scale to the largest translation; false where no joint moves. */
static bool scale_mode(const struct model *model, double *slots) {
    double move = 0.0, largest = 0.0;
    for (size_t s = 0; s < model->slot_count; s++)
        for (int c = 0; c < 3; c++) {
            double value = fabs(slots[3 * s + c]);
            if (!model->slots[s].turning)
                move = fmax(move, value / model->size);
            largest = fmax(largest, model->slots[s].turning ? value : value / model->size);
        }
    if (!(move > 1e-6 * largest))
        return false;
    for (size_t k = 0; k < 3 * model->slot_count; k++)
        slots[k] /= move * model->size;
    return true;
}

/* One attempt with the unknowns that may be held; a candidate that turns out to strain something is
 * barred for the next. True when all were confirmed; then `springs` holds their springs. */
static bool attempt(struct arena *arena, struct system *system, const struct sparse *K,
                    bool *barred, double *springs) {
    size_t count = system->count, all = 3 * system->model->slot_count;
    bool *fixed = ARENA_ARRAY(arena, bool, count);
    struct sparse factor = sparse_copy(arena, K);
    struct loose_pivots loose = {.share = MODES_SUSPECT, .barred = barred, .fixed = fixed};
    sparse_factor(arena, &factor, &loose);
    memcpy(factor.items, K->items, K->blocks->numbers * sizeof *factor.items);
    double spare = largest_diagonal(K);
    for (size_t i = 0; i < count; i++) {
        double *diagonal = sparse_diagonal(&factor, i);
        springs[i] = !fixed[i] ? 0.0 : *diagonal > 0.0 ? *diagonal : spare;
        *diagonal += springs[i];
    }
    system->mode_count = 0;
    struct pivots pivots = sparse_factor(arena, &factor, NULL);
    if (!pivots_positive(&pivots))
        return true;
    system->modes = ARENA_ARRAY(arena, struct mode, loose.found);
    double *x = ARENA_ARRAY(arena, double, count);
    double *work = ARENA_ARRAY(arena, double, all + count);
    bool all_confirmed = true;
    for (size_t i = 0; i < count; i++) {
        if (!fixed[i])
            continue;
        double *slots = ARENA_ARRAY(arena, double, all);
        release_spring(arena, system, &factor, i, springs[i], x, slots, work);
        if (!(movement_strain(system, slots) < MODES_STRAIN))
            barred[i] = true, springs[i] = 0.0, all_confirmed = false;
        else if (scale_mode(system->model, slots))
            system->modes[system->mode_count++] =
                (struct mode){.slots = slots, .fixed = i, .spring = springs[i]};
    }
    return all_confirmed;
}

void modes_find(struct arena *arena, struct system *system, const struct sparse *K) {
    enum { ATTEMPTS = 8 };
    bool *barred = ARENA_ARRAY(arena, bool, system->count);
    double *springs = ARENA_ARRAY(arena, double, system->count);
    for (int k = 0; k < ATTEMPTS && !attempt(arena, system, K, barred, springs); k++)
        ;
    for (size_t i = 0; i < system->count; i++)
        *sparse_diagonal(K, i) += springs[i];
}
