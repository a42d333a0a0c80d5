/* pieces/ends.h - where a stick is cut, and at what angle (frame format, "Cut lengths").
 *
 * A lap runs past the joint to the outer face of its host, a butt stops at the near face; both are
 * measured along the stick's middle line, and the cut is parallel to that face. A stick that is
 * host at its own end goes on by half the depth of the deepest stick fastened there. Nothing is
 * added where a support stops the wood.
 */
#ifndef PIECES_ENDS_H
#define PIECES_ENDS_H

#include "model/hosts.h"

struct end_cut {
    double beyond;           /* m past the joint; negative: short of it */
    double slope_y, slope_z; /* of the cut across the stick's local y and z; 0: square */
    bool slanting;           /* the host runs nearly along the stick: measure on the frame */
};

struct end_cut end_cut(const struct model *model, const struct meetings *meetings, int member,
                       int end);

/* rad, across local y (axis 1) or z (axis 2). */
double end_cut_angle(const struct end_cut *cut, int axis);

/* Does the end of a stick run past, to the outer face of its host (a lap)? Not where it is host
 * itself. */
bool ends_lapped(const struct frame *frame, const struct member_end *end);

#endif
