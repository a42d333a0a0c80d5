#include "frame/shape_read.h"

#include "frame/sections.h"
#include "units/quote.h"

#include <string.h>

#define PI 3.14159265358979323846

enum { MOST_MIDDLE_POSTS = 100, MOST_FRAMES = 200, MOST_ACROSS = 50 };

/* ORDER SHAPE */
static const char *const kind_names[] = {"stand", "lean-to", "gable", "bench", "cold-frame"};

/* What every kind takes, then the own keys of one kind. */
static void check_keys(struct reader *reader, const struct node *map, enum shape_kind kind) {
    static const char *const common[] = {
        "kind",   "wide",   "deep",      "high",         "measured",     "posts",
        "rails",  "slopes", "diagonals", "laps",         "ends",         "feet",
        "covers", "sheet",  "braces",    "bottom-rails", "middle-posts", "leave-out"};
    static const char *const shelved[] = {"shelves", "rails-across", "deck", "trays", "standing"};
    static const char *const own[][2] = {{NULL, NULL},
                                         {"front-high", NULL},
                                         {"eave-high", "frames"},
                                         {"under", "back-rail"},
                                         {"front-high", "lid"}};
    enum {
        COMMON = sizeof common / sizeof common[0],
        SHELVED = sizeof shelved / sizeof shelved[0]
    };
    const char *all[COMMON + SHELVED + 2];
    size_t count = 0;
    for (size_t k = 0; k < COMMON; k++)
        all[count++] = common[k];
    for (size_t k = 0; k < SHELVED && kind != SHAPE_COLD_FRAME; k++)
        all[count++] = shelved[k];
    for (size_t k = 0; k < 2; k++)
        if (own[kind][k])
            all[count++] = own[kind][k];
    for (const struct node *child = map->first; child; child = child->next) {
        bool known = false;
        for (size_t k = 0; k < count; k++)
            known |= strcmp(child->key, all[k]) == 0;
        if (!known)
            trouble_with_key(reader, child, "a %s has no key %s%s", kind_names[kind],
                             quote_text(reader->arena, child->key),
                             hint(reader, child->key, "known here:", all, count));
    }
}

/* A stick by name; where it is not named, the one called `usual`. */
static int read_stick_of(struct reader *reader, const struct node *map, const char *key,
                         const char *usual) {
    const struct node *node = node_child(map, key);
    if (node)
        return read_name(reader, node, "stick", &reader->sticks);
    int stick = name_index_find(&reader->sticks, usual);
    if (stick < 0)
        trouble_at(reader, map->key_place,
                   arena_print(reader->arena, "%s.%s", node_path(reader->arena, map), key),
                   "'%s' is missing, and no stick is named '%s'", key, usual);
    return stick;
}

static void read_shape_sticks(struct reader *reader, const struct node *map,
                              struct shape_values *shape) {
    shape->posts = read_stick_of(reader, map, "posts", "post");
    shape->rails = read_stick_of(reader, map, "rails", "rail");
    const struct node *slopes = node_child(map, "slopes");
    const struct node *diagonals = node_child(map, "diagonals");
    shape->slopes = slopes ? read_name(reader, slopes, "stick", &reader->sticks) : shape->rails;
    shape->diagonals =
        diagonals ? read_name(reader, diagonals, "stick", &reader->sticks) : shape->rails;
}

static void read_heights(struct reader *reader, const struct node *map,
                         struct shape_values *shape) {
    required_quantity(reader, map, "wide", QUANTITY_LENGTH, OVER_ZERO, &shape->wide);
    required_quantity(reader, map, "deep", QUANTITY_LENGTH, OVER_ZERO, &shape->deep);
    required_quantity(reader, map, "high", QUANTITY_LENGTH, OVER_ZERO, &shape->high);
    shape->low = shape->high;
    if (shape->kind == SHAPE_LEAN_TO || shape->kind == SHAPE_COLD_FRAME)
        required_quantity(reader, map, "front-high", QUANTITY_LENGTH, OVER_ZERO, &shape->low);
    if (shape->kind == SHAPE_GABLE)
        required_quantity(reader, map, "eave-high", QUANTITY_LENGTH, OVER_ZERO, &shape->low);
    if (shape->kind == SHAPE_BENCH) {
        optional_quantity(reader, map, "under", QUANTITY_LENGTH, OVER_ZERO, &shape->under);
        optional_quantity(reader, map, "back-rail", QUANTITY_LENGTH, OVER_ZERO, &shape->back_rail);
    }
    optional_quantity(reader, map, "bottom-rails", QUANTITY_LENGTH, OVER_ZERO,
                      &shape->bottom_rails);
}

static void read_numbers(struct reader *reader, const struct node *map,
                         struct shape_values *shape) {
    const struct node *middle = node_child(map, "middle-posts");
    const struct node *across = node_child(map, "rails-across");
    const struct node *frames = node_child(map, "frames");
    if (middle)
        read_whole(reader, middle, 0, MOST_MIDDLE_POSTS, &shape->middle_posts);
    if (across && shape->kind != SHAPE_COLD_FRAME)
        read_whole(reader, across, 2, MOST_ACROSS, &shape->rails_across);
    if (frames && shape->kind == SHAPE_GABLE)
        read_whole(reader, frames, 2, MOST_FRAMES, &shape->frames);
}

