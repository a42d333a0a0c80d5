#include "frame/shape_read.h"
#include "tables/tables.h"
#include "units/quote.h"

#include <math.h>
#include <stdlib.h>

#define HAIR 1e-6 /* m: sizes that are equal on paper */

static const char *show(struct reader *reader, double length) {
    return quantity_print(reader->arena, length, QUANTITY_LENGTH, reader->frame->units);
}

static const struct stick *stick_at(struct reader *reader, int number) {
    return &reader->frame->sticks.items[number];
}

/* The post's size along the width and along the depth. */
static double post_along_x(const struct stick *post) {
    return post->faces == FACES_SIDE ? post->thickness : post->width;
}

static double post_along_y(const struct stick *post) {
    return post->faces == FACES_SIDE ? post->width : post->thickness;
}

static double rail_depth(const struct stick *rail) {
    return rail->stands == STANDS_FLAT ? rail->thickness : rail->width;
}

static bool check_stick_sizes(struct reader *reader, const struct node *map,
                              const struct shape_values *shape) {
    const int sticks[] = {shape->posts, shape->rails};
    static const char *const names[] = {"posts", "rails"};
    bool sized = true;
    for (int k = 0; k < 2; k++) {
        if (stick_at(reader, sticks[k])->has_size)
            continue;
        const struct node *node = node_child(map, names[k]);
        trouble_with_key(reader, node ? node : map,
                         "the %s of a shape need a stick with a size; %s has its own section",
                         names[k], quote_text(reader->arena, stick_at(reader, sticks[k])->name));
        sized = false;
    }
    return sized;
}

static void check_heights(struct reader *reader, const struct node *map,
                          const struct shape_values *shape) {
    const struct node *front = node_child(map, "front-high");
    const struct node *eave = node_child(map, "eave-high");
    if (front && shape->low > shape->high + HAIR)
        trouble(reader, front, "the front, %s, is higher than the back, %s",
                show(reader, shape->low), show(reader, shape->high));
    if (eave && !(shape->low < shape->high - HAIR))
        trouble(reader, eave, "the eave, %s, must be lower than the ridge, %s",
                show(reader, shape->low), show(reader, shape->high));
    double depth = rail_depth(stick_at(reader, shape->rails));
    if (!(shape->low > depth))
        trouble(reader,
                front  ? front
                : eave ? eave
                       : node_child(map, "high"),
                "%s high is no more than its top rail is deep", show(reader, shape->low));
}

static void check_footprint(struct reader *reader, const struct node *map,
                            const struct shape_values *shape) {
    const struct stick *post = stick_at(reader, shape->posts);
    double posts = shape->measured_axes ? 1 : 2;
    if (!(shape->wide > posts * post_along_x(post) + HAIR))
        trouble(reader, node_child(map, "wide"), "%s wide leaves no room between the posts",
                show(reader, shape->wide));
    if (!(shape->deep > posts * post_along_y(post) + HAIR))
        trouble(reader, node_child(map, "deep"), "%s deep leaves no room between the posts",
                show(reader, shape->deep));
}

/* A ring of rails at some height, and where the file says so. */
struct ring {
    const char *what;
    double height;
    const struct node *node;
};

static void check_ring(struct reader *reader, const struct shape_values *shape, struct ring ring) {
    double depth = rail_depth(stick_at(reader, shape->rails));
    double most = shape->low - depth;
    if (!(ring.height >= depth - HAIR))
        trouble(reader, ring.node,
                "%s at %s: its rails are %s deep and would reach into the ground", ring.what,
                show(reader, ring.height), show(reader, depth));
    else if (ring.height > shape->low + HAIR)
        trouble(reader, ring.node, "%s at %s is above the front, which is %s high", ring.what,
                show(reader, ring.height), show(reader, shape->low));
    else if (!(ring.height <= most + HAIR))
        trouble(reader, ring.node, "%s at %s runs into the top rail; %s at most", ring.what,
                show(reader, ring.height), show(reader, most));
}

static const struct node *shelf_node(const struct node *map, const struct shape_shelf *shelf) {
    const struct node *shelves = node_child(map, "shelves");
    const struct node *each = shelves->first;
    while (each->place.line != shelf->place.line || each->place.column != shelf->place.column)
        each = each->next;
    return each;
}

static int by_height(const void *left, const void *right) {
    const struct ring *a = left, *b = right;
    return a->height < b->height ? -1 : a->height > b->height;
}

static size_t gather_rings(struct reader *reader, const struct node *map,
                           const struct shape_values *shape, struct ring *rings) {
    size_t count = 0;
    if (shape->bottom_rails.given)
        rings[count++] = (struct ring){"the ring of bottom rails", shape->bottom_rails.value,
                                       node_child(map, "bottom-rails")};
    if (shape->under.given)
        rings[count++] =
            (struct ring){"the lower shelf", shape->under.value, node_child(map, "under")};
    for (size_t k = 0; k < shape->shelf_count; k++) {
        const struct shape_shelf *shelf = &shape->shelves[k];
        rings[count++] = (struct ring){
            arena_print(reader->arena, "shelf %s", quote_text(reader->arena, shelf->name)),
            shelf->height, shelf_node(map, shelf)};
    }
    return count;
}

/* Every ring by itself, then neighbours from the ground up. */
static void check_rings(struct reader *reader, const struct node *map,
                        const struct shape_values *shape) {
    struct ring *rings = ARENA_ARRAY(reader->arena, struct ring, shape->shelf_count + 2);
    size_t count = gather_rings(reader, map, shape, rings);
    double depth = rail_depth(stick_at(reader, shape->rails));
    for (size_t k = 0; k < count; k++)
        check_ring(reader, shape, rings[k]);
    qsort(rings, count, sizeof rings[0], by_height);
    for (size_t k = 1; k < count; k++)
        if (!(rings[k].height - rings[k - 1].height >= depth - HAIR))
            trouble(reader, rings[k].node, "%s at %s is too near %s at %s; rails are %s deep",
                    rings[k].what, show(reader, rings[k].height), rings[k - 1].what,
                    show(reader, rings[k - 1].height), show(reader, depth));
}

/* How many trays stand on a shelf, all one way round, the better way. */
static int trays_that_fit(double wide, double deep, const struct tray *tray) {
    double along = floor(wide / tray->length + HAIR) * floor(deep / tray->width + HAIR);
    double across = floor(wide / tray->width + HAIR) * floor(deep / tray->length + HAIR);
    return (int)fmin(fmax(along, across), 1e6);
}

static void check_trays(struct reader *reader, const struct node *map,
                        const struct shape_values *shape) {
    if (shape->on_each.trays != TRAYS_KIND)
        return;
    const struct stick *post = stick_at(reader, shape->posts);
    double wide = shape->wide + (shape->measured_axes ? post_along_x(post) : 0);
    double deep = shape->deep - (shape->measured_axes ? 1 : 2) * post_along_y(post);
    const struct tray *tray = table_tray(shape->on_each.tray);
    int fit = trays_that_fit(wide, deep, tray);
    if (shape->on_each.tray_count > fit)
        trouble(reader, node_child(node_child(map, "trays"), "count"),
                "%d of %s do not fit on a shelf; %d do, on %s by %s between the posts",
                shape->on_each.tray_count, tray->name, fit, show(reader, wide), show(reader, deep));
}

void check_shape(struct reader *reader, const struct node *map, const struct shape_values *shape) {
    if (!check_stick_sizes(reader, map, shape))
        return;
    check_heights(reader, map, shape);
    check_footprint(reader, map, shape);
    check_rings(reader, map, shape);
    check_trays(reader, map, shape);
}
