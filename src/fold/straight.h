/* fold/straight.h - the frame with every fastening taken as a hinge.
 *
 * Sticks keep their length and stay straight through the joints on them; nothing else resists.
 * Unknowns are the translations of the joints (frame units scaled so that a strain row has entries
 * near 1). Rows of B, one a strain: elongation of a stick between two joints; straightness at a
 * joint that a stick runs through (two directions); the direction of a stick that a support clamps;
 * elongation of a bracing bar. A movement with B u = 0 is a way to fold (Pellegrino and Calladine
 * 1986: the left null space of the equilibrium matrix).
 */
#ifndef FOLD_STRAIGHT_H
#define FOLD_STRAIGHT_H

#include "model/model.h"
#include "solve/system.h"

struct strain_row {
    int joints[3];
    double factors[3][3];
    int count; /* joints in the row, 2 or 3 */
};

struct straight {
    const struct model *model;
    struct {
        struct strain_row *items;
        size_t count, capacity;
    } rows;
};

struct straight straight_build(struct arena *arena, const struct model *model,
                               const struct bar *bars, size_t bar_count);

/* Strain of one row under movements of the joints. */
double strain_of(const struct strain_row *row, const double (*moves)[3]);

#endif
