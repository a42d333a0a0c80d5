/* judge/ground.h - what the steps of tipping, sliding and lifting share. */
#ifndef JUDGE_GROUND_H
#define JUDGE_GROUND_H

#include "judge/steps.h"

/* A mix in which the ground is judged, with the shelves as a pattern has them. */
struct variant {
    const struct mix *mix;
    const char *pattern; /* in words; "" all full, or no trays in it */
    double *weights;     /* per column: of load sets alone */
};

/* Feet that a builder tells apart: "the two back feet". */
struct foot_group {
    bool *in; /* per support */
    size_t count;
};

struct ground_work {
    struct run *run;
    struct variant *variants;
    size_t variant_count;
    double *needs;              /* per support: N of hold-down that it takes, the worst of all */
    const struct variant *part; /* where a part of the frame tips; NULL: nowhere */
};

/* Feet of which each needs so much hold-down, "each of the two back feet needs 38 lb of hold-down",
 * rounded up. */
const char *ground_needs(const struct run *run, const struct foot_group *group, double force);

/* The feet that lie furthest to a side; -1: all feet; SIDE_COUNT: this one alone. */
struct foot_group ground_group(const struct run *run, size_t support, int side);

void judge_lift(struct ground_work *work);  /* feet, one by one; fills `needs` and `part` */
void judge_tip(struct ground_work *work);   /* over each side of the footprint */
void judge_slide(struct ground_work *work); /* the frame as a whole */

/* How little tips or moves it without trays: a caution. */
void judge_empty(struct ground_work *work);

#endif
