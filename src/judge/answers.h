/* judge/answers.h - every answer of the frame to its loads: each mix at low, middle and high
 * stiffness of the fastenings, and of second order. What a fastening must hold is the worst of all.
 */
#ifndef JUDGE_ANSWERS_H
#define JUDGE_ANSWERS_H

#include "judge/run.h"

struct answer {
    const struct mix *mix;
    const char *how; /* "joints as soft as they may be"; "" where they have no range */
    const struct response *response;
    const double *weights;             /* per column of the response */
    const struct second_order *second; /* NULL: first order */
    const bool *slack;                 /* per member: a tie that hangs loose; NULL without ties */
};

/* All of them, mixes that could not be solved left out. */
struct answers {
    struct answer *items;
    size_t count;
};
struct answers answers_of(const struct run *run);

/* Of one mix at one stiffness; `weights` NULL where it was not solved. */
struct answer answer_first_order(const struct run *run, const struct mix *mix,
                                 enum stiffness stiffness);
/* Of second order; `second` NULL where there is none. */
struct answer answer_second_order(const struct run *run, const struct mix *mix);

/* Forces and moments of the joint on the end of a member, in the member's local axes. */
void answer_at_end(const struct run *run, const struct answer *answer, size_t member, int end,
                   double out[6]);

#endif
