/* check/carry.h - what one person may lift and carry (revised NIOSH lifting equation, 1994).
 *
 *   limit = 51 lb x reach x height x travel x turn x grip x frequency
 *
 * all multipliers at most 1; beyond the largest reach, height or travel there is nothing left.
 * Lengths m, angles rad, weights kg.
 */
#ifndef CHECK_CARRY_H
#define CHECK_CARRY_H

#include "check/rating.h"

enum grip { GRIP_GOOD, GRIP_FAIR, GRIP_POOR };

struct lift {
    double reach;  /* from the ankles to the hands, level */
    double height; /* of the hands above the ground */
    double travel; /* that they go up or down */
    double turn;   /* to the side */
    enum grip grip;
    /* seldom, for up to an hour: the frequency multiplier is 1 */
};

/* kg; at one end of the lift (the less of origin and destination counts). */
double lift_limit(const struct lift *lift, struct working *working);

/* How a part of a frame is taken up: one side held against the body. */
struct carried {
    double weight; /* kg */
    double depth;  /* m, from the body on: its smallest size */
    double top;    /* m, of its wood above the ground */
};

/* The hands are at knuckle height, or at the top of a lower part, which is lifted to that height.
 */
struct rating check_carry(const struct carried *carried, struct working *working);

#endif
