#include "solve/spins.h"

#include "base/vector.h"

#include <math.h>

/* Movements of more spins than this times segments would take longer than the solution. */
static const double WORK_MOST = 2e7;

static int slot_of(const struct system *system, size_t unknown) {
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        if (system->unknown[k] == (int)unknown)
            return (int)(k / 3);
    return -1;
}

/* The turning slots that belong to a stick: of the joints it hosts, and its own. */
static struct spin slots_of_stick(struct arena *arena, const struct model *model, int member) {
    struct spin spin = {.member = member,
                        .slots = ARENA_ARRAY(arena, int, model->members[member].segment_count + 1)};
    size_t first = model->members[member].first_segment;
    for (size_t k = 0; k <= model->members[member].segment_count; k++) {
        size_t last = model->members[member].segment_count - 1;
        int slot =
            k <= last ? model->segments[first + k].turn[0] : model->segments[first + last].turn[1];
        bool ends = k == 0 || k > last;
        int joint = slot >= 0 ? model->slots[slot].joint : -1;
        /* at its ends only where it is the host: elsewhere its end turns by itself */
        if (slot >= 0 && (!ends || model->host[joint] == member))
            spin.slots[spin.count++] = slot;
    }
    return spin;
}

/* Does turning these slots about the stick's axis strain nothing? */
static bool free_turn(struct arena *arena, const struct system *system, const struct spin *spin) {
    size_t all = 3 * system->model->slot_count;
    struct arena_mark mark = arena_mark(arena);
    double *turn = ARENA_ARRAY(arena, double, all), *forces = ARENA_ARRAY(arena, double, all);
    const double *axis = system->model->members[spin->member].axes[0];
    bool held = false;
    for (size_t k = 0; k < spin->count; k++)
        for (int c = 0; c < 3; c++) {
            turn[3 * spin->slots[k] + c] = axis[c];
            held |= system->model->slots[spin->slots[k]].held[c] && fabs(axis[c]) > 1e-9;
        }
    system_multiply(system, 1, &turn, &forces);
    double largest = 0.0;
    for (size_t k = 0; k < all; k++)
        largest = fmax(largest, fabs(forces[k]));
    arena_rewind(arena, mark);
    return !held && largest <= 1e-9 * system->norm;
}

struct spins spins_find(struct arena *arena, const struct system *system) {
    struct spins spins = {.items = ARENA_ARRAY(arena, struct spin, system->spin_count)};
    if ((double)system->spin_count * (double)system->model->segment_count > WORK_MOST)
        return spins;
    for (size_t k = 0; k < system->spin_count; k++) {
        int slot = slot_of(system, system->spins[k]);
        const struct slot *of = &system->model->slots[slot];
        int member = of->member >= 0 ? of->member : system->model->host[of->joint];
        struct spin spin = slots_of_stick(arena, system->model, member);
        if (spin.count && free_turn(arena, system, &spin))
            spins.items[spins.count++] = spin;
    }
    return spins;
}

void spins_unwind(const struct system *system, const struct spins *spins, double *slots) {
    for (size_t k = 0; k < spins->count; k++) {
        const struct spin *spin = &spins->items[k];
        const double *axis = system->model->members[spin->member].axes[0];
        double turn = 0.0;
        for (size_t i = 0; i < spin->count; i++)
            turn += vector_dot(&slots[3 * spin->slots[i]], axis) / (double)spin->count;
        for (size_t i = 0; i < spin->count; i++)
            for (int c = 0; c < 3; c++)
                slots[3 * spin->slots[i] + c] -= turn * axis[c];
    }
}
