#include "base/vector.h"
#include "frame/frame_check.h"
#include "frame/geometry.h"
#include "units/quote.h"

#include <math.h>

#define PARALLEL 0.0175 /* sine of 1 deg */

static double along(const double direction[3], const double point[3]) {
    return direction[0] * point[0] + direction[1] * point[1] + direction[2] * point[2];
}

static const char *rail_path(struct reader *reader, const struct shelf *shelf) {
    return arena_print(reader->arena, "shelves.%s.rails", plain_text(reader->arena, shelf->name));
}

static const char *rail_name(struct reader *reader, const struct shelf *shelf, size_t rail) {
    return quote_text(reader->arena, reader->frame->members.items[shelf->rails[rail]].name);
}

/* The rail's two ends, in order along `direction`. */
static void rail_ends(const struct frame *frame, int rail, const double direction[3],
                      const double *ends[2]) {
    const struct member *member = &frame->members.items[rail];
    const double *from = frame->joints.items[member->from].at;
    const double *to = frame->joints.items[member->to].at;
    bool forward = along(direction, from) <= along(direction, to);
    ends[0] = forward ? from : to;
    ends[1] = forward ? to : from;
}

static bool check_parallel(struct reader *reader, const struct shelf *shelf,
                           const double direction[3]) {
    bool parallel = true;
    for (size_t k = 0; k < shelf->rail_count; k++) {
        double own[3];
        frame_member_direction(reader->frame, shelf->rails[k], own);
        double cosine = fabs(along(direction, own));
        double sine = sqrt(fmax(0, 1 - cosine * cosine));
        if (!(fabs(own[2]) < SINE_45)) { /* a stick steeper than 45 degrees is no rail */
            trouble_at(reader, shelf->place, rail_path(reader, shelf),
                       "%s is too steep for a rail of a shelf", rail_name(reader, shelf, k));
            parallel = false;
        } else if (!(sine < PARALLEL)) {
            trouble_at(reader, shelf->place, rail_path(reader, shelf),
                       "%s does not run parallel to %s", rail_name(reader, shelf, k),
                       rail_name(reader, shelf, 0));
            parallel = false;
        }
    }
    return parallel;
}

static void check_common_length(struct reader *reader, const struct shelf *shelf,
                                const double direction[3]) {
    double start = -HUGE_VAL, end = HUGE_VAL;
    for (size_t k = 0; k < shelf->rail_count; k++) {
        const double *ends[2];
        rail_ends(reader->frame, shelf->rails[k], direction, ends);
        start = fmax(start, along(direction, ends[0]));
        end = fmin(end, along(direction, ends[1]));
    }
    if (!(end - start > SAME_PLACE))
        trouble_at(reader, shelf->place, rail_path(reader, shelf),
                   "the rails do not lie beside each other over any length");
}

/* From the first rail's line to that of rail `k`, square to both. */
static void offset_of(const struct frame *frame, const struct shelf *shelf, size_t k,
                      const double direction[3], double offset[3]) {
    const double *first[2], *ends[2];
    rail_ends(frame, shelf->rails[0], direction, first);
    rail_ends(frame, shelf->rails[k], direction, ends);
    for (int axis = 0; axis < 3; axis++)
        offset[axis] = ends[0][axis] - first[0][axis];
    double share = along(direction, offset);
    for (int axis = 0; axis < 3; axis++)
        offset[axis] -= share * direction[axis];
}

static void check_order(struct reader *reader, const struct shelf *shelf,
                        const double direction[3]) {
    double across[3], before = 0;
    offset_of(reader->frame, shelf, shelf->rail_count - 1, direction, across);
    double width = sqrt(along(across, across));
    for (size_t k = 1; k < shelf->rail_count; k++) {
        double offset[3];
        offset_of(reader->frame, shelf, k, direction, offset);
        double place = width > SAME_PLACE ? along(across, offset) / width : 0;
        if (!(place > before + SAME_PLACE)) {
            trouble_at(reader, shelf->place, rail_path(reader, shelf),
                       "%s does not lie beyond %s; give the rails in order across the shelf",
                       rail_name(reader, shelf, k), rail_name(reader, shelf, k - 1));
            return;
        }
        before = place;
    }
}

void check_shelf(struct reader *reader, const struct shelf *shelf) {
    for (size_t k = 0; k < shelf->rail_count; k++)
        if (shelf->rails[k] < 0)
            return;
    if (shelf->rail_count < 2)
        return;
    double direction[3];
    frame_member_direction(reader->frame, shelf->rails[0], direction);
    if (!check_parallel(reader, shelf, direction))
        return;
    check_common_length(reader, shelf, direction);
    check_order(reader, shelf, direction);
}
