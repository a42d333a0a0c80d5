/* judge/standing.h - how the frame stands in a mix: on which feet, with which ties, or not at all.
 */
#ifndef JUDGE_STANDING_H
#define JUDGE_STANDING_H

#include "judge/run.h"

/* Where the frame stands, before any mix is settled. */
void standing_prepare(struct run *run);

/* Settle the ties and feet of a mix whose weights of load sets are set, at one stiffness. Feet that
 * all press cost next to nothing. Where the loads turn the whole frame over an edge, or no state of
 * the feet stands, the mix tips and every foot is taken as held. Not to be called where memory
 * taken from the arena is given back later. */
void standing_settle(struct run *run, enum stiffness stiffness, struct mix *mix);

/* Directions in which the joints are held, per slot, with the lifted feet let go; NULL: as the
 * model has them. For sway_setting.held. */
const bool (*standing_held(const struct run *run, const struct stance *stance))[3];

/* Force of the ground on a foot in a mix, N; up is positive. */
double standing_pressure(const struct run *run, enum stiffness stiffness, const double *weights,
                         size_t support);

#endif
