#include "draw/wood.h"

#include "base/vector.h"
#include "frame/shape_values.h"

#include <math.h>

#define THINNEST 0.004   /* m: drawn width of a stick of which only a section is known */
#define SLANTED_MOST 0.3 /* cosine: a flatter cut would run along the stick; it is then square */

/* A plane that ends a stick. */
struct cut {
    double at[3], normal[3];
};

/* Which ends meet at a joint, and where the frame is held. */
struct meeting_ends {
    const struct model *model;
    int *first; /* per joint: an end (2 * member + 0 or 1), -1 none */
    int *next;  /* per end */
    bool *held; /* per joint */
};

static struct meeting_ends meeting_ends(struct arena *arena, const struct model *model) {
    size_t joints = model->frame->joints.count;
    struct meeting_ends ends = {.model = model,
                                .first = ARENA_ARRAY(arena, int, joints),
                                .next = ARENA_ARRAY(arena, int, 2 * model->member_count),
                                .held = ARENA_ARRAY(arena, bool, joints)};
    for (size_t j = 0; j < joints; j++)
        ends.first[j] = -1;
    for (size_t e = 0; e < 2 * model->member_count; e++) {
        int joint = model->members[e / 2].ends[e % 2].joint;
        ends.next[e] = ends.first[joint];
        ends.first[joint] = (int)e;
    }
    for (size_t s = 0; s < model->frame->supports.count; s++)
        ends.held[model->frame->supports.items[s].joint] = true;
    return ends;
}

static double *joint_at(const struct model *model, int joint) {
    return model->frame->joints.items[joint].at;
}

static bool is_lap(const struct model *model, const struct member_end *end) {
    return !end->host && end->connection >= 0 &&
           model->frame->connections.items[end->connection].type == CONNECTION_SCREWED_LAP;
}

/* Level direction across a stick and its host in which the one lies on the other; false where there
 * is none, as where one stick lies along the other or both are level. */
static bool lap_direction(const struct model *model, size_t member, int end, double out[3]) {
    const struct model_member *stick = &model->members[member];
    const struct model_member *host = &model->members[model->host[stick->ends[end].joint]];
    vector_cross(stick->axes[0], host->axes[0], out);
    if (vector_length(out) < 0.1)
        return false;
    vector_unit(out);
    return fabs(out[2]) < 0.1;
}

/* How far a lapped stick lies off its middle line. Only where all its fastened ends ask for the
 * same side, and not where the upright lies on the level stick: its place is what is measured. */
static void lap_offset(const struct model *model, size_t member, double out[3]) {
    const struct model_member *stick = &model->members[member];
    double side[3] = {0}, most = 0.0;
    out[0] = out[1] = out[2] = 0.0;
    if (member_steep(stick) && model->frame->members.items[member].acts_as == ACTS_AS_MEMBER)
        return;
    for (int end = 0; end < 2; end++) {
        double here[3];
        if (stick->ends[end].host)
            continue;
        if (!is_lap(model, &stick->ends[end]) || !lap_direction(model, member, end, here))
            return;
        if (most > 0.0 && fabs(vector_dot(side, here)) < 0.99)
            return;
        for (int c = 0; c < 3; c++)
            side[c] = here[c];
        const struct model_member *host = &model->members[model->host[stick->ends[end].joint]];
        most = fmax(most, (member_extent(stick, side) + member_extent(host, side)) / 2.0);
    }
    double from_middle = 0.0;
    for (int c = 0; c < 3; c++)
        from_middle += side[c] * ((stick->from[c] + stick->to[c]) / 2.0 - model->middle[c]);
    const struct shape *shape = &model->frame->shape;
    bool inside = model->frame->members.items[member].acts_as != ACTS_AS_MEMBER ||
                  (shape->given && shape->values->laps_inside);
    double sign = (from_middle < 0.0) != inside ? -1.0 : 1.0;
    for (int c = 0; c < 3; c++)
        out[c] = sign * most * side[c];
}

