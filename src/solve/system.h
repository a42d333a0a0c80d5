/* solve/system.h - the equations of a frame: numbered, assembled, factored once, solved for all
 * loads together.
 *
 * Unknowns are the free parts of the model's slots, joint by joint, in the order in which
 * little fills in. Springs between sticks and joints are condensed; their stiffness is the one
 * asked for.
 */
#ifndef SOLVE_SYSTEM_H
#define SOLVE_SYSTEM_H

#include "model/model.h"
#include "solve/element.h"
#include "solve/solver.h"

struct mode { /* a movement that strains nothing, over the slots: 3 numbers each, largest
                 translation 1 */
    double *slots;
    size_t fixed;  /* the unknown that holds it quietly */
    double spring; /* with this stiffness */
};

struct bar { /* a bracing bar between two joints, N/m */
    int joints[2];
    double stiffness;
};

struct system {
    const struct model *model;
    enum stiffness stiffness;
    const struct bar *bars; /* bracing beside the sticks; may be empty */
    size_t bar_count;
    int *unknown; /* 3 x slots: number of the unknown, -1 held */
    size_t count;
    const struct blocks *blocks; /* of K and its factor */
    double norm;                 /* largest row sum of K */
    struct solver_factor factor;
    size_t spin_count; /* turns of sticks about their own axis that nothing resists, held quietly */
    size_t *spins;     /* their unknowns */
    double *spin_springs;
    size_t
        mode_count; /* ways to fold as connected, held quietly so that other loads can be solved */
    struct mode *modes;
    struct element *elements; /* of each segment; NULL in frames too large to keep them */
    double (*stiffnesses)[ELEMENT_DOFS][ELEMENT_DOFS]; /* their K, global; NULL as above */
    bool trusted; /* false: the factor broke down for no reason that could be found */
};

struct system *system_build(struct arena *arena, const struct model *model,
                            enum stiffness stiffness, const struct bar *bars, size_t bar_count);

/* What was factored, made anew: K with the springs that hold spins and ways to fold. And where its
 * numbers stand, found anew. */
struct sparse system_matrix(struct arena *arena, const struct system *system);
struct blocks *system_blocks(struct arena *arena, const struct system *system);

/* Joint movements of one segment, local axes, from movements of all slots. */
void segment_movements(const struct segment *segment, const struct element *element,
                       const double *slots, double local[ELEMENT_DOFS]);

/* Unit vector from the first joint of a bar to the second. */
void bar_direction(const struct model *model, const struct bar *bar, double n[3]);

/* How much longer a bar gets, m. */
double bar_elongation(const struct model *model, const struct bar *bar, const double *slots);

/* The element of a segment: the one kept, or made in `room`. */
const struct element *system_element(const struct system *system, size_t segment,
                                     struct element *room);

/* out[c] += K slots[c] over all slots (held ones too, so that reactions come out), for `count`
 * movements at once. Shapes 3 x slots each. */
void system_multiply(const struct system *system, size_t count, double *const *slots,
                     double *const *out);

#endif
