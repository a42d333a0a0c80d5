#include "fix/columns.h"

#include "frame/geometry.h"

#include <math.h>

/* Shorter stretches between uprights want no leg. */
static const double STRETCH_LEAST = 0.3; /* m */
static const double LEG_LEAST = 0.05;    /* m */

static bool holds_up(const struct work *work, int rail, int joint) {
    for (size_t k = 0; k < work->frame->supports.count; k++)
        if (work->frame->supports.items[k].joint == joint)
            return true;
    for (size_t m = 0; m < work->model->member_count; m++)
        if ((int)m != rail && member_steep(&work->model->members[m]) &&
            work->frame->members.items[m].acts_as == ACTS_AS_MEMBER &&
            frame_joint_on_member(work->frame, joint, (int)m))
            return true;
    return false;
}

/* The middle of the longest stretch of a rail that no upright divides; false where it is short. */
static bool middle_of(const struct work *work, int rail, double at[3]) {
    const struct along *along = &work->model->along;
    const struct model_member *member = &work->model->members[rail];
    double last = 0.0, longest = 0.0, middle = 0.0;
    for (size_t k = along->first[rail]; k < along->first[rail + 1]; k++) {
        double here = along->joints[k].at;
        bool end = k + 1 == along->first[rail + 1];
        if (!end && !holds_up(work, rail, along->joints[k].joint))
            continue;
        if (here - last > longest) {
            longest = here - last;
            middle = (here + last) / 2.0;
        }
        last = here;
    }
    for (int k = 0; k < 3; k++)
        at[k] = member->from[k] + member->axes[0][k] * middle;
    return longest >= STRETCH_LEAST && !member_steep(member);
}

static struct column *column_at(struct work *work, struct columns *columns, const double at[3],
                                int shelf) {
    for (size_t k = 0; k < columns->count; k++)
        if (hypot(columns->items[k].at[0] - at[0], columns->items[k].at[1] - at[1]) <= SAME_PLACE)
            return &columns->items[k];
    ARRAY_PUSH(work->arena, columns, (struct column){.at = {at[0], at[1], at[2]}, .shelf = shelf});
    return &columns->items[columns->count - 1];
}

static void add_height(struct work *work, struct column *column, double height) {
    size_t at = column->heights.count;
    ARRAY_PUSH(work->arena, &column->heights, height);
    for (; at > 0 && column->heights.items[at - 1] > height; at--)
        column->heights.items[at] = column->heights.items[at - 1];
    column->heights.items[at] = height;
}

double ground_height(const struct work *work) {
    double low = INFINITY;
    for (size_t k = 0; k < work->frame->supports.count; k++)
        low = fmin(low, work->frame->joints.items[work->frame->supports.items[k].joint].at[2]);
    return low;
}

struct columns find_columns(struct work *work) {
    struct columns columns = {0};
    for (size_t s = 0; s < work->frame->shelves.count; s++) {
        const struct shelf *shelf = &work->frame->shelves.items[s];
        for (size_t k = 0; k < shelf->rail_count; k++) {
            double at[3];
            if (middle_of(work, shelf->rails[k], at) && at[2] - ground_height(work) > LEG_LEAST)
                add_height(work, column_at(work, &columns, at, (int)s), at[2]);
        }
    }
    return columns;
}
