#include "pieces/ends.h"

#include "base/vector.h"

#include <math.h>

/* Under this angle between stick and host the faces meet too far along to be worked out. */
static const double SINE_LEAST = 0.5; /* 30 degrees */

/* How the end lies to its host. */
enum reach { REACH_JOINT, REACH_OUTER_FACE, REACH_NEAR_FACE };

static enum reach reach_of(enum connection_type type) {
    switch (type) {
    case CONNECTION_SCREWED_LAP:
    case CONNECTION_GLUED_LAP:
        return REACH_OUTER_FACE;
    case CONNECTION_SCREWED_BUTT:
    case CONNECTION_BRACKET:
    case CONNECTION_GUSSET:
    case CONNECTION_CLEAT:
    case CONNECTION_NOTCHED:
    case CONNECTION_HINGE:
        return REACH_NEAR_FACE;
    case CONNECTION_PINNED:
    case CONNECTION_RIGID:
    case CONNECTION_SPRINGS:
        return REACH_JOINT;
    }
    return REACH_JOINT;
}

bool ends_lapped(const struct frame *frame, const struct member_end *end) {
    return end->connection >= 0 &&
           reach_of(frame->connections.items[end->connection].type) == REACH_OUTER_FACE;
}

/* Out of the stick at an end. */
static void outwards(const struct model_member *stick, int end, double direction[3]) {
    for (int c = 0; c < 3; c++)
        direction[c] = end ? stick->axes[0][c] : -stick->axes[0][c];
}

/* From the host's middle line to the face where a line in this direction leaves it; the face's
 * lateral axis (1 or 2) in *axis. */
static double to_face(const struct model_member *host, const double direction[3], int *axis) {
    double y = fabs(vector_dot(host->axes[1], direction));
    double z = fabs(vector_dot(host->axes[2], direction));
    double by_y = y > 1e-9 ? host->size_y / 2.0 / y : INFINITY;
    double by_z = z > 1e-9 ? host->size_z / 2.0 / z : INFINITY;
    *axis = by_y < by_z ? 1 : 2;
    return fmin(by_y, by_z);
}

/* The cut parallel to the host's face, `sign` half a host from the joint. */
static struct end_cut cut_at_face(const struct model_member *stick, const struct model_member *host,
                                  const double direction[3], double sign) {
    struct end_cut cut = {0};
    int axis;
    double far = to_face(host, direction, &axis);
    const double *normal = host->axes[axis];
    double facing = vector_dot(normal, direction);
    if (fabs(facing) < SINE_LEAST) {
        cut.slanting = true;
        cut.beyond = sign * fmin(far, (axis == 1 ? host->size_y : host->size_z));
        return cut;
    }
    cut.beyond = sign * far;
    cut.slope_y = vector_dot(normal, stick->axes[1]) / facing;
    cut.slope_z = vector_dot(normal, stick->axes[2]) / facing;
    return cut;
}

static const struct support *support_at(const struct frame *frame, int joint) {
    for (size_t k = 0; k < frame->supports.count; k++)
        if (frame->supports.items[k].joint == joint)
            return &frame->supports.items[k];
    return NULL;
}

/* A strap sideways stops no wood; what holds up or down does. */
static bool stops_wood(const struct support *support) {
    return support && (support->held[2] || support->foot);
}

/* Half the depth of the deepest stick fastened there, along the host. */
static double half_depth(const struct model *model, const struct meetings *meetings, int joint,
                         int host, const double direction[3]) {
    double deepest = 0.0;
    for (size_t k = meetings->first[joint]; k < meetings->first[joint + 1]; k++) {
        int other = meetings->items[k].member;
        if (other != host && model->frame->members.items[other].acts_as != ACTS_AS_TIE)
            deepest = fmax(deepest, member_extent(&model->members[other], direction));
    }
    return deepest / 2.0;
}

static struct end_cut cut_of_host(const struct model *model, const struct meetings *meetings,
                                  int member, int joint, const double direction[3]) {
    const struct support *support = support_at(model->frame, joint);
    struct end_cut cut = {0};
    if (!stops_wood(support))
        cut.beyond = half_depth(model, meetings, joint, member, direction);
    else if (support->in_ground.given && direction[2] < -SINE_45)
        cut.beyond = support->in_ground.value / -direction[2];
    return cut;
}

struct end_cut end_cut(const struct model *model, const struct meetings *meetings, int member,
                       int end) {
    const struct frame *frame = model->frame;
    const struct model_member *stick = &model->members[member];
    const struct member_end *at = &stick->ends[end];
    double direction[3];
    outwards(stick, end, direction);
    if (at->host || at->connection < 0)
        return cut_of_host(model, meetings, member, at->joint, direction);
    const struct connection *connection = &frame->connections.items[at->connection];
    const struct model_member *host = &model->members[model->host[at->joint]];
    enum reach reach = reach_of(connection->type);
    if (reach == REACH_JOINT)
        return (struct end_cut){0};
    struct end_cut cut =
        cut_at_face(stick, host, direction, reach == REACH_OUTER_FACE ? 1.0 : -1.0);
    if (connection->type == CONNECTION_NOTCHED)
        cut.beyond += connection->depth;
    if (cut.beyond > 0.0 && direction[2] < -1e-6 && stops_wood(support_at(frame, at->joint)))
        cut.beyond = 0.0;
    return cut;
}

double end_cut_angle(const struct end_cut *cut, int axis) {
    return atan(fabs(axis == 1 ? cut->slope_y : cut->slope_z));
}