static void read_ways(struct reader *reader, const struct node *map, struct shape_values *shape) {
    const struct node *measured = node_child(map, "measured");
    const struct node *laps = node_child(map, "laps");
    const struct node *ends = node_child(map, "ends");
    const struct node *feet = node_child(map, "feet");
    if (measured)
        shape->measured_axes =
            read_word(reader, measured, "a way to measure", KEYS("outside", "axes")) == 1;
    if (laps)
        shape->laps_inside =
            read_word(reader, laps, "a side to lap on", KEYS("outside", "inside")) == 1;
    if (ends)
        shape->ends = read_name(reader, ends, "connection", &reader->connections);
    if (feet) {
        shape->feet_given = true;
        read_foot(reader, feet, &shape->foot);
    }
}

static void read_goods(struct reader *reader, const struct node *map, struct shape_values *shape) {
    const struct node *deck = node_child(map, "deck");
    const struct node *trays = node_child(map, "trays");
    const struct node *standing = node_child(map, "standing");
    if (shape->kind == SHAPE_COLD_FRAME)
        return;
    if (deck)
        read_deck(reader, deck, &shape->on_each);
    if (trays)
        read_trays(reader, trays, &shape->on_each);
    if (standing)
        read_standing(reader, standing, &shape->on_each);
    read_shape_shelves(reader, map, shape);
}

static void read_lid(struct reader *reader, const struct node *map, struct shape_values *shape) {
    const struct node *lid = node_child(map, "lid");
    if (!lid || shape->kind != SHAPE_COLD_FRAME ||
        !is_map(reader, lid, "{framed: rail, opens: 40 deg}"))
        return;
    only_keys(reader, lid, KEYS("framed", "opens", "stay", "weight"));
    const struct node *framed = node_child(lid, "framed");
    const struct node *opens = node_child(lid, "opens");
    if (framed)
        shape->lid.framed = read_name(reader, framed, "stick", &reader->sticks);
    if (opens)
        read_opens(reader, opens, &shape->lid.opens, &shape->lid.opens_angle);
    optional_yes_no(reader, lid, "stay", &shape->lid.stay);
    optional_quantity(reader, lid, "weight", QUANTITY_WEIGHT, NOT_NEGATIVE, &shape->lid.weight);
}

static struct shape_values *new_shape(struct arena *arena) {
    struct shape_values *shape = ARENA_NEW(arena, struct shape_values);
    shape->posts = shape->rails = shape->slopes = shape->diagonals = -1;
    shape->rails_across = 2;
    shape->ends = shape->sheet = -1;
    shape->foot =
        (struct support){.joint = -1, .ground = -1, .foot = true, .held = {true, true, true}};
    shape->on_each = (struct shelf){.name = "", .slat = -1, .sheet = -1, .tray = -1};
    shape->lid.framed = -1;
    shape->lid.opens = true;
    shape->lid.opens_angle = PI / 3;
    return shape;
}

void read_leave_out(struct reader *reader, const struct node *list, struct shape_values *shape) {
    if (!is_list(reader, list, "a list of made members, such as [brace-back-1]"))
        return;
    for (const struct node *each = list->first; each && !told_enough(reader); each = each->next) {
        if (read_text(reader, each, "the name of a made member"))
            ARRAY_PUSH(reader->arena, &shape->leave_out, each);
    }
}

bool read_shape(struct reader *reader, const struct node *section) {
    struct frame *frame = reader->frame;
    frame->shape.given = true;
    frame->shape.place = section->key_place;
    frame->shape.values = new_shape(reader->arena);
    struct shape_values *shape = frame->shape.values;
    const struct node *kind = node_child(section, "kind");
    if (!is_map(reader, section, "a shape such as {kind: lean-to, wide: 36 in, ...}"))
        return false;
    if (!kind)
        trouble_missing(reader, section, "kind", "stand, lean-to, gable, bench or cold-frame");
    int number =
        kind ? read_word(reader, kind, "a kind of shape", (struct key_list){kind_names, 5}) : -1;
    if (number < 0)
        return false; /* what else belongs to it depends on the kind */
    size_t before = reader->problems->count;
    shape->kind = (enum shape_kind)number;
    check_keys(reader, section, shape->kind);
    read_heights(reader, section, shape);
    read_shape_sticks(reader, section, shape);
    read_numbers(reader, section, shape);
    read_ways(reader, section, shape);
    read_goods(reader, section, shape);
    read_lid(reader, section, shape);
    read_shape_covers(reader, section, shape);
    read_shape_braces(reader, section, shape);
    const struct node *leave_out = node_child(section, "leave-out");
    const struct node *beside = node_child(section->parent, "leave-out");
    if (leave_out)
        read_leave_out(reader, leave_out, shape);
    if (beside)
        read_leave_out(reader, beside, shape);
    return reader->whole_tree && reader->problems->count == before &&
           check_shape(reader, section, shape);
}
