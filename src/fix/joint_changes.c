#include "fix/effort.h"
#include "fix/fastened.h"
#include "fix/screw_lengths.h"

#include <math.h>
#include <string.h>

enum { LONGER_STEPS = 4, MORE_STEPS = 2 };

struct joint_slot {
    struct work *work;
    struct choice *slot;
    const char *name;
    size_t ends;      /* sticks that end in it */
    double now;       /* effort of one end as it is */
    const char *rest; /* keys of the entry that stay: ", metal: stainless" */
};

static void add(const struct joint_slot *joint, struct fastened end) {
    struct arena *arena = joint->work->arena;
    double more = fmax(end_effort(&end) - joint->now, 0.0);
    struct option *option = choice_add(
        joint->work, joint->slot,
        arena_print(arena, "at every '%s' joint %s", joint->name, end_words(arena, &end)),
        arena_print(arena, "connections: {\"%s\": {%s%s}}", joint->name,
                    end_keys(joint->work, &end), joint->rest),
        effort_of("fix-change") + (double)joint->ends * more, 0);
    if (option)
        option->fine = end.fine;
}

static const struct node *entry_of(const struct work *work, const char *connection) {
    return node_child(node_child(work->frame->tree, "connections"), connection);
}

/* The length of its screws as the file says it; NULL where it is none, or no screw. */
static const char *length_typed(const struct joint_slot *joint, const struct connection *now) {
    const struct node *length = node_child(entry_of(joint->work, joint->name), "length");
    bool screw = now && now->fastener == FASTENER_SCREW && now->length.given;
    return screw && length ? length->text : NULL;
}

/* More screws, longer ones, both. */
static void add_laps(const struct joint_slot *joint, const struct connection *now,
                     enum connection_type type) {
    const char *typed = length_typed(joint, now);
    double length = typed ? now->length.value : 0.0;
    struct fastened end = {.type = type, .bolt = -1, .size = typed ? now->size_name : "8"};
    int count = now ? now->count : 2, steps = 0;
    end.fine = true;
    for (int more = 1; typed && more <= MORE_STEPS; more++) {
        end.length = typed;
        end.step = fastened_now(joint->work, now).step;
        end.count = count + more;
        add(joint, end);
    }
    for (int k = 0; k < SCREW_LENGTHS && steps < LONGER_STEPS; k++) {
        if (!(screw_length(joint->work, k) > length + SAME_SCREW_LENGTH))
            continue;
        steps++;
        end.length = screw_length_words(joint->work, k);
        end.step = k;
        end.fine = steps < LONGER_STEPS && k < SCREW_LENGTHS - 1;
        for (int more = 0; more <= MORE_STEPS; more++) {
            end.count = count + more;
            add(joint, end);
        }
    }
}

static void add_bolts(const struct joint_slot *joint) {
    for (int k = 0; k < BOLT_SIZES; k++)
        for (int count = 1; count <= 2; count++)
            add(joint,
                (struct fastened){.type = CONNECTION_SCREWED_LAP, .bolt = k, .count = count});
}

/* No.8 screws of the lengths from `first` to `last`, in steps, from `few` to `many` of them. */
struct range {
    int first, last, step, few, many;
};

static void add_with_screws(const struct joint_slot *joint, enum connection_type type, int plates,
                            struct range range) {
    for (int k = range.first; k <= range.last; k += range.step)
        for (int count = range.few; count <= range.many; count++)
            add(joint, (struct fastened){.type = type,
                                         .bolt = -1,
                                         .size = "8",
                                         .length = screw_length_words(joint->work, k),
                                         .step = k,
                                         .count = count,
                                         .plates = plates,
                                         .fine = k != range.last ||
                                                 (count != range.few && count != range.many)});
}

static void add_joints(struct work *work, const char *name, const struct connection *now,
                       size_t ends) {
    enum connection_type type = now ? now->type : CONNECTION_SCREWED_LAP;
    const char *rest = "";
    if (type == CONNECTION_PINNED || type == CONNECTION_RIGID || type == CONNECTION_SPRINGS ||
        type == CONNECTION_HINGE)
        return;
    const struct node *metal = node_child(entry_of(work, name), "metal");
    if (metal)
        rest = arena_print(work->arena, ", metal: %s", yaml_quoted(work, metal->text));
    struct choice *slot = choice_new(work, CHANGE_JOINT, -1, -1);
    if (!slot)
        return;
    slot->connection = name;
    struct fastened present = now ? fastened_now(work, now) : (struct fastened){0};
    struct joint_slot joint = {work, slot, name, ends, now ? end_effort(&present) : 0.0, rest};
    bool beside = type == CONNECTION_SCREWED_LAP || type == CONNECTION_GLUED_LAP;
    if (beside || type == CONNECTION_SCREWED_BUTT)
        add_laps(&joint, now, beside ? CONNECTION_SCREWED_LAP : CONNECTION_SCREWED_BUTT);
    if (beside)
        add_bolts(&joint);
    add_with_screws(&joint, CONNECTION_CLEAT, 0, (struct range){4, 6, 1, 2, 3});
    for (int plates = 1; plates <= 2; plates++)
        add_with_screws(&joint, CONNECTION_GUSSET, plates, (struct range){2, 2, 1, 3, 5});
    add_with_screws(&joint, CONNECTION_BRACKET, 0, (struct range){0, 2, 2, 2, 3});
}

void catalogue_joints(struct work *work) {
    const struct frame *frame = work->frame;
    size_t *ends = ARENA_ARRAY(work->arena, size_t, frame->connections.count);
    for (size_t m = 0; m < work->model->member_count; m++)
        for (int e = 0; e < 2; e++)
            if (work->model->members[m].ends[e].connection >= 0)
                ends[work->model->members[m].ends[e].connection]++;
    bool lap_known = !work->lap;
    for (size_t k = 0; k < frame->connections.count; k++) {
        const struct connection *connection = &frame->connections.items[k];
        bool lap = work->lap && strcmp(connection->name, work->lap) == 0;
        lap_known |= lap;
        if (ends[k] || lap)
            add_joints(work, connection->name, connection, ends[k] ? ends[k] : 2);
    }
    if (!lap_known)
        add_joints(work, work->lap, NULL, 2);
}
