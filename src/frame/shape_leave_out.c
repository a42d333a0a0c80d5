#include "frame/geometry.h"
#include "frame/shape_making.h"
#include "units/quote.h"

#include <string.h>

/* ---- members ---- */

static void tell_unknown(struct making *making, const struct node *node) {
    struct reader *reader = making->reader;
    const struct name_index *names = &making->sections[MADE_MEMBERS].names;
    trouble(reader, node, "the shape makes no member named %s%s",
            quote_text(reader->arena, node->text),
            hint(reader, node->text, "it makes", names->items, names->count));
}

static void leave_out(struct making *making, const struct node *node) {
    struct made_section *members = &making->sections[MADE_MEMBERS];
    int number = name_index_find(&members->names, node->text);
    if (number < 0)
        tell_unknown(making, node);
    else if (!members->entries.items[number])
        trouble(making->reader, node, "%s is given twice",
                quote_text(making->reader->arena, node->text));
    else
        members->entries.items[number] = NULL;
}

/* ---- joints that stay behind ---- */

/* The made joint that an end of a member names, -1 where it is none. */
static int end_of(const struct making *making, const struct node *member, const char *key) {
    const struct node *end = node_child(member, key);
    return end && end->kind == NODE_TEXT
               ? name_index_find(&making->sections[MADE_JOINTS].names, end->text)
               : -1;
}

static bool passes(const struct making *making, const struct node *member, size_t joint) {
    const double(*places)[3] = (const double(*)[3])making->places.items;
    int from = end_of(making, member, "from"), to = end_of(making, member, "to");
    return distance_to_piece(places[joint], places[from], places[to]) <= SAME_PLACE;
}

/* True where one of the members that remain ends at the joint or passes it. */
static bool reached(const struct making *making, size_t joint) {
    const struct made_section *members = &making->sections[MADE_MEMBERS];
    for (size_t k = 0; k < members->entries.count; k++)
        if (members->entries.items[k] && passes(making, members->entries.items[k], joint))
            return true;
    const struct node *own = node_child(making->root, "members");
    for (const struct node *each = own ? own->first : NULL; each; each = each->next)
        if (passes(making, each, joint))
            return true;
    return false;
}

/* True where every member of the file's own runs between made joints: else it cannot be told here
 * what it passes. */
static bool own_members_known(const struct making *making) {
    const struct node *own = node_child(making->root, "members");
    for (const struct node *each = own ? own->first : NULL; each; each = each->next)
        if (end_of(making, each, "from") < 0 || end_of(making, each, "to") < 0)
            return false;
    return true;
}

/* A joint, and its foot, go with the last stick there, unless the file speaks of it. */
static void drop_joint(struct making *making, size_t joint) {
    struct made_section *joints = &making->sections[MADE_JOINTS];
    struct made_section *supports = &making->sections[MADE_SUPPORTS];
    const char *name = joints->names.items[joint];
    if (node_child(node_child(making->root, "joints"), name) ||
        node_child(node_child(making->root, "supports"), name))
        return;
    joints->entries.items[joint] = NULL;
    int foot = name_index_find(&supports->names, name);
    if (foot >= 0)
        supports->entries.items[foot] = NULL;
}

static void drop_joints(struct making *making, const struct node *member) {
    static const char *const keys[] = {"from", "to"};
    for (int k = 0; k < 2; k++) {
        int joint = end_of(making, member, keys[k]);
        if (!reached(making, (size_t)joint))
            drop_joint(making, (size_t)joint);
    }
}

void make_leave_out(struct making *making) {
    const struct shape_values *shape = making->shape;
    struct made_section *members = &making->sections[MADE_MEMBERS];
    size_t count = members->entries.count;
    struct node **before = ARENA_ARRAY(making->reader->arena, struct node *, count);
    memcpy(before, members->entries.items, count * sizeof *before);
    for (size_t k = 0; k < shape->leave_out.count; k++)
        leave_out(making, shape->leave_out.items[k]);
    if (!own_members_known(making))
        return;
    for (size_t k = 0; k < count; k++)
        if (!members->entries.items[k])
            drop_joints(making, before[k]);
}
