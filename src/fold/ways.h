/* fold/ways.h - every independent way the frame folds when its fastenings are hinges.
 *
 * By rank, not by counting: the movements of the joints that strain no row of fold/straight.h.
 * Found from B'B: joints numbered by reverse Cuthill-McKee, L D L' with every pivot that vanishes
 * noted, one movement for each, and the movement confirmed by its own strains (under 1e-9 of its
 * largest entry), because B'B squares them.
 */
#ifndef FOLD_WAYS_H
#define FOLD_WAYS_H

#include "fold/straight.h"

struct fold_ways {
    size_t count;
    double (**moves)[3];    /* per way, per joint; largest entry 1 */
    size_t unknowns;        /* free translations */
    size_t rank;            /* unknowns - count */
    bool self_stress_known; /* every stick has two joints */
    size_t self_stress;     /* rows - rank */
};

struct fold_ways fold_ways(struct arena *arena, const struct model *model, const struct bar *bars,
                           size_t bar_count);

#endif
