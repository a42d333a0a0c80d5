#include "model/hosts.h"

struct meetings meetings_of(struct arena *arena, const struct frame *frame,
                            const struct along *along) {
    size_t joints = frame->joints.count, members = frame->members.count;
    struct meetings meetings = {.items = ARENA_ARRAY(arena, struct meets, along->first[members]),
                                .first = ARENA_ARRAY(arena, size_t, joints + 1)};
    for (size_t k = 0; k < along->first[members]; k++)
        meetings.first[along->joints[k].joint + 1]++;
    for (size_t j = 0; j < joints; j++)
        meetings.first[j + 1] += meetings.first[j];
    size_t *next = ARENA_ARRAY(arena, size_t, joints + 1);
    for (size_t j = 0; j < joints; j++)
        next[j] = meetings.first[j];
    for (size_t m = 0; m < members; m++)
        for (size_t k = along->first[m]; k < along->first[m + 1]; k++) {
            enum meeting how = k == along->first[m]           ? MEETS_FROM_END
                               : k + 1 == along->first[m + 1] ? MEETS_TO_END
                                                              : MEETS_THROUGH;
            meetings.items[next[along->joints[k].joint]++] = (struct meets){(int)m, how};
        }
    return meetings;
}

int host_of(const struct frame *frame, const struct meetings *meetings, int joint) {
    int named = frame->joints.items[joint].host;
    int first_through = -1, first_end = -1;
    for (size_t k = meetings->first[joint]; k < meetings->first[joint + 1]; k++) {
        const struct meets *meets = &meetings->items[k];
        if (meets->member == named)
            return named;
        if (meets->how == MEETS_THROUGH && first_through < 0)
            first_through = meets->member;
        if (meets->how != MEETS_THROUGH && first_end < 0)
            first_end = meets->member;
    }
    return first_through >= 0 ? first_through : first_end;
}

int connection_in_force(const struct frame *frame, int member, int end, bool *said) {
    int named = frame->members.items[member].ends[end];
    *said = true;
    if (named >= 0)
        return named;
    if (frame->default_connection >= 0)
        return frame->default_connection;
    *said = false;
    return CONNECTION_INDEX_PINNED;
}

bool joint_is_hinge(const struct frame *frame, const struct meetings *meetings, int joint, int host,
                    const bool *turning_acted_on) {
    if (turning_acted_on[joint])
        return false;
    size_t ending = 0;
    for (size_t k = meetings->first[joint]; k < meetings->first[joint + 1]; k++) {
        const struct meets *meets = &meetings->items[k];
        if (meets->how == MEETS_THROUGH)
            return false;
        ending++;
        if (meets->member == host)
            continue;
        bool said;
        int connection =
            connection_in_force(frame, meets->member, meets->how == MEETS_TO_END, &said);
        if (frame->connections.items[connection].type != CONNECTION_PINNED)
            return false;
    }
    return ending >= 2;
}

bool *joints_turning_acted_on(struct arena *arena, const struct frame *frame) {
    bool *acted_on = ARENA_ARRAY(arena, bool, frame->joints.count);
    for (size_t k = 0; k < frame->supports.count; k++) {
        const struct support *support = &frame->supports.items[k];
        if (support->held[3] || support->held[4] || support->held[5])
            acted_on[support->joint] = true;
    }
    for (size_t k = 0; k < frame->loads.count; k++) {
        const struct load *load = &frame->loads.items[k];
        if (load->type == LOAD_JOINT &&
            (load->moment[0] != 0.0 || load->moment[1] != 0.0 || load->moment[2] != 0.0))
            acted_on[load->joint] = true;
    }
    return acted_on;
}
