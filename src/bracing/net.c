#include "bracing/net.h"

struct net net_of(struct arena *arena, const struct model *model) {
    const struct frame *frame = model->frame;
    struct net net = {.model = model,
                      .meetings = meetings_of(arena, frame, &model->along),
                      .where = ARENA_ARRAY(arena, size_t, model->along.first[model->member_count]),
                      .standing = ARENA_ARRAY(arena, bool, frame->joints.count),
                      .held = ARENA_ARRAY(arena, bool, frame->joints.count)};
    size_t *next = ARENA_ARRAY(arena, size_t, frame->joints.count + 1);
    for (size_t j = 0; j < frame->joints.count; j++)
        next[j] = net.meetings.first[j];
    /* in the order in which meetings_of() filled its list */
    for (size_t k = 0; k < model->along.first[model->member_count]; k++)
        net.where[next[model->along.joints[k].joint]++] = k;
    for (size_t k = 0; k < frame->supports.count; k++)
        if (frame->supports.items[k].held[2])
            net.standing[frame->supports.items[k].joint] = true;
    for (size_t j = 0; j < frame->joints.count; j++) {
        const bool *held = model->slots[model->move_slot[j]].held;
        net.held[j] = held[0] && held[1] && held[2];
    }
    return net;
}

bool heading_goes_on(const struct net *net, const struct heading *heading) {
    const size_t *first = net->model->along.first;
    return heading->step > 0 ? heading->place + 1 < first[heading->member + 1]
                             : heading->place > first[heading->member];
}

bool net_heading(const struct net *net, size_t meeting, int k, struct heading *out) {
    int member = net->meetings.items[meeting].member;
    *out = (struct heading){member, net->where[meeting], k == 0 ? 1 : -1};
    return net->model->frame->members.items[member].acts_as == ACTS_AS_MEMBER &&
           heading_goes_on(net, out);
}

int heading_next(const struct net *net, struct heading *heading) {
    if (!heading_goes_on(net, heading))
        return -1;
    heading->place = heading->step > 0 ? heading->place + 1 : heading->place - 1;
    return net->model->along.joints[heading->place].joint;
}

void heading_direction(const struct net *net, const struct heading *heading, double out[3]) {
    for (int c = 0; c < 3; c++)
        out[c] = heading->step * net->model->members[heading->member].axes[0][c];
}

int net_common_stick(const struct net *net, int one, int other) {
    const size_t *first = net->meetings.first;
    for (size_t i = first[one]; i < first[one + 1]; i++)
        for (size_t k = first[other]; k < first[other + 1]; k++)
            if (net->meetings.items[i].member == net->meetings.items[k].member)
                return net->meetings.items[i].member;
    return -1;
}

const double *net_at(const struct net *net, int joint) {
    return net->model->frame->joints.items[joint].at;
}
