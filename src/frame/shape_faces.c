#include "frame/sections.h"
#include "frame/shape_read.h"
#include "units/quote.h"

#include <stdlib.h>
#include <string.h>

enum { MOST_BAYS = 100, MOST_SHELVES = 100 };

/* ORDER FACE */
const char *const SHAPE_FACES[FACE_COUNT] = {"front", "back",       "left",      "right",
                                             "roof",  "roof-front", "roof-back", "lid"};
/* ORDER SHAPE: which kinds the faces of the house's top belong to. */
static const char *const kinds_with[] = {"stand", "lean-to", "gable", "bench", "cold-frame"};

static bool has_face(enum shape_kind kind, enum shape_face face) {
    switch (face) {
    case FACE_ROOF:
        return kind == SHAPE_LEAN_TO || kind == SHAPE_GABLE;
    case FACE_ROOF_FRONT:
    case FACE_ROOF_BACK:
        return kind == SHAPE_GABLE;
    case FACE_LID:
        return kind == SHAPE_COLD_FRAME;
    default:
        return true;
    }
}

/* The face of that name, FACE_COUNT (told) where the kind has none such. */
static enum shape_face find_face(struct reader *reader, const struct node *node,
                                 enum shape_kind kind, enum shape_face end) {
    const char *names[FACE_COUNT];
    size_t count = 0;
    for (enum shape_face face = FACE_FRONT; face < end; face++) {
        if (!has_face(kind, face))
            continue;
        if (strcmp(node->key, SHAPE_FACES[face]) == 0)
            return face;
        names[count++] = SHAPE_FACES[face];
    }
    trouble_with_key(reader, node, "a %s has no face %s here%s", kinds_with[kind],
                     quote_text(reader->arena, node->key),
                     hint(reader, node->key, "it has", names, count));
    return FACE_COUNT;
}

static void cover(struct shape_values *shape, enum shape_face face, enum held held,
                  struct place place) {
    shape->covers[face].covered = true;
    shape->covers[face].held = held;
    shape->covers[face].place = place;
}

static void read_cover(struct reader *reader, const struct node *node, struct shape_values *shape) {
    enum shape_face face = find_face(reader, node, shape->kind, FACE_COUNT);
    int held = read_held(reader, node);
    if (held < 0 || face == FACE_COUNT)
        return;
    if (shape->kind != SHAPE_GABLE || face != FACE_ROOF) {
        cover(shape, face, (enum held)held, node->place);
        return;
    }
    /* Both slopes, where a slope is not given by itself. */
    for (enum shape_face half = FACE_ROOF_FRONT; half <= FACE_ROOF_BACK; half++)
        if (!node_child(node->parent, SHAPE_FACES[half]))
            cover(shape, half, (enum held)held, node->place);
}

void read_shape_covers(struct reader *reader, const struct node *map, struct shape_values *shape) {
    const struct node *covers = node_child(map, "covers");
    const struct node *sheet = node_child(map, "sheet");
    if (shape->kind == SHAPE_COLD_FRAME)
        cover(shape, FACE_LID, HELD_HINGED, map->key_place);
    if (sheet)
        shape->sheet = read_sheet(reader, sheet);
    if (!sheet && ((covers && covers->count > 0) || shape->kind == SHAPE_COLD_FRAME))
        trouble_missing(reader, map, "sheet", "what covers it, such as twin-wall-6mm");
    if (!covers || !is_map(reader, covers, "faces and how their sheet is held"))
        return;
    for (const struct node *each = covers->first; each && !told_enough(reader); each = each->next)
        read_cover(reader, each, shape);
}

static void read_brace(struct reader *reader, const struct node *node, struct shape_values *shape) {
    enum shape_face face = find_face(reader, node, shape->kind, FACE_UPRIGHT_COUNT);
    const char *text = read_text(reader, node, "how many bays, all, long, x or tie");
    if (!text || face == FACE_COUNT)
        return;
    shape->braces[face].place = node->place;
    if (text[0] >= '0' && text[0] <= '9') {
        if (read_whole(reader, node, 1, MOST_BAYS, &shape->braces[face].bays))
            shape->braces[face].way = BRACE_BAYS;
        return;
    }
    int word = read_word(reader, node, "a way to brace", KEYS("all", "long", "x", "tie"));
    if (word >= 0)
        shape->braces[face].way = (enum brace_way)(BRACE_ALL + word);
}

void read_shape_braces(struct reader *reader, const struct node *map, struct shape_values *shape) {
    const struct node *braces = node_child(map, "braces");
    if (!braces || !is_map(reader, braces, "faces and their braces, such as {back: 2}"))
        return;
    for (const struct node *each = braces->first; each && !told_enough(reader); each = each->next)
        read_brace(reader, each, shape);
}

static int by_height(const void *left, const void *right) {
    const struct shape_shelf *a = left, *b = right;
    if (a->height < b->height)
        return -1;
    if (a->height > b->height)
        return 1;
    return a->place.line != b->place.line ? a->place.line - b->place.line
                                          : a->place.column - b->place.column;
}

void read_shape_shelves(struct reader *reader, const struct node *map, struct shape_values *shape) {
    static const char expected[] = "heights, such as {lower: 6 in, upper: 26 in} or [6 in, 26 in]";
    const struct node *shelves = node_child(map, "shelves");
    if (!shelves)
        return;
    bool named = shelves->kind == NODE_MAP;
    if (!named && !is_list(reader, shelves, expected))
        return;
    if (shelves->count > MOST_SHELVES) {
        trouble(reader, shelves, "%d shelves; at most %d are allowed", shelves->count,
                MOST_SHELVES);
        return;
    }
    shape->shelves = ARENA_ARRAY(reader->arena, struct shape_shelf, (size_t)shelves->count);
    for (const struct node *each = shelves->first; each && !told_enough(reader);
         each = each->next) {
        struct shape_shelf *shelf = &shape->shelves[shape->shelf_count];
        *shelf = (struct shape_shelf){.name = each->key, .place = each->place};
        if (named)
            check_name(reader, each);
        if (read_quantity(reader, each, QUANTITY_LENGTH, OVER_ZERO, &shelf->height))
            shape->shelf_count++;
    }
    if (shape->shelf_count > 1)
        qsort(shape->shelves, shape->shelf_count, sizeof shape->shelves[0], by_height);
    for (size_t k = 0; k < shape->shelf_count && !named; k++)
        shape->shelves[k].name = arena_print(reader->arena, "shelf-%zu", k + 1);
}
