#include "solve/spins.h"

#include "base/vector.h"

#include <math.h>

/* More spins times segments than this would take longer than the solution. */
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

static bool among(const struct spin *spin, int slot) {
    for (size_t k = 0; k < spin->count; k++)
        if (spin->slots[k] == slot)
            return true;
    return false;
}

/* Does turning these slots about the stick's axis strain nothing? Only segments that touch them can
 * say no. */
static bool free_turn(const struct system *system, const struct spin *spin) {
    const struct model *model = system->model;
    const double *axis = model->members[spin->member].axes[0];
    for (size_t k = 0; k < spin->count; k++)
        for (int c = 0; c < 3; c++)
            if (model->slots[spin->slots[k]].held[c] && fabs(axis[c]) > 1e-9)
                return false;
    for (size_t s = 0; s < model->segment_count; s++) {
        double turn[ELEMENT_DOFS] = {0}, K[ELEMENT_DOFS][ELEMENT_DOFS];
        bool touched = false;
        for (int end = 0; end < 2; end++) {
            if (!among(spin, model->segments[s].turn[end]))
                continue;
            touched = true;
            for (int c = 0; c < 3; c++)
                turn[6 * end + 3 + c] = axis[c];
        }
        if (!touched)
            continue;
        struct element room;
        element_global_stiffness(system_element(system, s, &room), K);
        for (int i = 0; i < ELEMENT_DOFS; i++) {
            double force = 0.0;
            for (int j = 0; j < ELEMENT_DOFS; j++)
                force += K[i][j] * turn[j];
            if (!(fabs(force) <= 1e-9 * system->norm))
                return false;
        }
    }
    return true;
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
        if (spin.count && free_turn(system, &spin))
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
