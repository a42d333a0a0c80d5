#include "frame/frame.h"

#include "frame/frame_check.h"
#include "frame/input_guard.h"
#include "frame/sections.h"
#include "frame/shape_build.h"
#include "frame/tree.h"
#include "frame/utf8.h"
#include "units/quote.h"

#include <string.h>

enum {
    MOST_ENTRIES = 5000,
    MOST_ENTRIES_LARGE = 200000,
    MOST_VALUES = 400000,
    MOST_VALUES_LARGE = 4000000, /* more than INPUT_BYTES can hold */
    MOST_COMPARISONS = 100000,
    LONGEST_TITLE = 200
};

static void read_version(struct reader *reader, const struct node *root) {
    const struct node *node = node_child(root, "batten");
    if (!node) {
        trouble_missing(reader, root, "batten", "the line 'batten: 1' at the start of the file");
        return;
    }
    const char *text = read_text(reader, node, "the format's version, 1");
    if (text && strcmp(text, "1") != 0)
        trouble(reader, node, "%s: this program reads version 1 of the format",
                quote_text(reader->arena, text));
}

static void read_title(struct reader *reader, const struct node *root) {
    const struct node *node = node_child(root, "title");
    const char *text = "";
    if (node && node->kind == NODE_TEXT)
        text = node->text;
    else if (node)
        read_text(reader, node, "a line of text");
    size_t length = strlen(text);
    if (length > LONGEST_TITLE)
        trouble(reader, node, "a title of %zu bytes; at most %d are allowed", length,
                LONGEST_TITLE);
    for (size_t at = 0; at < length;) {
        long code = 0;
        size_t size = utf8_decode(text + at, length - at, &code);
        if (size == 0 || !utf8_printable(code)) {
            trouble(reader, node, "a title is one line of printable text; U+%04lX is not", code);
            return;
        }
        at += size;
    }
    reader->frame->title = text;
}

static void read_head(struct reader *reader, const struct node *root) {
    read_version(reader, root);
    read_title(reader, root);
    const struct node *units = node_child(root, "units");
    if (units && read_word(reader, units, "a system of units", KEYS("us", "si")) == 1)
        reader->frame->units = UNITS_SI;
    optional_yes_no(reader, root, "self-weight", &reader->frame->self_weight);
}

/* The section's node, or NULL after telling that a frame needs it. */
static const struct node *needed(struct reader *reader, const struct node *root, const char *key,
                                 const char *expected) {
    const struct node *node = node_child(root, key);
    if (!node && !reader->made_names)
        trouble_missing(reader, root, key, expected);
    return node;
}

/* Places and pieces; true where every one of them reads well, so that their geometry can be
 * looked at. */
static bool read_pieces(struct reader *reader, const struct node *root) {
    const struct node *joints = needed(reader, root, "joints", "the points where sticks meet");
    const struct node *members = needed(reader, root, "members", "the sticks between the joints");
    size_t before = reader->problems->count;
    if (joints)
        read_joints(reader, joints);
    if (members)
        read_members(reader, members);
    if (joints)
        read_hosts(reader, joints);
    if (joints && joints->kind == NODE_MAP && joints->count == 0 && !reader->made_names)
        trouble(reader, joints, "no joint is given");
    if (members && members->kind == NODE_MAP && members->count == 0 && !reader->made_names)
        trouble(reader, members, "no member is given");
    return joints && members && reader->whole_tree && reader->problems->count == before &&
           !reader->made_names;
}

static void read_support_section(struct reader *reader, const struct node *root) {
    const struct node *supports =
        needed(reader, root, "supports", "what holds the frame up, such as 'a: foot'");
    if (!supports)
        return;
    read_supports(reader, supports);
    if (supports->kind == NODE_MAP && supports->count == 0 && !reader->made_names)
        trouble(reader, supports, "nothing holds the frame up; expected such as 'a: foot'");
}

static void read_optional(struct reader *reader, const struct node *root, const char *key,
                          void (*read)(struct reader *reader, const struct node *section)) {
    const struct node *node = node_child(root, key);
    if (node)
        read(reader, node);
}

/* `sound`: joints and members are good, so lengths and directions can be used. */
static void check_shapes(struct reader *reader, bool sound) {
    if (!sound)
        return;
    if (!check_joints_apart(reader))
        return;
    check_joints_reached(reader);
    check_hosts(reader);
    check_member_pairs(reader);
    check_crossings(reader);
    const struct frame *frame = reader->frame;
    for (size_t k = 0; k < frame->shelves.count; k++)
        check_shelf(reader, &frame->shelves.items[k]);
    for (size_t k = 0; k < frame->panels.count; k++)
        check_panel(reader, &frame->panels.items[k]);
}

