#include "model/model.h"

#include "base/vector.h"
#include "model/fastening.h"
#include "model/hosts.h"
#include "model/sections.h"

#include <math.h>

struct builder {
    struct arena *arena;
    const struct frame *frame;
    struct problems *problems;
    struct model *model;
    struct meetings meetings;
    bool *turning_acted_on;
    bool *refused; /* per connection: told what is wrong with it */
};

static bool wet_service(const struct frame *frame) {
    if (frame->site.wet_service_given)
        return frame->site.wet_service;
    return frame->site.place != PLACE_INDOORS;
}

static void measure(struct model *model) {
    double low[3], high[3];
    const struct frame *frame = model->frame;
    for (int k = 0; k < 3; k++) {
        low[k] = INFINITY;
        high[k] = -INFINITY;
        for (size_t j = 0; j < frame->joints.count; j++) {
            low[k] = fmin(low[k], frame->joints.items[j].at[k]);
            high[k] = fmax(high[k], frame->joints.items[j].at[k]);
        }
        model->middle[k] = (low[k] + high[k]) / 2.0;
    }
    double diagonal[3];
    model->size = vector_between(low, high, diagonal);
}

static bool build_members(struct builder *builder, struct problems *problems) {
    struct model *model = builder->model;
    const struct frame *frame = builder->frame;
    bool complete = true;
    struct lumber *lumber = ARENA_ARRAY(builder->arena, struct lumber, frame->sticks.count);
    for (size_t k = 0; k < frame->sticks.count; k++)
        lumber[k] = sections_lumber(&frame->sticks.items[k]);
    for (size_t m = 0; m < frame->members.count; m++) {
        const struct member *member = &frame->members.items[m];
        if (sections_member(frame, member, &lumber[member->stick], model->wet, &model->members[m]))
            continue;
        const struct stick *stick = &frame->sticks.items[member->stick];
        problem_add(problems, stick->place, arena_print(builder->arena, "sticks.%s", stick->name),
                    "no stiffness E is known for this stick; give a species with a grade that the "
                    "tables hold, or a material with its own E");
        complete = false;
        break;
    }
    return complete;
}

/* One slot of three unknowns. In a plane frame y and the turns about x and z are held. */
static int add_slot(struct model *model, int joint, int member, bool turning) {
    struct slot *slot = &model->slots[model->slot_count];
    *slot = (struct slot){.joint = joint, .member = member, .turning = turning};
    if (model->frame->plane) {
        slot->held[0] = slot->held[2] = turning;
        slot->held[1] = !turning;
    }
    return (int)model->slot_count++;
}

static void build_joint_slots(struct builder *builder) {
    struct model *model = builder->model;
    const struct frame *frame = builder->frame;
    for (size_t j = 0; j < frame->joints.count; j++) {
        model->host[j] = host_of(frame, &builder->meetings, (int)j);
        model->move_slot[j] = add_slot(model, (int)j, -1, false);
        bool hinge =
            model->host[j] < 0 || joint_is_hinge(frame, &builder->meetings, (int)j, model->host[j],
                                                 builder->turning_acted_on);
        model->turn_slot[j] = hinge ? -1 : add_slot(model, (int)j, -1, true);
    }
    for (size_t k = 0; k < frame->supports.count; k++) {
        const struct support *support = &frame->supports.items[k];
        for (int c = 0; c < 3; c++) {
            model->slots[model->move_slot[support->joint]].held[c] |= support->held[c];
            if (model->turn_slot[support->joint] >= 0)
                model->slots[model->turn_slot[support->joint]].held[c] |= support->held[3 + c];
        }
    }
}

static void caution(struct builder *builder, const char *text) {
    ARRAY_PUSH(builder->arena, &builder->model->cautions, text);
}

static void set_pinned(struct end_springs springs[STIFFNESS_COUNT]) {
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        for (int k = 0; k < 6; k++)
            springs[s].k[k] = k < 3 ? INFINITY : 0.0;
}

/* Once for each connection, however many ends use it. */
static bool refused_before(struct builder *builder, const struct connection *connection) {
    bool *refused = &builder->refused[connection - builder->frame->connections.items];
    bool before = *refused;
    *refused = true;
    return before;
}

static double narrowest(const struct model_member *stick) {
    return fmin(stick->size_y, stick->size_z);
}

/* A screw as thick as the stick that it stands in leaves no wood. */
static void refuse_thick_screws(struct builder *builder, const struct fastening *fastening) {
    const struct connection *connection = fastening->connection;
    const struct model_member *thin = fastening->ending;
    if (narrowest(fastening->host) < narrowest(thin))
        thin = fastening->host;
    double left = narrowest(thin);
    if (!(connection->diameter > 0.0) || connection->diameter < left || !(left > 0.0) ||
        refused_before(builder, connection))
        return;
    enum unit_system units = builder->frame->units;
    problem_add(builder->problems, connection->place,
                arena_print(builder->arena, "connections.%s", connection->name),
                "its fasteners are %s thick, and the stick %s that they join only %s; use thinner "
                "ones",
                quantity_print_length(builder->arena, connection->diameter, units),
                builder->frame->members.items[thin - builder->model->members].name,
                quantity_print_length(builder->arena, left, units));
}

