#include "fix/effort.h"

#include <math.h>
#include <string.h>

/* Screws that a shop keeps; as the file writes lengths. */
static const char *const LENGTHS_US[] = {"1 in",     "1-1/4 in", "1-1/2 in", "1-3/4 in", "2 in",
                                         "2-1/2 in", "3 in",     "3-1/2 in", "4 in"};
static const char *const LENGTHS_SI[] = {"25 mm", "30 mm", "40 mm", "45 mm", "50 mm",
                                         "60 mm", "75 mm", "90 mm", "100 mm"};
enum { LENGTH_COUNT = sizeof LENGTHS_US / sizeof *LENGTHS_US, LONGER_STEPS = 4, MORE_STEPS = 2 };

static const double SAME_LENGTH = 0.0005; /* m */

struct joint_slot {
    struct work *work;
    struct choice *slot;
    const char *name;
    const struct connection *now; /* NULL: the lap of sticks that are added */
    size_t ends;                  /* sticks that end in it */
    const char *rest;             /* keys of the entry that stay: ", metal: stainless" */
};

static const char *const METALS[] = {"", "plain", "galvanized", "stainless"};

static const char *length_words(const struct work *work, int step) {
    return work->frame->units == UNITS_US ? LENGTHS_US[step] : LENGTHS_SI[step];
}

static double length_of(const struct work *work, int step) {
    const char *why;
    double metres = 0.0;
    quantity_read(work->arena, length_words(work, step), QUANTITY_LENGTH, work->frame->units,
                  &metres, &why);
    return metres;
}

/* `keys` are those of the new entry, `each` the effort of one end. */
static void add(const struct joint_slot *joint, const char *what, const char *keys, double each) {
    struct arena *arena = joint->work->arena;
    choice_add(joint->work, joint->slot,
               arena_print(arena, "at every '%s' joint %s", joint->name, what),
               arena_print(arena, "connections: {\"%s\": {%s%s}}", joint->name, keys, joint->rest),
               effort_of("fix-change") + (double)joint->ends * fmax(each, 0.0), 0);
}

static const char *number_words(struct arena *arena, int count) {
    static const char *const words[] = {"no", "one", "two", "three", "four", "five", "six"};
    return count <= 6 ? words[count] : arena_print(arena, "%d", count);
}

/* The length of its screws as the file says it; NULL where it is none, or no screw. */
static const char *length_typed(const struct joint_slot *joint) {
    const struct node *entry =
        node_child(node_child(joint->work->frame->tree, "connections"), joint->name);
    const struct node *length = node_child(entry, "length");
    bool screw = joint->now && joint->now->fastener == FASTENER_SCREW && joint->now->length.given;
    return screw && length ? length->text : NULL;
}

static void add_screws(const struct joint_slot *joint, const char *type, const char *size,
                       const char *length, int count, int steps_longer) {
    struct work *work = joint->work;
    int now = joint->now ? joint->now->count : 0;
    add(joint,
        arena_print(work->arena, "use %s No.%s %s %s long", number_words(work->arena, count), size,
                    count == 1 ? "screw" : "screws", length),
        arena_print(work->arena, "type: %s, screw: %s, length: \"%s\", count: %d", type, size,
                    length, count),
        fmax(count - now, 0) * effort_of("fix-screw") +
            count * steps_longer * effort_of("fix-screw-length"));
}

/* More screws, longer ones, both. */
static void add_laps(const struct joint_slot *joint, const char *type) {
    const char *typed = length_typed(joint);
    double length = typed ? joint->now->length.value : 0.0;
    const char *size = typed ? joint->now->size_name : "8";
    int count = joint->now ? joint->now->count : 2, steps = 0;
    for (int more = 1; typed && more <= MORE_STEPS; more++)
        add_screws(joint, type, size, typed, count + more, 0);
    for (int k = 0; k < LENGTH_COUNT && steps < LONGER_STEPS; k++) {
        if (!(length_of(joint->work, k) > length + SAME_LENGTH))
            continue;
        steps++;
        for (int more = 0; more <= MORE_STEPS; more++)
            add_screws(joint, type, size, length_words(joint->work, k), count + more, steps);
    }
}

