#include "frame/sections.h"
#include "units/quote.h"

#include <string.h>

/* A connection by name; `default` is one where the file has it. */
static int read_end(struct reader *reader, const struct node *node) {
    if (node->kind == NODE_TEXT && strcmp(node->text, "default") == 0) {
        if (reader->frame->default_connection < 0)
            trouble(reader, node, "there is no 'default' under connections");
        return reader->frame->default_connection;
    }
    return read_name(reader, node, "connection", &reader->connections);
}

static void read_ends(struct reader *reader, const struct node *node, int ends[2]) {
    if (node->kind != NODE_LIST) {
        ends[0] = ends[1] = read_end(reader, node);
        return;
    }
    if (node->count != 2) {
        trouble(reader, node,
                "a list of %d; expected one connection for both ends or two, "
                "[from-end, to-end]",
                node->count);
        return;
    }
    ends[0] = read_end(reader, node->first);
    ends[1] = read_end(reader, node->first->next);
}

static int read_joint_of(struct reader *reader, const struct node *entry, const char *key) {
    const struct node *node = node_child(entry, key);
    if (node)
        return read_made_name(reader, node, "joint", &reader->joints);
    trouble_missing(reader, entry, key, "the name of a joint");
    return -1;
}

static void read_member_keys(struct reader *reader, const struct node *entry,
                             struct member *member) {
    only_keys(reader, entry,
              KEYS("from", "to", "stick", "ends", "acts-as", "held-along", "repetitive", "stands",
                   "faces", "turn", "length"));
    member->from = read_joint_of(reader, entry, "from");
    member->to = read_joint_of(reader, entry, "to");
    if (member->from >= 0 && member->from == member->to)
        trouble(reader, node_child(entry, "to"), "a member of no length: it starts and ends at %s",
                quote_text(reader->arena, reader->joints.items[member->to]));
    const struct node *stick = node_child(entry, "stick");
    if (stick)
        member->stick = read_name(reader, stick, "stick", &reader->sticks);
    else
        trouble_missing(reader, entry, "stick", "a name from 'sticks'");
    const struct node *ends = node_child(entry, "ends");
    if (ends)
        read_ends(reader, ends, member->ends);
    const struct node *acts = node_child(entry, "acts-as");
    if (acts) {
        int word = read_word(reader, acts, "a way for a member to act", KEYS("brace", "tie"));
        member->acts_as = word == 0 ? ACTS_AS_BRACE : word == 1 ? ACTS_AS_TIE : ACTS_AS_MEMBER;
    }
    optional_yes_no(reader, entry, "held-along", &member->held_along);
    optional_yes_no(reader, entry, "repetitive", &member->repetitive);
    read_stance(reader, entry, &member->stands, &member->faces, &member->turn);
    optional_quantity(reader, entry, "length", QUANTITY_LENGTH, OVER_ZERO, &member->length);
}

void read_members(struct reader *reader, const struct node *section) {
    if (!is_map(reader, section, "members by name"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next) {
        check_name(reader, entry);
        struct member member = {.name = entry->key,
                                .place = entry->key_place,
                                .from = -1,
                                .to = -1,
                                .stick = -1,
                                .ends = {-1, -1}};
        if (is_map(reader, entry, "a member such as {from: a, to: b, stick: rail}"))
            read_member_keys(reader, entry, &member);
        ARRAY_PUSH(reader->arena, &reader->frame->members, member);
        name_index_add(reader->arena, &reader->members, entry->key);
    }
}
