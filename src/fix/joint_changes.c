#include "fix/effort.h"
#include "fix/screw_lengths.h"

#include <math.h>
#include <string.h>

enum { LONGER_STEPS = 4, MORE_STEPS = 2 };

static const double SAME_LENGTH = 0.0005; /* m */

/* One way to fasten an end. */
struct fastened {
    enum connection_type type;
    int bolt;           /* of BOLTS; -1: screws */
    const char *size;   /* of screws: "8" */
    const char *length; /* of screws, as the file writes it */
    int step;           /* of the lengths above: what the screws count for */
    int count;
    int plates; /* of a gusset */
    bool fine;  /* shorter screws or other numbers of them than a first try would take */
};
static const char *const BOLTS[] = {"1/4 in", "5/16 in"};
enum { BOLT_COUNT = sizeof BOLTS / sizeof *BOLTS };

struct joint_slot {
    struct work *work;
    struct choice *slot;
    const char *name;
    size_t ends;      /* sticks that end in it */
    double now;       /* effort of one end as it is */
    const char *rest; /* keys of the entry that stay: ", metal: stainless" */
};

/* ---- what it counts ---- */

static double fastener_effort(const struct fastened *end) {
    if (end->bolt >= 0)
        return effort_of("fix-bolt") * (1.0 + effort_of("fix-larger") * end->bolt);
    return effort_of("fix-screw") + end->step * effort_of("fix-screw-length");
}

static double end_effort(const struct fastened *end) {
    double all = end->count * fastener_effort(end);
    switch (end->type) {
    case CONNECTION_CLEAT: /* screws into the post, and as many down through the rail */
        return effort_of("fix-cleat") + 2.0 * all;
    case CONNECTION_NOTCHED:
        return effort_of("fix-piece") + all;
    case CONNECTION_BRACKET:
        return effort_of("fix-bracket") + 2.0 * all;
    case CONNECTION_GUSSET:
        return end->plates * (effort_of("fix-gusset") + 2.0 * all);
    default:
        return all;
    }
}

static struct fastened fastened_now(const struct work *work, const struct connection *now) {
    struct fastened end = {.type = now->type,
                           .bolt = now->fastener == FASTENER_BOLT ? 0 : -1,
                           .count = now->count,
                           .plates = now->plates};
    while (end.step < SCREW_LENGTHS - 1 && now->length.given &&
           screw_length(work, end.step) < now->length.value - SAME_LENGTH)
        end.step++;
    return end;
}

/* ---- in words ---- */

static const char *number_words(struct arena *arena, int count) {
    static const char *const words[] = {"no", "one", "two", "three", "four", "five", "six"};
    return count <= 6 ? words[count] : arena_print(arena, "%d", count);
}

static const char *fasteners_words(struct arena *arena, const struct fastened *end) {
    const char *number = number_words(arena, end->count), *s = end->count == 1 ? "" : "s";
    if (end->bolt >= 0)
        return arena_print(arena, "%s %s bolt%s with washers", number, BOLTS[end->bolt], s);
    return arena_print(arena, "%s No.%s screw%s %s long", number, end->size, s, end->length);
}

static const char *end_words(struct arena *arena, const struct fastened *end) {
    const char *fasteners = fasteners_words(arena, end);
    switch (end->type) {
    case CONNECTION_CLEAT:
        return arena_print(arena, "set the end on a block, %s through it", fasteners);
    case CONNECTION_BRACKET:
        return arena_print(arena, "use a steel angle, %s in each leg", fasteners);
    case CONNECTION_GUSSET:
        return arena_print(arena, "screw a 1/2 in plywood gusset over %s, %s in each stick",
                           end->plates == 1 ? "one side" : "both sides", fasteners);
    default:
        return arena_print(arena, "use %s", fasteners);
    }
}

static const char *end_keys(const struct work *work, const struct fastened *end) {
    struct arena *arena = work->arena;
    const char *type =
        end->type == CONNECTION_CLEAT     ? "cleat"
        : end->type == CONNECTION_BRACKET ? "bracket"
        : end->type == CONNECTION_GUSSET
            ? arena_print(arena, "gusset, sheet: plywood-1/2in, plates: %d", end->plates)
        : end->type == CONNECTION_SCREWED_BUTT ? "screwed-butt"
                                               : "screwed-lap";
    const char *with = end->bolt >= 0 ? arena_print(arena, "bolt: %s", BOLTS[end->bolt])
                                      : arena_print(arena, "screw: %s, length: %s", end->size,
                                                    yaml_quoted(work, end->length));
    return arena_print(arena, "type: %s, %s, count: %d", type, with, end->count);
}

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

/* ---- what is tried ---- */

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
        if (!(screw_length(joint->work, k) > length + SAME_LENGTH))
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
    for (int k = 0; k < BOLT_COUNT; k++)
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
