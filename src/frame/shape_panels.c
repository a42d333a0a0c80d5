#include "frame/node_make.h"
#include "frame/sections.h"
#include "frame/shape_making.h"

/* Four corners round a sheet, and the two where its hinges would be: the left edge of an upright
 * face (of a side: the front edge), the upper edge of a roof or lid. */
struct sheet_place {
    const char *corners[4];
    const char *hinge[2];
};

static struct sheet_place long_side(const struct making *making, enum side side) {
    const struct layout *layout = &making->layout;
    size_t last = layout->column_count - 1;
    size_t top = side == SIDE_FRONT ? layout->top : layout->level_count - 1;
    const char *foot = post_joint(making, side, 0, layout->bottom);
    const char *head = post_joint(making, side, 0, top);
    return (struct sheet_place){{foot, post_joint(making, side, last, layout->bottom),
                                 post_joint(making, side, last, top), head},
                                {foot, head}};
}

static struct sheet_place end(const struct making *making, size_t column) {
    const struct layout *layout = &making->layout;
    const char *foot = post_joint(making, SIDE_FRONT, column, layout->bottom);
    const char *head = post_joint(making, SIDE_FRONT, column, layout->top);
    return (struct sheet_place){{foot, post_joint(making, SIDE_BACK, column, layout->bottom),
                                 post_joint(making, SIDE_BACK, column, layout->top), head},
                                {foot, head}};
}

/* From the eave or the front to the upper edge. */
static struct sheet_place slope(const struct making *making, enum side lower, const char *left,
                                const char *right) {
    size_t top = making->layout.top, last = making->layout.column_count - 1;
    return (struct sheet_place){
        {post_joint(making, lower, 0, top), post_joint(making, lower, last, top), right, left},
        {left, right}};
}

static struct sheet_place place_of(const struct making *making, enum shape_face face) {
    size_t top = making->layout.top, last = making->layout.column_count - 1;
    switch (face) {
    case FACE_FRONT:
        return long_side(making, SIDE_FRONT);
    case FACE_BACK:
        return long_side(making, SIDE_BACK);
    case FACE_LEFT:
        return end(making, 0);
    case FACE_RIGHT:
        return end(making, last);
    case FACE_ROOF_FRONT:
    case FACE_ROOF_BACK:
        return slope(making, face == FACE_ROOF_FRONT ? SIDE_FRONT : SIDE_BACK,
                     ridge_joint(making, 0), ridge_joint(making, last));
    default:
        return slope(making, SIDE_FRONT, post_joint(making, SIDE_BACK, 0, top),
                     post_joint(making, SIDE_BACK, last, top));
    }
}

static void add_word(struct making *making, struct node *panel, const char *key, const char *word) {
    node_add(panel, node_text(making->reader->arena, key, word, panel->place));
}

/* What the key `lid` says of a lid is kept as it is typed. */
static void add_lid_keys(struct making *making, struct node *panel, const struct node *lid,
                         bool hinged) {
    static const char *const keys[] = {"opens", "stay", "framed", "weight"};
    for (size_t k = 0; k < sizeof keys / sizeof *keys; k++) {
        const struct node *said = node_child(lid, keys[k]);
        if (said)
            node_add(panel, node_copy(making->reader->arena, said, keys[k]));
        else if (k < 2 && hinged)
            add_word(making, panel, keys[k], k == 0 ? "yes" : "no");
    }
}

static void make_panel(struct making *making, enum shape_face face) {
    struct arena *arena = making->reader->arena;
    enum held held = making->shape->covers[face].held;
    struct place place = making->shape->covers[face].place;
    struct sheet_place at = place_of(making, face);
    struct node *panel = node_new(arena, NODE_MAP, SHAPE_FACES[face], place);
    node_add(panel, node_list(arena, "corners", place, at.corners, 4));
    add_word(making, panel, "sheet", table_sheet(making->shape->sheet)->name);
    add_word(making, panel, "held", HELD_WORDS[held]);
    if (held == HELD_SCREWED) {
        add_word(making, panel, "screw", "8");
        add_word(making, panel, "spacing", "12 in");
    }
    add_word(making, panel, "runs", "up-down");
    add_word(making, panel, "overhang", "0");
    if (held == HELD_HINGED)
        node_add(panel, node_list(arena, "hinge", place, at.hinge, 2));
    add_lid_keys(making, panel, face == FACE_LID ? node_child(making->map, "lid") : NULL,
                 held == HELD_HINGED);
    made_add(making, MADE_PANELS, panel);
}

/* Under the ridge an end is a triangle, which is no sheet of four corners. */
static void remark_gable_ends(struct making *making) {
    bool ends =
        making->shape->covers[FACE_LEFT].covered || making->shape->covers[FACE_RIGHT].covered;
    if (making->shape->kind == SHAPE_GABLE && ends)
        caution(making->reader,
                "The covers left and right end at the eaves: the triangles between them and the "
                "ridge are not counted, neither their weight nor the wind on them.");
}

void make_panels(struct making *making) {
    for (enum shape_face face = FACE_FRONT; face < FACE_COUNT; face++)
        if (making->shape->covers[face].covered)
            make_panel(making, face);
    remark_gable_ends(making);
}
