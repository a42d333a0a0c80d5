#include "frame/geometry.h"

#include <math.h>

static void between(const double a[3], const double b[3], double difference[3]) {
    for (int k = 0; k < 3; k++)
        difference[k] = b[k] - a[k];
}

static double dot(const double a[3], const double b[3]) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static void cross(const double a[3], const double b[3], double product[3]) {
    product[0] = a[1] * b[2] - a[2] * b[1];
    product[1] = a[2] * b[0] - a[0] * b[2];
    product[2] = a[0] * b[1] - a[1] * b[0];
}

static const double *joint_at(const struct frame *frame, int joint) {
    return frame->joints.items[joint].at;
}

double frame_member_length(const struct frame *frame, int member) {
    const struct member *it = &frame->members.items[member];
    double along[3];
    between(joint_at(frame, it->from), joint_at(frame, it->to), along);
    return sqrt(dot(along, along));
}

void frame_member_direction(const struct frame *frame, int member, double direction[3]) {
    const struct member *it = &frame->members.items[member];
    between(joint_at(frame, it->from), joint_at(frame, it->to), direction);
    double length = sqrt(dot(direction, direction));
    for (int k = 0; k < 3; k++)
        direction[k] = length > 0 ? direction[k] / length : 0;
}

double distance_to_piece(const double point[3], const double a[3], const double b[3]) {
    double along[3], to_point[3];
    between(a, b, along);
    between(a, point, to_point);
    double square = dot(along, along);
    double share = square > 0 ? dot(along, to_point) / square : 0;
    share = share < 0 ? 0 : share > 1 ? 1 : share;
    for (int k = 0; k < 3; k++)
        to_point[k] -= share * along[k];
    return sqrt(dot(to_point, to_point));
}

bool frame_joint_on_member(const struct frame *frame, int joint, int member) {
    const struct member *it = &frame->members.items[member];
    if (joint == it->from || joint == it->to)
        return true;
    return distance_to_piece(joint_at(frame, joint), joint_at(frame, it->from),
                             joint_at(frame, it->to)) <= SAME_PLACE;
}

double frame_panel_out_of_plane(const struct frame *frame, const struct panel *panel) {
    double worst = 0;
    for (int out = 0; out < 4; out++) {
        const double *base = joint_at(frame, panel->corners[(out + 1) % 4]);
        double first[3], second[3], normal[3], to_corner[3];
        between(base, joint_at(frame, panel->corners[(out + 2) % 4]), first);
        between(base, joint_at(frame, panel->corners[(out + 3) % 4]), second);
        between(base, joint_at(frame, panel->corners[out]), to_corner);
        cross(first, second, normal);
        double size = sqrt(dot(normal, normal));
        double away = size > 0 ? fabs(dot(normal, to_corner)) / size : 0;
        worst = fmax(worst, away);
    }
    return worst;
}
