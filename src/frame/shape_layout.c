#include "frame/shape_layout.h"

#include "frame/shape_sizes.h"
#include "units/quote.h"

#include <math.h>
#include <stdlib.h>

#define FRAMES_APART 1.2192 /* m, 4 ft: a gable has a frame at least every so often */

/* ---- heights ---- */

static int by_height(const void *left, const void *right) {
    const struct ring *a = left, *b = right;
    return a->height < b->height ? -1 : a->height > b->height;
}

static const struct node *shelf_node(const struct node *map, const struct shape_shelf *shelf) {
    const struct node *each = node_child(map, "shelves")->first;
    while (each->place.line != shelf->place.line || each->place.column != shelf->place.column)
        each = each->next;
    return each;
}

size_t shape_rings(struct reader *reader, const struct node *map, const struct shape_values *shape,
                   struct ring **rings) {
    struct ring *ring = ARENA_ARRAY(reader->arena, struct ring, shape->shelf_count + 2);
    *rings = ring;
    if (shape->bottom_rails.given)
        *ring++ = (struct ring){"the ring of bottom rails", NULL, shape->bottom_rails.value,
                                node_child(map, "bottom-rails")};
    if (shape->under.given)
        *ring++ =
            (struct ring){"the lower shelf", "under", shape->under.value, node_child(map, "under")};
    for (size_t k = 0; k < shape->shelf_count; k++) {
        const struct shape_shelf *shelf = &shape->shelves[k];
        *ring++ = (struct ring){
            arena_print(reader->arena, "shelf %s", quote_text(reader->arena, shelf->name)),
            shelf->name, shelf->height, shelf_node(map, shelf)};
    }
    size_t count = (size_t)(ring - *rings);
    qsort(*rings, count, sizeof **rings, by_height);
    return count;
}

bool on_top_rails(const struct shape_values *shape, const struct ring *ring) {
    bool level_top = shape->kind == SHAPE_STAND || shape->kind == SHAPE_GABLE;
    return level_top && ring->shelf && fabs(ring->height - shape->low) <= HAIR;
}

static struct level *add_level(struct layout *layout, double front, double back,
                               struct place place) {
    struct level *level = &layout->levels[layout->level_count++];
    *level = (struct level){.z = {front, back}, .rail = {true, true}, .ends = true, .place = place};
    return level;
}

static void lay_out_top(struct layout *layout, const struct node *map,
                        const struct shape_values *shape, double half_rail) {
    double back = shape->kind == SHAPE_GABLE ? shape->low : shape->high;
    struct level *top = add_level(layout, shape->low - half_rail, back - half_rail, map->key_place);
    layout->top = layout->level_count - 1;
    if (shape->kind == SHAPE_LEAN_TO || shape->kind == SHAPE_COLD_FRAME)
        top->ends = false; /* the slopes are there */
    if (shape->kind == SHAPE_BENCH) {
        top->shelf = "top";
        top->place = node_child(map, "high")->place;
    }
    if (shape->back_rail.given) {
        double z = shape->high + shape->back_rail.value - half_rail;
        struct level *upstand = add_level(layout, z, z, node_child(map, "back-rail")->place);
        upstand->rail[SIDE_FRONT] = upstand->ends = false;
    }
}

static void lay_out_levels(struct reader *reader, const struct node *map,
                           const struct shape_values *shape, struct layout *layout) {
    double half_rail = rail_depth(&reader->frame->sticks.items[shape->rails]) / 2;
    struct ring *rings;
    size_t count = shape_rings(reader, map, shape, &rings);
    layout->levels = ARENA_ARRAY(reader->arena, struct level, count + 3);
    struct level *ground = add_level(layout, 0, 0, map->key_place);
    ground->rail[SIDE_FRONT] = ground->rail[SIDE_BACK] = ground->ends = false;
    const struct ring *on_top = NULL;
    for (size_t k = 0; k < count; k++) {
        if (on_top_rails(shape, &rings[k])) {
            on_top = &rings[k];
            continue;
        }
        double z = rings[k].height - half_rail;
        if (!rings[k].shelf)
            layout->bottom = layout->level_count;
        add_level(layout, z, z, rings[k].node->place)->shelf = rings[k].shelf;
    }
    lay_out_top(layout, map, shape, half_rail);
    if (on_top) {
        layout->levels[layout->top].shelf = on_top->shelf;
        layout->levels[layout->top].place = on_top->node->place;
    }
    layout->ridge_z = shape->high - half_rail;
}

