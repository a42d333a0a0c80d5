/* check/ground.h - does it stay where it stands: tipping, sliding, feet that lift. Plain statics; a
 * ratio of forces or moments against what holds. A demand of nothing has ratio 0.
 */
#ifndef CHECK_GROUND_H
#define CHECK_GROUND_H

#include "check/rating.h"

struct tip_part { /* loads that act together, about the edge it would tip over */
    const char *words;
    double down;   /* N downwards; 0 where it also pushes level */
    double level;  /* N outwards over the edge; 0 where it also presses down */
    double moment; /* N-m; positive overturns */
};
struct tip_hold { /* a hold-down that tipping would pull */
    double force; /* N, what it is good for */
    double arm;   /* m from the edge */
};
struct tip_input {
    const struct tip_part *parts;
    size_t part_count;
    const struct tip_hold *holds;
    size_t hold_count;
};
/* Each part overturns or holds as a whole; demand and limit are the two sums. */
struct rating check_tip(const struct tip_input *input, struct working *working);

struct slide_ground { /* feet on one kind of ground */
    const char *words;
    struct cited friction;
    double pressure; /* N */
};
struct slide_input {
    double level[2]; /* N along x and y */
    const struct slide_ground *grounds;
    size_t ground_count;
};
struct rating check_slide(const struct slide_input *input, struct working *working);

/* `pull`: N by which the foot would have to be held down; `hold_down`: what holds it, 0 none. */
struct rating check_lift(double pull, double hold_down, struct working *working);

#endif
