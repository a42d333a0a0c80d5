#include "frame/sections.h"
#include "units/quote.h"

#include <math.h>

#define FARTHEST 1e4 /* m from the origin: more means that the unit was forgotten */

static const char expected[] = "[x, y, z], or [x, z] in a plane frame";

/* True where two numbers were given. */
static bool read_point(struct reader *reader, const struct node *node, double at[3]) {
    if (!is_list(reader, node, expected))
        return false;
    if (node->count != 2 && node->count != 3) {
        trouble(reader, node, "a list of %d; expected %s", node->count, expected);
        return false;
    }
    bool plane = node->count == 2;
    int axis = 0;
    for (const struct node *each = node->first; each; each = each->next) {
        double value = 0;
        if (read_quantity(reader, each, QUANTITY_LENGTH, ANY_SIZE, &value) &&
            !(fabs(value) <= FARTHEST))
            trouble(reader, each, "%s is too far from the origin; was another unit meant?",
                    quote_text(reader->arena, each->text));
        at[axis] = value;
        axis += plane ? 2 : 1;
    }
    return plane;
}

static bool read_joint(struct reader *reader, const struct node *entry) {
    check_name(reader, entry);
    struct joint joint = {.name = entry->key, .place = entry->key_place, .host = -1};
    bool plane = false;
    if (entry->kind == NODE_MAP) {
        only_keys(reader, entry, KEYS("at", "host"));
        const struct node *at = node_child(entry, "at");
        if (at)
            plane = read_point(reader, at, joint.at);
        else
            trouble_missing(reader, entry, "at", expected);
    } else {
        plane = read_point(reader, entry, joint.at);
    }
    ARRAY_PUSH(reader->arena, &reader->frame->joints, joint);
    name_index_add(reader->arena, &reader->joints, entry->key);
    return plane;
}

void read_joints(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "joints by name"))
        return;
    bool plane = section->count > 0;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next)
        plane &= read_joint(reader, entry);
    reader->frame->plane = plane;
}

void read_hosts(struct reader *reader, const struct node *joints) {
    if (joints->kind != NODE_MAP)
        return;
    for (const struct node *entry = joints->first; entry && !told_enough(reader);
         entry = entry->next) {
        const struct node *host = node_child(entry, "host");
        int joint = host ? name_index_find(&reader->joints, entry->key) : -1;
        if (joint >= 0)
            reader->frame->joints.items[joint].host =
                read_made_name(reader, host, "member", &reader->members);
    }
}
