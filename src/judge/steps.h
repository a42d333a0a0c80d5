/* judge/steps.h - the checks of a frame, each over all its places. */
#ifndef JUDGE_STEPS_H
#define JUDGE_STEPS_H

#include "judge/holding.h"
#include "judge/run.h"

void judge_sag(struct run *run);      /* shelf rails, sticks under a roof */
void judge_slats(struct run *run);    /* slats of shelves */
void judge_strength(struct run *run); /* bend and shear of every stick */
void judge_bearing(struct run *run);  /* where sticks sit on others */
void judge_cautions(struct run *run); /* what was assumed and what was not checked */
void judge_sway(struct run *run);     /* critical factor of the combinations */
void judge_racking(struct run *run);  /* sheets that brace */
void judge_carry(struct run *run);    /* parts that one person carries */
void judge_lean(struct run *run);     /* movement sideways under a push or wind */
void judge_ground(struct run *run);   /* feet that lift, sliding, tipping */

void judge_screws(struct run *run);        /* the fasteners of every joint */
void judge_panels(struct run *run);        /* sheets between the sticks that bear them */
void judge_panel_screws(struct run *run);  /* what holds them against wind */
void judge_hinges(struct run *run);        /* hinges of lids and doors */
void judge_panel_advice(struct run *run);  /* gaps and holes of clear sheets: a caution */
void judge_workshop(struct run *run);      /* points that come out, lead holes, rust: cautions */
void judge_hang(struct run *run);          /* sticks that hang on screws near their end */
void judge_notches(struct run *run);       /* posts where sticks are let in */
void judge_joint_moments(struct run *run); /* joints that keep the frame from leaning */

/* Does the frame stand, with the leans and critical factors that it may have? For a variant of the
 * run's frame with other connections. */
bool judge_stays_upright(const struct run *run, const struct frame *frame);

/* Ways to fold as fastened that no load drives: a caution each. */
void judge_idle_modes(struct run *run);

/* Forces with the loads on the frame as it has moved, for every mix. */
void judge_second_order(struct run *run);

/* False where its own long-standing load pushes the frame over (critical factor under 1); the
 * motion is then in the result. */
bool judge_stands(struct run *run);

/* False where no state of its feet stands under its own weight alone; how it tips is then in the
 * result. */
bool judge_keeps_its_feet(struct run *run);

/* The frame buckles like this (3 numbers a joint): into the result as a motion. */
void judge_fall(struct run *run, const double *shape);

/* The number of ways to fold with hinges everywhere, into the result. */
void judge_ways(struct run *run);

/* The ways to fold as fastened, into the result. */
void judge_fold(struct run *run);

/* Mark where sticks are not held sideways because the frame folds or leans too far. */
void judge_mark_sway(struct run *run);

/* The bent shape of one combination, into the result; the checks are sorted by now. */
void judge_bent(struct run *run);

/* Single cases, combinations and accuracy into the result. */
void judge_cases(struct run *run);

/* The section of a member as the checks see it; `strong` gets the local axis about which it is
 * edgewise (1: y, 2: z). */
struct section judge_section(const struct model_member *member, const struct stick *stick,
                             int *strong);

#endif