/* ---- posts ---- */

static int by_place(const void *left, const void *right) {
    const struct column *a = left, *b = right;
    return a->x < b->x ? -1 : a->x > b->x;
}

static int frames_of(const struct shape_values *shape, double length) {
    if (shape->kind != SHAPE_GABLE)
        return 2;
    return shape->frames ? shape->frames : (int)fmax(1, ceil(length / FRAMES_APART - HAIR)) + 1;
}

/* `between` columns, evenly spaced between the outer two. */
static void add_columns(struct layout *layout, double start, double length, int between,
                        bool sloped) {
    for (int k = 1; k <= between; k++)
        layout->columns[layout->column_count++] =
            (struct column){start + length * k / (between + 1), sloped};
}

/* A middle post where a frame stands already is that frame's own. */
static void drop_doubles(struct layout *layout) {
    size_t kept = 1;
    for (size_t k = 1; k < layout->column_count; k++) {
        struct column *last = &layout->columns[kept - 1];
        if (layout->columns[k].x - last->x <= HAIR)
            last->sloped |= layout->columns[k].sloped;
        else
            layout->columns[kept++] = layout->columns[k];
    }
    layout->column_count = kept;
}

static bool posts_clear(struct reader *reader, const struct node *map,
                        const struct shape_values *shape, const struct layout *layout) {
    double least = post_along_x(&reader->frame->sticks.items[shape->posts]);
    double nearest = HUGE_VAL;
    for (size_t k = 1; k < layout->column_count; k++)
        nearest = fmin(nearest, layout->columns[k].x - layout->columns[k - 1].x);
    if (nearest >= least - HAIR)
        return true;
    const struct node *node = node_child(map, "middle-posts");
    if (!node)
        node = node_child(map, "frames");
    enum unit_system units = reader->frame->units;
    trouble(reader, node ? node : map,
            "two of the %zu posts along the width are %s apart, but posts are %s wide",
            layout->column_count, quantity_print(reader->arena, nearest, QUANTITY_LENGTH, units),
            quantity_print(reader->arena, least, QUANTITY_LENGTH, units));
    return false;
}

static bool lay_out_posts(struct reader *reader, const struct node *map,
                          const struct shape_values *shape, struct layout *layout) {
    const struct stick *post = &reader->frame->sticks.items[shape->posts];
    double inset_x = shape->measured_axes ? 0 : post_along_x(post) / 2;
    double inset_y = shape->measured_axes ? 0 : post_along_y(post) / 2;
    double length = shape->wide - 2 * inset_x;
    int frames = frames_of(shape, length);
    layout->y[SIDE_FRONT] = inset_y;
    layout->y[SIDE_BACK] = shape->deep - inset_y;
    layout->ridge_y = shape->deep / 2;
    layout->columns =
        ARENA_ARRAY(reader->arena, struct column, (size_t)(frames + shape->middle_posts));
    bool gable = shape->kind == SHAPE_GABLE;
    layout->columns[layout->column_count++] = (struct column){inset_x, gable};
    layout->columns[layout->column_count++] = (struct column){inset_x + length, gable};
    add_columns(layout, inset_x, length, frames - 2, gable);
    add_columns(layout, inset_x, length, shape->middle_posts, false);
    qsort(layout->columns, layout->column_count, sizeof layout->columns[0], by_place);
    drop_doubles(layout);
    return posts_clear(reader, map, shape, layout);
}

bool shape_lay_out(struct reader *reader, const struct node *map, const struct shape_values *shape,
                   struct layout *layout) {
    *layout = (struct layout){0};
    lay_out_levels(reader, map, shape, layout);
    return lay_out_posts(reader, map, shape, layout);
}
