/* judge/eccentric.h - sticks that are lapped on the face of another push beside its axis: the force
 * along the host times half the two thicknesses bends the host at that joint (engineering page,
 * section 4). How the moment splits between both sides of the joint is not known here: each gets
 * all of it, the way that it hurts.
 */
#ifndef JUDGE_ECCENTRIC_H
#define JUDGE_ECCENTRIC_H

#include "judge/answers.h"
#include "judge/strength.h"

struct eccentric_lap {
    size_t ending;           /* the member that is lapped on */
    int end;                 /* its end */
    int joint;               /* of the host */
    double arm;              /* m */
    double along[3];         /* share of the end's local forces that acts along the host */
    double share_y, share_z; /* of the moment, about the host's local axes */
};

/* The laps on each member: items[first[m]] ... items[first[m + 1] - 1]. */
struct eccentric_laps {
    struct eccentric_lap *items;
    size_t *first;
};
struct eccentric_laps eccentric_laps(const struct run *run);

/* Add their moments to the forces at the stations on both sides of each joint. */
void eccentric_add(const struct run *run, const struct eccentric_laps *laps, size_t member,
                   const struct answer *answer, struct segment_forces *at);

#endif
