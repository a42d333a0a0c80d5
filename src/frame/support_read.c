#include "frame/sections.h"
#include "frame/table_names.h"
#include "units/quote.h"

static const char expected[] =
    "foot, pinned, fixed, a list such as [y, z], {foot: {on: paving}} or {in-ground: 24 in}";

static void hold(struct support *support, int directions) {
    for (int k = 0; k < directions; k++)
        support->held[k] = true;
}

static void read_support_word(struct reader *reader, const struct node *node,
                              struct support *support) {
    switch (read_word(reader, node, "a kind of support", KEYS("foot", "pinned", "fixed"))) {
    case 0:
        support->foot = true;
        hold(support, 3);
        break;
    case 1:
        hold(support, 3);
        break;
    case 2:
        hold(support, 6);
        break;
    default:
        break;
    }
}

static void read_directions(struct reader *reader, const struct node *node,
                            struct support *support) {
    if (node->count == 0)
        trouble(reader, node, "an empty list holds nothing; expected some of x, y, z, rx, ry, rz");
    for (const struct node *each = node->first; each && !told_enough(reader); each = each->next) {
        int direction =
            read_word(reader, each, "a direction", KEYS("x", "y", "z", "rx", "ry", "rz"));
        if (direction < 0)
            continue;
        if (support->held[direction])
            trouble(reader, each, "%s is given twice", quote_text(reader->arena, each->text));
        support->held[direction] = true;
    }
}

void read_foot(struct reader *reader, const struct node *node, struct support *support) {
    support->foot = true;
    hold(support, 3);
    if (!is_map(reader, node, "{on: paving, hold-down: 60 lb}"))
        return;
    only_keys(reader, node, KEYS("on", "hold-down"));
    const struct node *on = node_child(node, "on");
    if (on)
        support->ground = read_table_name(reader, on, NAMES_GROUNDS);
    optional_quantity(reader, node, "hold-down", QUANTITY_WEIGHT, NOT_NEGATIVE,
                      &support->hold_down);
}

static void read_support_map(struct reader *reader, const struct node *node,
                             struct support *support) {
    only_keys(reader, node, KEYS("foot", "in-ground"));
    const struct node *foot = node_child(node, "foot");
    const struct node *in_ground = node_child(node, "in-ground");
    if (foot && in_ground)
        trouble_with_key(reader, in_ground, "'foot' and 'in-ground' are both given; give one");
    else if (foot)
        read_foot(reader, foot, support);
    else if (in_ground && optional_quantity(reader, node, "in-ground", QUANTITY_LENGTH, OVER_ZERO,
                                            &support->in_ground))
        hold(support, 3);
    else if (node->count == 0)
        trouble(reader, node, "nothing is given; expected %s", expected);
}

static void read_support(struct reader *reader, const struct node *entry) {
    struct support support = {.place = entry->key_place, .joint = -1, .ground = -1};
    support.joint = name_index_find(&reader->joints, entry->key);
    if (support.joint < 0 && !reader->made_names)
        trouble_with_key(
            reader, entry, "no joint named %s%s", quote_text(reader->arena, entry->key),
            hint(reader, entry->key, "known:", reader->joints.items, reader->joints.count));
    if (entry->kind == NODE_LIST)
        read_directions(reader, entry, &support);
    else if (entry->kind == NODE_MAP)
        read_support_map(reader, entry, &support);
    else if (entry->kind == NODE_TEXT && !*entry->text)
        trouble(reader, entry, "nothing is given; expected %s", expected);
    else if (entry->kind == NODE_TEXT)
        read_support_word(reader, entry, &support);
    ARRAY_PUSH(reader->arena, &reader->frame->supports, support);
}

void read_supports(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "joints and what holds them, such as 'a: foot'"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next)
        read_support(reader, entry);
}
