#include "frame/node_make.h"
#include "frame/shape_making.h"

const char *middle_rail(const struct making *making, size_t level, int rail) {
    return arena_print(making->reader->arena, "mid-%zu-%d", level, rail);
}

const char *face_rail(const struct making *making, const char *face, size_t level) {
    return arena_print(making->reader->arena, "%s-%zu", face, level);
}

struct node *made_member(struct making *making, const char *name, const char *from, const char *to,
                         int stick, struct place place) {
    struct reader *reader = making->reader;
    struct node *entry = node_new(reader->arena, NODE_MAP, name, place);
    node_add(entry, node_text(reader->arena, "from", from, place));
    node_add(entry, node_text(reader->arena, "to", to, place));
    node_add(entry, node_text(reader->arena, "stick", reader->sticks.items[stick], place));
    made_add(making, MADE_MEMBERS, entry);
    return entry;
}

static size_t last_column(const struct making *making) {
    return making->layout.column_count - 1;
}

/* ---- posts ---- */

static const char *post_name(const struct making *making, enum side side, size_t column) {
    const char *letter = side == SIDE_FRONT ? "f" : "b";
    if (column == 0 || column == last_column(making))
        return arena_print(making->reader->arena, "post-%s%s", letter, column ? "r" : "l");
    return arena_print(making->reader->arena, "post-%s%zu", letter, column);
}

static size_t top_of(const struct layout *layout, enum side side) {
    return side == SIDE_FRONT ? layout->top : layout->level_count - 1;
}

static void make_post(struct making *making, enum side side, size_t column) {
    made_member(making, post_name(making, side, column), post_joint(making, side, column, 0),
                post_joint(making, side, column, top_of(&making->layout, side)),
                making->shape->posts, making->map->key_place);
}

static void make_posts(struct making *making) {
    for (enum side side = SIDE_FRONT; side < SIDES; side++) {
        make_post(making, side, 0);
        make_post(making, side, last_column(making));
    }
    for (size_t column = 1; column < last_column(making); column++)
        for (enum side side = SIDE_FRONT; side < SIDES; side++)
            make_post(making, side, column);
}

/* ---- rails ---- */

static void make_rail(struct making *making, const char *name, const char *from, const char *to,
                      struct place place) {
    struct node *rail = made_member(making, name, from, to, making->shape->rails, place);
    const struct node *ends = node_child(making->map, "ends");
    if (ends)
        node_add(rail, node_copy(making->reader->arena, ends, "ends"));
}

static void make_long_rail(struct making *making, enum side side, size_t level) {
    make_rail(making, face_rail(making, side == SIDE_FRONT ? "front" : "back", level),
              post_joint(making, side, 0, level),
              post_joint(making, side, last_column(making), level),
              making->layout.levels[level].place);
}

/* From the front to the back. */
static void make_short_rail(struct making *making, const char *name, size_t column, size_t level) {
    make_rail(making, name, post_joint(making, SIDE_FRONT, column, level),
              post_joint(making, SIDE_BACK, column, level), making->layout.levels[level].place);
}

static void make_end_rails(struct making *making, size_t level) {
    make_short_rail(making, face_rail(making, "left", level), 0, level);
    make_short_rail(making, face_rail(making, "right", level), last_column(making), level);
}

/* Middle rails under trays lie on the middle posts too, by rails across: else those would not help
 * them. */
static void make_cross_rails(struct making *making, size_t level) {
    if (!making->layout.levels[level].shelf || making->shape->rails_across < 3)
        return;
    for (size_t column = 1; column < last_column(making); column++)
        make_short_rail(making, arena_print(making->reader->arena, "cross-%zu-%zu", level, column),
                        column, level);
}

static void make_rails(struct making *making) {
    for (size_t k = 1; k < making->layout.level_count; k++) {
        const struct level *level = &making->layout.levels[k];
        for (enum side side = SIDE_FRONT; side < SIDES; side++)
            if (level->rail[side])
                make_long_rail(making, side, k);
        if (level->ends)
            make_end_rails(making, k);
        make_cross_rails(making, k);
    }
}

static void make_middle_rails(struct making *making) {
    for (size_t k = 1; k < making->layout.level_count; k++)
        for (int rail = 2; making->layout.levels[k].shelf && rail < making->shape->rails_across;
             rail++)
            make_rail(making, middle_rail(making, k, rail), middle_joint(making, 0, rail, k),
                      middle_joint(making, last_column(making), rail, k),
                      making->layout.levels[k].place);
}

/* ---- roofs ---- */

/* From the front post straight to the back post. */
static void make_slope(struct making *making, size_t column) {
    size_t top = making->layout.top;
    made_member(
        making, column ? "slope-right" : "slope-left", post_joint(making, SIDE_FRONT, column, top),
        post_joint(making, SIDE_BACK, column, top), making->shape->slopes, making->map->key_place);
}

static void make_gable_slopes(struct making *making, size_t column) {
    static const char *const sides[SIDES] = {"front", "back"};
    struct arena *arena = making->reader->arena;
    const char *mark = column == 0                     ? "left"
                       : column == last_column(making) ? "right"
                                                       : arena_print(arena, "%zu", column);
    for (enum side side = SIDE_FRONT; side < SIDES; side++)
        made_member(making, arena_print(arena, "slope-%s-%s", mark, sides[side]),
                    post_joint(making, side, column, making->layout.top),
                    ridge_joint(making, column), making->shape->slopes, making->map->key_place);
}

static void make_roof(struct making *making) {
    if (making->shape->kind == SHAPE_LEAN_TO || making->shape->kind == SHAPE_COLD_FRAME) {
        make_slope(making, 0);
        make_slope(making, last_column(making));
    }
    if (making->shape->kind != SHAPE_GABLE)
        return;
    for (size_t column = 0; column <= last_column(making); column++)
        if (making->layout.columns[column].sloped)
            make_gable_slopes(making, column);
    make_rail(making, "ridge", ridge_joint(making, 0), ridge_joint(making, last_column(making)),
              making->map->key_place);
}

void make_pieces(struct making *making) {
    make_posts(making);
    make_rails(making);
    make_roof(making);
    make_middle_rails(making);
}