/* A case of the user's own acts only where `combine` names it. */
static void remark_idle_cases(struct reader *reader) {
    const struct frame *frame = reader->frame;
    for (size_t k = CASE_BUILT_IN; k < frame->cases.count; k++) {
        bool named = false;
        for (size_t c = 0; c < frame->combinations.count; c++)
            for (size_t p = 0; p < frame->combinations.items[c].part_count; p++)
                named |= frame->combinations.items[c].parts[p].load_case == (int)k;
        if (!named)
            caution(reader, "Load case %s is in no combination: it is solved, but judges nothing.",
                    frame->cases.items[k]);
    }
}

static void name_built_in_cases(struct reader *reader) {
    /* ORDER CASE_SELF ... */
    static const char *const names[CASE_BUILT_IN] = {"self",      "tray",       "snow",
                                                     "wind-left", "wind-right", "wind-front",
                                                     "wind-back", "push-x",     "push-y"};
    for (int k = 0; k < CASE_BUILT_IN; k++) {
        name_index_add(reader->arena, &reader->cases, names[k]);
        ARRAY_PUSH(reader->arena, &reader->frame->cases, names[k]);
    }
}

static void read_root(struct reader *reader, struct node *root) {
    only_keys(reader, root,
              KEYS("batten", "title", "units", "self-weight", "sticks", "joints", "members",
                   "connections", "supports", "shelves", "panels", "site", "limits", "prices",
                   "parts", "keep-open", "loads", "combine", "shape", "leave-out"));
    read_head(reader, root);
    const struct node *shape = node_child(root, "shape");
    const struct node *sticks = node_child(root, "sticks");
    if (sticks)
        read_sticks(reader, sticks);
    else
        trouble_missing(reader, root, "sticks", "the kinds of lumber, by names of your own");
    read_connections(reader, node_child(root, "connections"));
    if (shape)
        reader->made_names = !(read_shape(reader, shape) && shape_build(reader, root));
    else if (node_child(root, "leave-out"))
        trouble_with_key(reader, node_child(root, "leave-out"),
                         "'leave-out' goes with a 'shape', which is not given");
    bool sound = read_pieces(reader, root);
    read_support_section(reader, root);
    read_optional(reader, root, "shelves", read_shelves);
    read_optional(reader, root, "panels", read_panels);
    read_optional(reader, root, "site", read_site);
    read_optional(reader, root, "limits", read_limits);
    read_optional(reader, root, "prices", read_prices);
    read_optional(reader, root, "parts", read_parts);
    read_optional(reader, root, "keep-open", read_keep_open);
    read_optional(reader, root, "loads", read_loads);
    read_optional(reader, root, "combine", read_combine);
    check_shapes(reader, sound);
    remark_idle_cases(reader);
}

static struct frame *new_frame(struct arena *arena) {
    struct frame *frame = ARENA_NEW(arena, struct frame);
    frame->arena = arena;
    frame->title = "";
    frame->self_weight = true;
    frame->tray_share = 1.0;
    frame->default_connection = -1;
    frame->site.snow_kind = -1;
    frame->site.wind_word = -1;
    frame->limits.shelf_sag.divisor = 240;
    frame->limits.roof_sag.divisor = 180;
    frame->limits.lean.divisor = 100;
    return frame;
}

static struct tree_limits limits_of(struct frame_limits limits) {
    return (struct tree_limits){limits.large ? MOST_ENTRIES_LARGE : MOST_ENTRIES,
                                limits.large ? MOST_VALUES_LARGE : MOST_VALUES};
}

struct frame *frame_of_tree(struct arena *arena, struct node *root, struct frame_limits limits,
                            struct problems *problems) {
    struct reader reader = {.arena = arena,
                            .problems = problems,
                            .frame = new_frame(arena),
                            .whole_tree = problems->count == 0,
                            .most_entries = limits_of(limits).entries,
                            .comparisons_left = MOST_COMPARISONS};
    reader.frame->tree = root;
    reader.frame->solver = limits.solver;
    name_built_in_cases(&reader);
    if (is_map(&reader, root, "keys such as 'batten: 1'"))
        read_root(&reader, root);
    return problems->count == 0 ? reader.frame : NULL;
}

struct frame *frame_read(struct arena *arena, const char *bytes, size_t length,
                         struct frame_limits limits, struct problems *problems) {
    if (!input_guard(bytes, length, problems))
        return NULL;
    struct node *root = tree_read(arena, bytes, length, limits_of(limits), problems);
    return root ? frame_of_tree(arena, root, limits, problems) : NULL;
}