static void add_bolts(const struct joint_slot *joint) {
    static const char *const sizes[] = {"1/4 in", "5/16 in"};
    for (int k = 0; k < 2; k++)
        for (int count = 1; count <= 2; count++)
            add(joint,
                arena_print(joint->work->arena, "use %s %s %s with washers",
                            number_words(joint->work->arena, count), sizes[k],
                            count == 1 ? "bolt" : "bolts"),
                arena_print(joint->work->arena, "type: screwed-lap, bolt: %s, count: %d", sizes[k],
                            count),
                count * (1.0 + 0.1 * k) * effort_of("fix-bolt"));
}

static void add_blocks(const struct joint_slot *joint) {
    for (int k = 4; k <= 6; k++)
        for (int count = 2; count <= 3; count++)
            add(joint,
                arena_print(joint->work->arena,
                            "set the end on a block, %s No.8 screws %s long through it",
                            number_words(joint->work->arena, count), length_words(joint->work, k)),
                arena_print(joint->work->arena, "type: cleat, screw: 8, length: %s, count: %d",
                            length_words(joint->work, k), count),
                effort_of("fix-cleat") + 2.0 * count * effort_of("fix-screw") +
                    (k - 4) * effort_of("fix-screw-length"));
}

static void add_plates(const struct joint_slot *joint) {
    for (int plates = 1; plates <= 2; plates++)
        for (int count = 3; count <= 5; count++)
            add(joint,
                arena_print(joint->work->arena,
                            "screw a 1/2 in plywood gusset over %s, %s No.8 screws %s long in "
                            "each stick",
                            plates == 1 ? "one side" : "both sides",
                            number_words(joint->work->arena, count), length_words(joint->work, 2)),
                arena_print(joint->work->arena,
                            "type: gusset, sheet: plywood-1/2in, plates: %d, screw: 8, length: %s, "
                            "count: %d",
                            plates, length_words(joint->work, 2), count),
                plates * (effort_of("fix-gusset") + 2.0 * count * effort_of("fix-screw")));
}

static void add_angles(const struct joint_slot *joint) {
    for (int k = 0; k <= 2; k += 2)
        for (int count = 2; count <= 3; count++)
            add(joint,
                arena_print(joint->work->arena,
                            "use a steel angle, %s No.8 screws %s long in each leg",
                            number_words(joint->work->arena, count), length_words(joint->work, k)),
                arena_print(joint->work->arena, "type: bracket, screw: 8, length: %s, count: %d",
                            length_words(joint->work, k), count),
                effort_of("fix-bracket") + 2.0 * count * effort_of("fix-screw") +
                    k * effort_of("fix-screw-length"));
}

static void add_joints(struct work *work, const char *name, const struct connection *now,
                       size_t ends) {
    enum connection_type type = now ? now->type : CONNECTION_SCREWED_LAP;
    const char *rest = "";
    if (type == CONNECTION_PINNED || type == CONNECTION_RIGID || type == CONNECTION_SPRINGS ||
        type == CONNECTION_HINGE)
        return;
    if (now && now->metal != METAL_NOT_SAID)
        rest = arena_print(work->arena, ", metal: %s", METALS[now->metal]);
    struct choice *slot = choice_new(work, CHANGE_JOINT, -1, -1);
    if (!slot)
        return;
    slot->connection = name;
    struct joint_slot joint = {work, slot, name, now, ends, rest};
    bool beside = type == CONNECTION_SCREWED_LAP || type == CONNECTION_GLUED_LAP;
    if (beside || type == CONNECTION_SCREWED_BUTT)
        add_laps(&joint, beside ? "screwed-lap" : "screwed-butt");
    if (beside)
        add_bolts(&joint);
    add_blocks(&joint);
    add_plates(&joint);
    add_angles(&joint);
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
