/* solve/modes.h - movements that strain nothing: spins of sticks, and ways to fold as connected.
 *
 * A spin is a turn of a stick about its own axis that nothing resists: it moves no joint and bears
 * nothing. It is held by one spring, which changes no other number, because no load works on it (a
 * load that does is found by the force in that spring). A way to fold moves joints; it is held the
 * same way so that the loads that do not work on it can still be solved.
 */
#ifndef SOLVE_MODES_H
#define SOLVE_MODES_H

#include "solve/system.h"

/* A pivot under this share of its diagonal is looked into; what strains something after all is
 * sound. Round-off leaves about 1e-16, and up to 2e-11 where long chains were eliminated first. */
#define MODES_SUSPECT 1e-9
/* A movement whose strains stay under this share of it is one that strains nothing. */
#define MODES_STRAIN 1e-8

/* Find the turns that nothing resists with all joints held in place, `turning` saying which
 * unknowns are turns, and add a spring for each. `held` and `springs` (room for all unknowns) get
 * the unknowns that hold them and their springs. Returns how many. */
size_t modes_hold_turns(struct arena *arena, const struct sparse *K, const bool *turning,
                        size_t *held, double *springs);

/* Find the spins, add their springs to the assembled matrix. */
void modes_hold_spins(struct arena *arena, struct system *system, const struct sparse *K);

/* Find the ways to fold of a matrix that has no sound factor; add their springs to it. */
void modes_find(struct arena *arena, struct system *system, const struct sparse *K);

/* The largest strain of a movement: elongations and slips over the size of the frame, bending and
 * twisting in rad, over the largest movement (translations over the size). */
double movement_strain(const struct system *system, const double *slots);

#endif