/* Half the largest size, along a stick, of what is fastened to it at its own end. */
static double past_its_guests(const struct meeting_ends *ends, size_t member, int joint) {
    const struct model_member *members = ends->model->members;
    double half = 0.0;
    for (int e = ends->first[joint]; e >= 0; e = ends->next[e])
        if (e / 2 != (int)member)
            half = fmax(half, member_extent(&members[e / 2], members[member].axes[0]) / 2.0);
    return half;
}

/* The host's face that looks along the stick from its end, where the stick can end on it. */
static bool face_of_host(const struct model_member *stick, const struct model_member *host,
                         double inward, struct cut *cut) {
    int side = 0;
    double along[3] = {0};
    for (int axis = 1; axis < 3; axis++) {
        along[axis] = inward * vector_dot(stick->axes[0], host->axes[axis]);
        if (!side || fabs(along[axis]) > fabs(along[side]))
            side = axis;
    }
    if (fabs(along[side]) < SLANTED_MOST)
        return false;
    double half = (side == 1 ? host->size_y : host->size_z) / 2.0;
    for (int c = 0; c < 3; c++) {
        cut->normal[c] = along[side] < 0.0 ? -host->axes[side][c] : host->axes[side][c];
        cut->at[c] += half * cut->normal[c];
    }
    return true;
}

static struct cut cut_of(const struct meeting_ends *ends, size_t member, int end) {
    const struct model *model = ends->model;
    const struct model_member *stick = &model->members[member];
    const struct member_end *own = &stick->ends[end];
    double inward = end ? -1.0 : 1.0, past = 0.0;
    struct cut cut;
    for (int c = 0; c < 3; c++) {
        cut.at[c] = joint_at(model, own->joint)[c];
        cut.normal[c] = stick->axes[0][c];
    }
    const struct model_member *host = &model->members[model->host[own->joint]];
    bool hinge = model->turn_slot[own->joint] < 0;
    if (ends->held[own->joint] && fabs(stick->axes[0][2]) > SLANTED_MOST) {
        cut.normal[0] = cut.normal[1] = 0.0; /* level, as the ground is */
        cut.normal[2] = 1.0;
    } else if (own->host && !hinge) {
        past = past_its_guests(ends, member, own->joint);
    } else if (is_lap(model, own)) {
        bool brace = model->frame->members.items[member].acts_as != ACTS_AS_MEMBER;
        past = brace ? 0.0 : member_extent(host, stick->axes[0]) / 2.0;
    } else if (!own->host && !hinge && face_of_host(stick, host, inward, &cut)) {
        return cut;
    }
    for (int c = 0; c < 3; c++)
        cut.at[c] -= inward * past * stick->axes[0][c];
    return cut;
}

static void place_corners(const struct model_member *stick, const struct cut cuts[2],
                          struct wood *wood) {
    for (int k = 0; k < 8; k++) {
        const struct cut *cut = &cuts[k >> 2];
        double off_y = (k & 1 ? 0.5 : -0.5) * fmax(stick->size_y, THINNEST);
        double off_z = (k & 2 ? 0.5 : -0.5) * fmax(stick->size_z, THINNEST);
        double line[3], to_cut[3];
        for (int c = 0; c < 3; c++)
            line[c] = stick->from[c] + off_y * stick->axes[1][c] + off_z * stick->axes[2][c];
        vector_between(line, cut->at, to_cut);
        double along = vector_dot(to_cut, cut->normal) / vector_dot(stick->axes[0], cut->normal);
        for (int c = 0; c < 3; c++)
            wood->corners[k][c] = line[c] + along * stick->axes[0][c] + wood->lapped[c];
    }
}

struct wood *wood_pieces(struct arena *arena, const struct model *model) {
    struct wood *woods = ARENA_ARRAY(arena, struct wood, model->member_count);
    struct meeting_ends ends = meeting_ends(arena, model);
    for (size_t m = 0; m < model->member_count; m++) {
        struct cut cuts[2] = {cut_of(&ends, m, 0), cut_of(&ends, m, 1)};
        woods[m].member = (int)m;
        lap_offset(model, m, woods[m].lapped);
        place_corners(&model->members[m], cuts, &woods[m]);
    }
    return woods;
}
