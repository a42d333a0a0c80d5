#include "frame/node_make.h"
#include "frame/shape_making.h"
#include "units/decimal.h"
#include "units/unit.h"

enum { DECIMALS = 10 }; /* of an inch or a millimetre: hides the last bits of sums */

static const char *side_letter(enum side side) {
    return side == SIDE_FRONT ? "f" : "b";
}

/* "l", "r", or the number of a middle post and a dash. */
static const char *column_mark(const struct making *making, size_t column, const char *after) {
    if (column == 0)
        return "l";
    if (column + 1 == making->layout.column_count)
        return "r";
    return arena_print(making->reader->arena, "%zu%s", column, after);
}

const char *post_joint(const struct making *making, enum side side, size_t column, size_t level) {
    return arena_print(making->reader->arena, "%s%s%zu", side_letter(side),
                       column_mark(making, column, "-"), level);
}

const char *ridge_joint(const struct making *making, size_t column) {
    return arena_print(making->reader->arena, "r%s", column_mark(making, column, ""));
}

const char *middle_joint(const struct making *making, size_t column, int rail, size_t level) {
    bool middle = column > 0 && column + 1 < making->layout.column_count;
    return arena_print(making->reader->arena, "%s%s%d-%zu", middle ? "m" : "",
                       column_mark(making, column, "-"), rail, level);
}

static const char *number(const struct making *making, double length) {
    const struct unit *unit = unit_default(QUANTITY_LENGTH, making->reader->frame->units);
    return decimal_fixed(making->reader->arena, length / unit->factor, DECIMALS);
}

static void add_joint(struct making *making, const char *name, struct place place, double x,
                      double y, double z) {
    struct arena *arena = making->reader->arena;
    const char *at[3] = {number(making, x), number(making, y), number(making, z)};
    made_add(making, MADE_JOINTS, node_list(arena, name, place, at, 3));
    making->places.items = arena_grow(arena, making->places.items, making->places.count,
                                      &making->places.capacity, sizeof *making->places.items);
    double *kept = making->places.items[making->places.count++];
    kept[0] = x;
    kept[1] = y;
    kept[2] = z;
}

/* The two corners, then the middle posts from the left. */
static size_t corners_first(const struct layout *layout, size_t number) {
    if (number < 2)
        return number ? layout->column_count - 1 : 0;
    return number - 1;
}

static void add_at_level(struct making *making, enum side side, size_t column, size_t number) {
    const struct layout *layout = &making->layout;
    const struct level *level = &layout->levels[number];
    if (number == 0 || level->rail[side])
        add_joint(making, post_joint(making, side, column, number), level->place,
                  layout->columns[column].x, layout->y[side], level->z[side]);
}

static void add_level_joints(struct making *making, size_t level) {
    for (enum side side = SIDE_FRONT; side < SIDES; side++)
        for (size_t corner = 0; corner < 2; corner++)
            add_at_level(making, side, corners_first(&making->layout, corner), level);
    for (size_t column = 1; column + 1 < making->layout.column_count; column++)
        for (enum side side = SIDE_FRONT; side < SIDES; side++)
            add_at_level(making, side, column, level);
}

static void add_ridge_joints(struct making *making) {
    const struct layout *layout = &making->layout;
    for (size_t k = 0; k < layout->column_count; k++) {
        size_t column = corners_first(layout, k);
        if (layout->columns[column].sloped)
            add_joint(making, ridge_joint(making, column), making->map->key_place,
                      layout->columns[column].x, layout->ridge_y, layout->ridge_z);
    }
}

/* Where middle rails lie on the rails that run from front to back. */
static void add_middle_joints(struct making *making, size_t number) {
    const struct layout *layout = &making->layout;
    const struct level *level = &layout->levels[number];
    int across = making->shape->rails_across;
    double step = (layout->y[SIDE_BACK] - layout->y[SIDE_FRONT]) / (across - 1);
    for (int rail = 2; level->shelf && rail < across; rail++)
        for (size_t k = 0; k < layout->column_count; k++) {
            size_t column = corners_first(layout, k);
            add_joint(making, middle_joint(making, column, rail, number), level->place,
                      layout->columns[column].x, layout->y[SIDE_FRONT] + (rail - 1) * step,
                      level->z[SIDE_FRONT]);
        }
}

void make_joints(struct making *making) {
    const struct layout *layout = &making->layout;
    for (size_t level = 0; level < layout->level_count; level++)
        add_level_joints(making, level);
    add_ridge_joints(making);
    for (size_t level = 1; level < layout->level_count; level++)
        add_middle_joints(making, level);
}

static void add_foot(struct making *making, enum side side, size_t column) {
    struct arena *arena = making->reader->arena;
    const char *joint = post_joint(making, side, column, 0);
    const struct node *feet = node_child(making->map, "feet");
    struct node *entry;
    if (feet) {
        entry = node_new(arena, NODE_MAP, joint, feet->place);
        node_add(entry, node_copy(arena, feet, "foot"));
    } else {
        entry = node_text(arena, joint, "foot", making->map->key_place);
    }
    made_add(making, MADE_SUPPORTS, entry);
}

void make_feet(struct making *making) {
    for (enum side side = SIDE_FRONT; side < SIDES; side++)
        for (size_t corner = 0; corner < 2; corner++)
            add_foot(making, side, corners_first(&making->layout, corner));
    for (size_t column = 1; column + 1 < making->layout.column_count; column++)
        for (enum side side = SIDE_FRONT; side < SIDES; side++)
            add_foot(making, side, column);
}
