/* judge/steps.h - the checks of a frame, each over all its places. */
#ifndef JUDGE_STEPS_H
#define JUDGE_STEPS_H

#include "judge/holding.h"
#include "judge/run.h"

void judge_sag(struct run *run);      /* shelf rails */
void judge_slats(struct run *run);    /* slats of shelves */
void judge_strength(struct run *run); /* bend and shear of every stick */
void judge_bearing(struct run *run);  /* where sticks sit on others */
void judge_cautions(struct run *run); /* what was assumed and what was not checked */

/* The number of ways to fold with hinges everywhere, into the result. */
void judge_ways(struct run *run);

/* The ways to fold as fastened, into the result. */
void judge_fold(struct run *run);

/* Single cases, combinations and accuracy into the result. */
void judge_cases(struct run *run);

/* The section of a member as the checks see it; `strong` gets the local axis about which it is
 * edgewise (1: y, 2: z). */
struct section judge_section(const struct model_member *member, const struct stick *stick,
                             int *strong);

#endif
