/* solve/spins.h - how far a stick has spun about its own axis where nothing resists that.
 *
 * The spring that holds a spin (solve/modes.h) stands on one global direction, so an oblique stick
 * comes out with some turn about its axis. That turn means nothing; it is taken out, so that a
 * spinning stick changes no other number.
 */
#ifndef SOLVE_SPINS_H
#define SOLVE_SPINS_H

#include "solve/system.h"

struct spin { /* a stick, and the turning slots that turn with it */
    int member;
    size_t count;
    int *slots;
};
struct spins {
    struct spin *items;
    size_t count;
};

/* The held spins that are turns of one stick about its own axis. */
struct spins spins_find(struct arena *arena, const struct system *system);

/* Take the mean turn about its axis out of each, movements of the slots (3 each). */
void spins_unwind(const struct system *system, const struct spins *spins, double *slots);

#endif