/* A notch as deep as the post cuts it off. */
static void refuse_deep_notch(struct builder *builder, const struct fastening *fastening,
                              int member) {
    const struct connection *connection = fastening->connection;
    double thick = fastening_plane(fastening).thick_host;
    if (connection->type != CONNECTION_NOTCHED || connection->depth < thick ||
        refused_before(builder, connection))
        return;
    enum unit_system units = builder->frame->units;
    problem_add(builder->problems, connection->place,
                arena_print(builder->arena, "connections.%s.depth", connection->name),
                "a notch %s deep for %s leaves nothing of a post that is %s thick there",
                quantity_print_length(builder->arena, connection->depth, units),
                builder->frame->members.items[member].name,
                quantity_print_length(builder->arena, thick, units));
}

static void fasten(struct builder *builder, int member, int end) {
    struct model *model = builder->model;
    const struct frame *frame = builder->frame;
    struct member_end *out = &model->members[member].ends[end];
    bool said;
    out->connection = connection_in_force(frame, member, end, &said);
    struct fastening fastening = {.connection = &frame->connections.items[out->connection],
                                  .ending = &model->members[member],
                                  .host = &model->members[model->host[out->joint]],
                                  .wet = model->wet};
    if (fastening_springs(&fastening, out->springs))
        model->has_screws = true;
    refuse_thick_screws(builder, &fastening);
    refuse_deep_notch(builder, &fastening, member);
    if (fastening.connection->type == CONNECTION_SCREWED_LAP && fastening_lap(&fastening).line_cut)
        caution(builder,
                arena_print(builder->arena,
                            "%s at %s: the screws do not fit so far apart; they are taken as far "
                            "apart as the lap lets them",
                            frame->members.items[member].name,
                            frame->joints.items[out->joint].name));
}

static void build_ends(struct builder *builder) {
    struct model *model = builder->model;
    const struct frame *frame = builder->frame;
    size_t assumed = 0;
    int first_assumed = 0;
    for (size_t m = 0; m < model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct member_end *out = &model->members[m].ends[end];
            out->joint = end ? frame->members.items[m].to : frame->members.items[m].from;
            out->host = model->host[out->joint] == (int)m;
            out->released = model->turn_slot[out->joint] < 0;
            out->connection = -1;
            bool said = true;
            if (out->released)
                set_pinned(out->springs);
            else if (out->host)
                for (int s = 0; s < STIFFNESS_COUNT; s++)
                    for (int k = 0; k < 6; k++)
                        out->springs[s].k[k] = INFINITY;
            else
                fasten(builder, (int)m, end);
            if (!out->host)
                out->connection = connection_in_force(frame, (int)m, end, &said);
            if (!said && assumed++ == 0)
                first_assumed = (int)m;
        }
    if (assumed)
        caution(builder,
                arena_print(builder->arena,
                            "%zu stick end%s (the first: %s) name%s no connection and the "
                            "file has no default: taken as pinned, which holds no turning",
                            assumed, assumed == 1 ? "" : "s",
                            frame->members.items[first_assumed].name, assumed == 1 ? "s" : ""));
}

/* The turning slot of `member` where it passes or ends at `joint`. */
static int turning_at(struct builder *builder, int member, int joint, bool through) {
    struct model *model = builder->model;
    if (!through || model->host[joint] == member)
        return model->turn_slot[joint];
    return add_slot(model, joint, member, true);
}

static void build_segments(struct builder *builder) {
    struct model *model = builder->model;
    for (size_t m = 0; m < model->member_count; m++) {
        struct model_member *member = &model->members[m];
        size_t first = model->along.first[m], last = model->along.first[m + 1] - 1;
        member->first_segment = model->segment_count;
        member->segment_count = last - first;
        const struct along_joint *on = &model->along.joints[first];
        int turn = turning_at(builder, (int)m, on->joint, false);
        for (size_t k = first; k < last; k++, on++) {
            struct segment *segment = &model->segments[model->segment_count++];
            bool ends = k + 1 == last;
            int next = turning_at(builder, (int)m, on[1].joint, !ends);
            *segment = (struct segment){
                .member = (int)m,
                .joints = {on[0].joint, on[1].joint},
                .start = on[0].at,
                .length = on[1].at - on[0].at,
                .move = {model->move_slot[on[0].joint], model->move_slot[on[1].joint]},
                .turn = {turn, next},
                .sprung = {k == first, ends},
            };
            turn = next;
        }
    }
}

struct model *model_build(struct arena *arena, const struct frame *frame,
                          struct problems *problems) {
    struct model *model = ARENA_NEW(arena, struct model);
    struct builder builder = {.arena = arena, .frame = frame, .problems = problems, .model = model};
    size_t joints = frame->joints.count;
    model->frame = frame;
    model->wet = wet_service(frame);
    model->member_count = frame->members.count;
    model->members = ARENA_ARRAY(arena, struct model_member, model->member_count);
    if (!build_members(&builder, problems))
        return NULL;
    measure(model);
    model->along = along_members(arena, frame);
    size_t pieces = model->along.first[model->member_count];
    model->segments = ARENA_ARRAY(arena, struct segment, pieces);
    model->slots = ARENA_ARRAY(arena, struct slot, 2 * joints + pieces);
    model->move_slot = ARENA_ARRAY(arena, int, joints);
    model->turn_slot = ARENA_ARRAY(arena, int, joints);
    model->host = ARENA_ARRAY(arena, int, joints);
    builder.meetings = meetings_of(arena, frame, &model->along);
    builder.refused = ARENA_ARRAY(arena, bool, frame->connections.count);
    builder.turning_acted_on = joints_turning_acted_on(arena, frame);
    build_joint_slots(&builder);
    build_ends(&builder);
    build_segments(&builder);
    return model;
}
