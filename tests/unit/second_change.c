#include "second_change.h"

#include "second_frame.h"

#include <math.h>
#include <string.h>

#define COPY_LIST(list)                                                                            \
    do {                                                                                           \
        size_t bytes = (list).count * sizeof *(list).items;                                        \
        void *room = arena_take(frame->arena, (list).count, sizeof *(list).items);                 \
        if (bytes)                                                                                 \
            memcpy(room, (list).items, bytes);                                                     \
        (list).items = room;                                                                       \
        (list).capacity = (list).count;                                                            \
    } while (0)

struct frame *frame_copy(const struct frame *frame) {
    struct frame *copy = ARENA_NEW(frame->arena, struct frame);
    *copy = *frame;
    COPY_LIST(copy->joints);
    COPY_LIST(copy->members);
    COPY_LIST(copy->supports);
    COPY_LIST(copy->shelves);
    COPY_LIST(copy->panels);
    COPY_LIST(copy->loads);
    COPY_LIST(copy->parts);
    return copy;
}

static double turn_of(const struct frame *frame, const struct member *member) {
    const struct stick *stick = &frame->sticks.items[member->stick];
    return member->turn.given ? member->turn.value : stick->turn.given ? stick->turn.value : 0.0;
}

struct frame *frame_mirrored(const struct frame *frame) {
    struct frame *copy = frame_copy(frame);
    for (size_t j = 0; j < copy->joints.count; j++)
        copy->joints.items[j].at[0] *= -1.0;
    for (size_t k = 0; k < copy->loads.count; k++) {
        copy->loads.items[k].force[0] *= -1.0;
        copy->loads.items[k].moment[1] *= -1.0;
        copy->loads.items[k].moment[2] *= -1.0;
    }
    for (size_t m = 0; m < copy->members.count; m++) {
        struct member *member = &copy->members.items[m];
        member->turn = (struct optional){true, -turn_of(frame, member)};
    }
    return copy;
}

static void turn(double v[3], double angle) {
    double x = v[0], y = v[1];
    v[0] = cos(angle) * x - sin(angle) * y;
    v[1] = sin(angle) * x + cos(angle) * y;
}

struct frame *frame_turned(const struct frame *frame, double angle) {
    struct frame *copy = frame_copy(frame);
    for (size_t j = 0; j < copy->joints.count; j++)
        turn(copy->joints.items[j].at, angle);
    for (size_t k = 0; k < copy->loads.count; k++) {
        turn(copy->loads.items[k].force, angle);
        turn(copy->loads.items[k].moment, angle);
    }
    for (size_t m = 0; m < copy->members.count; m++) {
        struct member *member = &copy->members.items[m];
        const double *a = frame->joints.items[member->from].at;
        const double *b = frame->joints.items[member->to].at;
        double run = hypot(b[0] - a[0], b[1] - a[1]), rise = b[2] - a[2];
        /* the axes of an upright stick follow the page, not the frame */
        double own = run < 1e-6 * fabs(rise) ? copysign(angle, rise) : 0.0;
        member->turn = (struct optional){true, turn_of(frame, member) + own};
    }
    return copy;
}

static void shuffle(int *order, size_t count, uint64_t *state) {
    for (size_t k = 0; k < count; k++)
        order[k] = (int)k;
    for (size_t k = count; k > 1; k--) {
        size_t other = (size_t)(random_next(state) * (double)k);
        int kept = order[k - 1];
        order[k - 1] = order[other];
        order[other] = kept;
    }
}

struct frame *frame_shuffled(const struct frame *frame, const int *host, uint64_t seed,
                             int *joint_at, int *member_at) {
    struct frame *copy = frame_copy(frame);
    uint64_t state = seed * 2654435761u + 17u;
    shuffle(joint_at, frame->joints.count, &state);
    shuffle(member_at, frame->members.count, &state);
    for (size_t j = 0; j < frame->joints.count; j++) {
        struct joint *joint = &copy->joints.items[joint_at[j]];
        *joint = frame->joints.items[j];
        joint->host = member_at[host[j]];
    }
    for (size_t m = 0; m < frame->members.count; m++) {
        struct member *member = &copy->members.items[member_at[m]];
        *member = frame->members.items[m];
        member->from = joint_at[member->from];
        member->to = joint_at[member->to];
    }
    for (size_t k = 0; k < copy->supports.count; k++)
        copy->supports.items[k].joint = joint_at[copy->supports.items[k].joint];
    for (size_t k = 0; k < copy->loads.count; k++) {
        struct load *load = &copy->loads.items[k];
        load->joint = load->joint < 0 ? -1 : joint_at[load->joint];
        load->member = load->member < 0 ? -1 : member_at[load->member];
    }
    for (size_t k = 0; k < copy->shelves.count; k++) {
        struct shelf *shelf = &copy->shelves.items[k];
        int *rails = ARENA_ARRAY(frame->arena, int, shelf->rail_count);
        for (size_t r = 0; r < shelf->rail_count; r++)
            rails[r] = member_at[shelf->rails[r]];
        shelf->rails = rails;
    }
    return copy;
}

struct frame *frame_split(const struct frame *frame, int member, double share) {
    struct frame *copy = frame_copy(frame);
    struct joint joint = {.name = "extra", .host = -1};
    const double *a = frame->joints.items[frame->members.items[member].from].at;
    const double *b = frame->joints.items[frame->members.items[member].to].at;
    for (int c = 0; c < 3; c++)
        joint.at[c] = a[c] + share * (b[c] - a[c]);
    ARRAY_PUSH(frame->arena, &copy->joints, joint);
    return copy;
}

struct frame *frame_loaded(const struct frame *frame, double factor) {
    struct frame *copy = frame_copy(frame);
    for (size_t k = 0; k < copy->loads.count; k++)
        for (int c = 0; c < 3; c++) {
            copy->loads.items[k].force[c] *= factor;
            copy->loads.items[k].moment[c] *= factor;
        }
    return copy;
}
