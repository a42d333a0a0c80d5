/* frame/along.h - which joints lie on which stick.
 *
 * A joint within 1 mm of a member's axis, between its ends, is on that member: the stick runs
 * through it unbroken: the model cuts it there. Joints are looked up through a box tree, so the
 * time grows with the answer, not with joints times members.
 */
#ifndef FRAME_ALONG_H
#define FRAME_ALONG_H

#include "frame/frame.h"

#define ALONG_TOLERANCE 0.001 /* m; frame format, "Members are physical sticks" */

struct along_joint {
    int joint;
    double at; /* m from the from-end; 0 and the member's length at its ends */
};

struct along {
    /* the joints of member m, from end to end: joints[first[m]] ... joints[first[m + 1] - 1];
     * at least two each */
    struct along_joint *joints;
    size_t *first;
};

/* Needs members whose from and to are valid and apart. */
struct along along_members(struct arena *arena, const struct frame *frame);

#endif
