#include "base/vector.h"
#include "fix/effort.h"
#include "frame/geometry.h"
#include "frame/shape_values.h"

#include <math.h>

enum { RAILS_MOST = 3 };

/* The member besides the shelf's own rails that goes from one rail's end to the other's; -1. */
static int cross_stick(const struct work *work, const struct shelf *shelf, int a, int b) {
    for (size_t m = 0; m < work->model->member_count; m++) {
        bool rail = false;
        for (size_t k = 0; k < shelf->rail_count; k++)
            rail |= shelf->rails[k] == (int)m;
        if (!rail && frame_joint_on_member(work->frame, a, (int)m) &&
            frame_joint_on_member(work->frame, b, (int)m))
            return (int)m;
    }
    return -1;
}

static int connection_at(const struct work *work, int member) {
    const struct member_end *ends = work->model->members[member].ends;
    return ends[0].connection >= 0 ? ends[0].connection : ends[1].connection;
}

/* The ends of a rail that would lie between the two of a shelf: middles of the sticks that join
 * their ends. False where no stick does. */
static bool between(const struct work *work, const struct shelf *shelf, double at[2][3],
                    int cross[2]) {
    const struct frame *frame = work->frame;
    const struct member *first = &frame->members.items[shelf->rails[0]];
    const struct member *last = &frame->members.items[shelf->rails[1]];
    const int starts[2] = {first->from, first->to};
    for (int e = 0; e < 2; e++) {
        const double *a = frame->joints.items[starts[e]].at;
        const double *from = frame->joints.items[last->from].at;
        const double *to = frame->joints.items[last->to].at;
        double apart[3];
        int other =
            vector_between(a, from, apart) <= vector_between(a, to, apart) ? last->from : last->to;
        cross[e] = cross_stick(work, shelf, starts[e], other);
        if (cross[e] < 0)
            return false;
        for (int k = 0; k < 3; k++)
            at[e][k] = (a[k] + frame->joints.items[other].at[k]) / 2.0;
    }
    return true;
}

static bool joint_near(const struct frame *frame, const double at[3]) {
    for (size_t j = 0; j < frame->joints.count; j++) {
        double apart[3];
        if (vector_between(at, frame->joints.items[j].at, apart) <= 2.0 * SAME_PLACE)
            return true;
    }
    return false;
}

/* One rail more in the middle between the two of a shelf. */
static void add_middle_rail(struct work *work, int index) {
    struct arena *arena = work->arena;
    const struct shelf *shelf = &work->frame->shelves.items[index];
    double at[2][3], along[3];
    int cross[2];
    if (shelf->rail_count != 2 || !between(work, shelf, at, cross) ||
        joint_near(work->frame, at[0]) || joint_near(work->frame, at[1]))
        return;
    const struct member *rail = &work->frame->members.items[shelf->rails[0]];
    int connection = connection_at(work, cross[0]);
    const char *name = name_unused(work, arena_print(arena, "%s-middle", shelf->name));
    const char *ends[2];
    for (int e = 0; e < 2; e++)
        ends[e] = name_unused(work, arena_print(arena, "%s-%s", name, e ? "to" : "from"));
    const char *fastened =
        connection < 0
            ? ""
            : arena_print(arena, ", ends: \"%s\"", work->frame->connections.items[connection].name);
    choice_add(
        work, choice_new(work, CHANGE_RAIL, rail->stick, index),
        arena_print(arena,
                    "put one rail more under the middle of the %s shelf, from %s to %s (stick "
                    "%s)",
                    shelf->name, work->frame->members.items[cross[0]].name,
                    work->frame->members.items[cross[1]].name,
                    work->frame->sticks.items[rail->stick].name),
        arena_print(arena,
                    "joints: {\"%s\": %s, \"%s\": %s}\n"
                    "members: {\"%s\": {from: \"%s\", to: \"%s\", stick: \"%s\"%s}}\n"
                    "shelves: {\"%s\": {rails: [\"%s\", \"%s\", \"%s\"]}}",
                    ends[0], bare_place(work, at[0]), ends[1], bare_place(work, at[1]), name,
                    ends[0], ends[1], work->frame->sticks.items[rail->stick].name, fastened,
                    shelf->name, work->frame->members.items[shelf->rails[0]].name, name,
                    work->frame->members.items[shelf->rails[1]].name),
        effort_of("fix-change") +
            piece_effort(work, rail->stick, vector_between(at[0], at[1], along)) +
            4.0 * effort_of("fix-screw"),
        0);
}

/* A shape counts its rails itself. */
static void add_rails_across(struct work *work) {
    const struct shape_values *shape = work->frame->shape.values;
    struct choice *slot = choice_new(work, CHANGE_RAIL, shape->rails, -1);
    double each = piece_effort(work, shape->rails, shape->wide) + 4.0 * effort_of("fix-screw");
    for (int rails = shape->rails_across + 1; rails <= RAILS_MOST; rails++)
        choice_add(work, slot,
                   arena_print(work->arena, "put %d rails under each shelf in place of %d", rails,
                               shape->rails_across),
                   arena_print(work->arena, "shape: {rails-across: %d}", rails),
                   effort_of("fix-change") +
                       each * (rails - shape->rails_across) * (double)work->frame->shelves.count,
                   0);
}

void catalogue_rails(struct work *work) {
    if (work->frame->shape.given && work->frame->shelves.count) {
        add_rails_across(work);
        return;
    }
    for (size_t k = 0; k < work->frame->shelves.count; k++)
        add_middle_rail(work, (int)k);
}
