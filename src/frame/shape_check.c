#include "frame/shape_layout.h"
#include "frame/shape_read.h"
#include "frame/shape_sizes.h"
#include "tables/tables.h"
#include "units/quote.h"

#include <math.h>

static const char *show(struct reader *reader, double length) {
    return quantity_print(reader->arena, length, QUANTITY_LENGTH, reader->frame->units);
}

static const struct stick *stick_at(struct reader *reader, int number) {
    return &reader->frame->sticks.items[number];
}

static bool check_stick_sizes(struct reader *reader, const struct node *map,
                              const struct shape_values *shape) {
    const int sticks[] = {shape->posts, shape->rails};
    static const char *const names[] = {"posts", "rails"};
    bool sized = true;
    for (int k = 0; k < 2; k++) {
        if (stick_at(reader, sticks[k])->has_size)
            continue;
        sized = false;
        if (!stick_at(reader, sticks[k])->has_section)
            continue; /* its size was wrong, and told */
        const struct node *node = node_child(map, names[k]);
        trouble_with_key(reader, node ? node : map,
                         "the %s of a shape need a stick with a size; %s has its own section",
                         names[k], quote_text(reader->arena, stick_at(reader, sticks[k])->name));
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

/* ORDER SHAPE: the lowest edge of the top. */
static const char *const edge_names[] = {"top", "front", "eave", "top", "front"};

static void check_ring(struct reader *reader, const struct shape_values *shape, struct ring ring) {
    double depth = rail_depth(stick_at(reader, shape->rails));
    double most = shape->low - depth;
    if (!(ring.height >= depth - HAIR))
        trouble(reader, ring.node,
                "%s at %s: its rails are %s deep and would reach into the ground", ring.what,
                show(reader, ring.height), show(reader, depth));
    else if (ring.height > shape->low + HAIR)
        trouble(reader, ring.node, "%s at %s is above the %s, which is %s high", ring.what,
                show(reader, ring.height), edge_names[shape->kind], show(reader, shape->low));
    else if (!(ring.height <= most + HAIR) && !on_top_rails(shape, &ring))
        trouble(reader, ring.node, "%s at %s runs into the top rail; %s at most", ring.what,
                show(reader, ring.height), show(reader, most));
}

/* Every ring by itself, then neighbours from the ground up. */
static void check_rings(struct reader *reader, const struct node *map,
                        const struct shape_values *shape) {
    struct ring *rings;
    size_t count = shape_rings(reader, map, shape, &rings);
    double depth = rail_depth(stick_at(reader, shape->rails));
    for (size_t k = 0; k < count; k++)
        check_ring(reader, shape, rings[k]);
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
                "%d of %s do not fit on a shelf; %s, on %s by %s between the posts",
                shape->on_each.tray_count, tray->name,
                fit ? arena_print(reader->arena, "%d do", fit) : "not one does", show(reader, wide),
                show(reader, deep));
}

/* What would lie on shelves, where there are none. */
static void check_shelves_there(struct reader *reader, const struct node *map,
                                const struct shape_values *shape) {
    static const char *const keys[] = {"deck", "trays", "standing", "rails-across"};
    if (shape->shelf_count > 0 || shape->kind == SHAPE_BENCH)
        return;
    for (size_t k = 0; k < sizeof keys / sizeof *keys; k++)
        if (node_child(map, keys[k]))
            trouble_with_key(reader, node_child(map, keys[k]),
                             "there is no shelf for it; give 'shelves', such as [6 in, 26 in]");
}

static void check_bench(struct reader *reader, const struct node *map,
                        const struct shape_values *shape) {
    double depth = rail_depth(stick_at(reader, shape->rails));
    if (shape->kind != SHAPE_BENCH)
        return;
    if (shape->back_rail.given && !(shape->back_rail.value >= depth - HAIR))
        trouble(reader, node_child(map, "back-rail"),
                "%s above the top is less than its rail is deep, %s",
                show(reader, shape->back_rail.value), show(reader, depth));
    const struct node *shelves = node_child(map, "shelves");
    const struct node *top = node_child(shelves, "top");
    const struct node *under = shape->under.given ? node_child(shelves, "under") : NULL;
    if (top)
        trouble_with_key(reader, top, "the work top itself is called 'top'; use another name");
    if (under)
        trouble_with_key(reader, under,
                         "the shelf of the key 'under' is called so; use another name");
}

bool check_shape(struct reader *reader, const struct node *map, const struct shape_values *shape) {
    size_t before = reader->problems->count;
    if (!check_stick_sizes(reader, map, shape))
        return false;
    check_heights(reader, map, shape);
    check_footprint(reader, map, shape);
    check_rings(reader, map, shape);
    check_shelves_there(reader, map, shape);
    check_bench(reader, map, shape);
    check_trays(reader, map, shape);
    return reader->problems->count == before;
}
