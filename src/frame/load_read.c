#include "base/near.h"
#include "frame/geometry.h"
#include "frame/sections.h"
#include "units/quote.h"

#include <string.h>

enum { MOST_CASES = 200 };
#define ON_THE_STICK 1e-3 /* m: a load this far past the end still means the end */

/* The case of that name, made where it is new. A name close to a built-in one is remarked on. */
static int read_case(struct reader *reader, const struct node *load) {
    const struct node *node = node_child(load, "case");
    if (!node) {
        trouble_missing(reader, load, "case", "a case such as tray, snow or one of your own");
        return -1;
    }
    const char *text = read_text(reader, node, "the name of a load case");
    if (!text)
        return -1;
    int number = name_index_find(&reader->cases, text);
    if (number >= 0)
        return number;
    const char *wrong = wrong_name(reader, text);
    if (wrong)
        trouble(reader, node, "%s", wrong);
    if (reader->cases.count >= MOST_CASES) {
        trouble(reader, node, "more than %d load cases", MOST_CASES);
        return -1;
    }
    const char *near = near_name(text, reader->cases.items, CASE_BUILT_IN);
    if (near)
        caution(reader, "Load case %s is one of your own, not the built-in %s.", text, near);
    ARRAY_PUSH(reader->arena, &reader->frame->cases, text);
    return name_index_add(reader->arena, &reader->cases, text);
}

static void read_joint_load(struct reader *reader, const struct node *entry, struct load *load) {
    load->type = LOAD_JOINT;
    load->joint = read_made_name(reader, node_child(entry, "joint"), "joint", &reader->joints);
    const struct node *force = node_child(entry, "force");
    const struct node *moment = node_child(entry, "moment");
    if (!force && !moment)
        trouble_missing(reader, entry, "force", "[0, 0, -100 lb], or a moment");
    if (force)
        read_quantities(reader, force, QUANTITY_WEIGHT, 3, "three forces [x, y, z]", load->force);
    if (moment)
        read_quantities(reader, moment, QUANTITY_MOMENT, 3, "three moments [x, y, z]",
                        load->moment);
    static const char *const others[] = {"line", "point", "at"};
    for (size_t k = 0; k < 3; k++) {
        const struct node *node = node_child(entry, others[k]);
        if (node)
            trouble_with_key(reader, node, "'%s' is for a load on a member, not on a joint",
                             others[k]);
    }
}

static void read_at(struct reader *reader, const struct node *entry, struct load *load) {
    if (!required_quantity(reader, entry, "at", QUANTITY_LENGTH, NOT_NEGATIVE, &load->at))
        return;
    const struct frame *frame = reader->frame;
    if (load->member < 0 || frame->members.items[load->member].from < 0 ||
        frame->members.items[load->member].to < 0)
        return;
    double length = frame_member_length(frame, load->member);
    if (!(load->at <= length + ON_THE_STICK))
        trouble(reader, node_child(entry, "at"), "%s is past the end; the member is %s long",
                quote_text(reader->arena, node_child(entry, "at")->text),
                quantity_print(reader->arena, length, QUANTITY_LENGTH, frame->units));
    if (load->at > length)
        load->at = length;
}

static void read_member_load(struct reader *reader, const struct node *entry, struct load *load) {
    load->member = read_made_name(reader, node_child(entry, "member"), "member", &reader->members);
    const struct node *line = node_child(entry, "line");
    const struct node *point = node_child(entry, "point");
    const struct node *at = node_child(entry, "at");
    load->type = point ? LOAD_POINT : LOAD_LINE;
    if (line && point)
        trouble_with_key(reader, point, "'line' and 'point' are both given; give one");
    else if (line)
        read_quantities(reader, line, QUANTITY_LINE_LOAD, 3, "three line loads [x, y, z]",
                        load->force);
    else if (point)
        read_quantities(reader, point, QUANTITY_WEIGHT, 3, "three forces [x, y, z]", load->force);
    else
        trouble_missing(reader, entry, "line", "'line: [0, 0, -2 plf]', or 'point' and 'at'");
    if (point && !line)
        read_at(reader, entry, load);
    else if (at && !point)
        trouble_with_key(reader, at, "'at' goes with 'point'; a line load takes the whole length");
    static const char *const others[] = {"force", "moment"};
    for (size_t k = 0; k < 2; k++) {
        const struct node *node = node_child(entry, others[k]);
        if (node)
            trouble_with_key(reader, node, "'%s' is for a load on a joint, not on a member",
                             others[k]);
    }
}

static void read_load(struct reader *reader, const struct node *entry) {
    struct load load = {.place = entry->place, .joint = -1, .member = -1};
    if (!is_map(reader, entry, "a load such as {case: tray, joint: b, force: [0, 0, -100 lb]}"))
        return;
    only_keys(reader, entry,
              KEYS("case", "joint", "member", "force", "moment", "line", "point", "at"));
    load.load_case = read_case(reader, entry);
    const struct node *joint = node_child(entry, "joint");
    const struct node *member = node_child(entry, "member");
    if (joint && member)
        trouble_with_key(reader, member, "'joint' and 'member' are both given; give one");
    else if (joint)
        read_joint_load(reader, entry, &load);
    else if (member)
        read_member_load(reader, entry, &load);
    else
        trouble_missing(reader, entry, "joint", "'joint' or 'member': what the load acts on");
    ARRAY_PUSH(reader->arena, &reader->frame->loads, load);
}

void read_loads(struct reader *reader, const struct node *section) {
    if (!is_list(reader, section, "a list of loads, each line starting with '-'"))
        return;
    for (const struct node *entry = section->first; entry && !told_enough(reader);
         entry = entry->next)
        read_load(reader, entry);
}
