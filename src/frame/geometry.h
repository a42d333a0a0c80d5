/* frame/geometry.h - lengths and places of a frame that was read; all in m.
 *
 * Member and joint numbers must be good (0 or more); nothing is allocated.
 */
#ifndef FRAME_GEOMETRY_H
#define FRAME_GEOMETRY_H

#include "frame/along.h"
#include "frame/frame.h"

/* Two points nearer than this are one; a joint this near to an axis is on it. */
#define SAME_PLACE ALONG_TOLERANCE

double frame_member_length(const struct frame *frame, int member);

/* The unit vector from the from-end to the to-end. */
void frame_member_direction(const struct frame *frame, int member, double direction[3]);

/* True where the joint is one of the member's ends, or lies on its axis between them. */
bool frame_joint_on_member(const struct frame *frame, int joint, int member);

/* How far the corner that is farthest out lies from the plane of the other three. */
double frame_panel_out_of_plane(const struct frame *frame, const struct panel *panel);

/* The distance of `point` from the straight piece between `a` and `b`. */
double distance_to_piece(const double point[3], const double a[3], const double b[3]);

#endif
