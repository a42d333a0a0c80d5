#include "judge/holding.h"

#include "base/vector.h"

#include <math.h>

#define SIDEWAYS_SHARE 0.5 /* cosine of 60 degrees */

static bool support_holds(const struct model *model, int joint, const double direction[3]) {
    const struct slot *slot = &model->slots[model->move_slot[joint]];
    double share = 0.0;
    for (int c = 0; c < 3; c++)
        if (slot->held[c])
            share += direction[c] * direction[c];
    return share >= SIDEWAYS_SHARE;
}

static bool holds_sideways(const struct model *model, const struct meetings *meetings, int member,
                           int joint, const double direction[3]) {
    if (support_holds(model, joint, direction))
        return true;
    for (size_t k = meetings->first[joint]; k < meetings->first[joint + 1]; k++) {
        int other = meetings->items[k].member;
        if (other == member || model->frame->members.items[other].acts_as == ACTS_AS_TIE)
            continue;
        if (fabs(vector_dot(model->members[other].axes[0], direction)) >= SIDEWAYS_SHARE)
            return true;
    }
    return false;
}

/* Stretches of one member in one local direction, written to its segments. */
static void measure(const struct model *model, struct holding *holding, size_t m, int way) {
    const struct model_member *member = &model->members[m];
    const double *direction = member->axes[1 + way];
    size_t first = model->along.first[m], last = model->along.first[m + 1] - 1;
    size_t begin = first;
    bool begin_held = holds_sideways(model, &holding->meetings, (int)m,
                                     model->along.joints[first].joint, direction);
    for (size_t k = first + 1; k <= last; k++) {
        bool held = holds_sideways(model, &holding->meetings, (int)m, model->along.joints[k].joint,
                                   direction);
        if (!held && k < last)
            continue;
        struct stretch stretch = {
            .from = model->along.joints[begin].at,
            .to = model->along.joints[k].at,
            .joints = {model->along.joints[begin].joint, model->along.joints[k].joint},
            .held = {begin_held, held}};
        for (size_t s = begin; s < k; s++)
            holding->sideways[member->first_segment + (s - first)][way] = stretch;
        begin = k;
        begin_held = held;
    }
}

struct holding *holding_build(struct arena *arena, const struct model *model) {
    struct holding *holding = ARENA_NEW(arena, struct holding);
    holding->meetings = meetings_of(arena, model->frame, &model->along);
    holding->sideways = arena_take(arena, model->segment_count, sizeof *holding->sideways);
    for (size_t m = 0; m < model->member_count; m++)
        for (int way = 0; way < 2; way++)
            measure(model, holding, m, way);
    return holding;
}

bool holding_rail(const struct model *model, const struct holding *holding, int member, int joint) {
    const struct slot *slot = &model->slots[model->move_slot[joint]];
    if (slot->held[2] || model->host[joint] != member)
        return true;
    for (size_t k = holding->meetings.first[joint]; k < holding->meetings.first[joint + 1]; k++) {
        int other = holding->meetings.items[k].member;
        if (other != member && member_steep(&model->members[other]))
            return true;
    }
    return false;
}

void holding_mark_sway(const struct model *model, struct holding *holding,
                       const double (*moves)[3]) {
    double largest = 0.0;
    for (size_t j = 0; j < model->frame->joints.count; j++)
        largest = fmax(largest, vector_length(moves[j]));
    for (size_t s = 0; s < model->segment_count; s++)
        for (int way = 0; way < 2; way++) {
            struct stretch *stretch = &holding->sideways[s][way];
            double apart[3];
            vector_between(moves[stretch->joints[0]], moves[stretch->joints[1]], apart);
            const struct model_member *member = &model->members[model->segments[s].member];
            bool upright = member_steep(member);
            if (upright && fabs(vector_dot(apart, member->axes[1 + way])) > 0.1 * largest)
                stretch->sways = true;
        }
}

double stretch_column_length(const struct stretch *stretch) {
    double length = stretch->to - stretch->from;
    double free_end = table_constant("cantilever-Ke").value;
    double factor = stretch->held[0] && stretch->held[1] ? 1.0 : free_end;
    if (stretch->sways)
        factor = fmax(factor, table_constant("sway-length-factor").value);
    return factor * length;
}
