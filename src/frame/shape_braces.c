#include "frame/node_make.h"
#include "frame/shape_making.h"

/* Where an upright face starts and ends on a level: from the left to the right, or from the front
 * to the back. */
static const char *edge_joint(const struct making *making, enum shape_face face, bool far,
                              size_t level) {
    size_t last = making->layout.column_count - 1;
    if (face == FACE_FRONT || face == FACE_BACK)
        return post_joint(making, face == FACE_FRONT ? SIDE_FRONT : SIDE_BACK, far ? last : 0,
                          level);
    return post_joint(making, far ? SIDE_BACK : SIDE_FRONT, face == FACE_LEFT ? 0 : last, level);
}

static void add_brace(struct making *making, enum shape_face face, const char *name, bool falls,
                      size_t from, size_t to) {
    struct reader *reader = making->reader;
    struct place place = making->shape->braces[face].place;
    bool tie = making->shape->braces[face].way == BRACE_TIE;
    struct node *brace =
        made_member(making, name, edge_joint(making, face, falls, from),
                    edge_joint(making, face, !falls, to), making->shape->diagonals, place);
    if (tie)
        node_add(brace, node_text(reader->arena, "ends", "pinned", place));
    node_add(brace, node_text(reader->arena, "acts-as", tie ? "tie" : "brace", place));
}

/* Bays count from 1 at the ground; above the top rails there is none. */
static void brace_bays(struct making *making, enum shape_face face, size_t bays, bool crossed) {
    for (size_t bay = 1; bay <= bays; bay++) {
        const char *name =
            arena_print(making->reader->arena, "brace-%s-%zu", SHAPE_FACES[face], bay);
        add_brace(making, face, name, !crossed && bay % 2 == 0, bay - 1, bay);
        if (crossed)
            add_brace(making, face, arena_print(making->reader->arena, "%s-x", name), true, bay - 1,
                      bay);
    }
}

static void tell_too_many(struct making *making, enum shape_face face, int bays) {
    const struct node *node = node_child(node_child(making->map, "braces"), SHAPE_FACES[face]);
    int top = (int)making->layout.top;
    bool side = face == FACE_LEFT || face == FACE_RIGHT;
    trouble(making->reader, node, "%d bays to brace, but the %s%s has %d", bays, SHAPE_FACES[face],
            side ? " side" : "", top);
}

static void brace_face(struct making *making, enum shape_face face) {
    size_t top = making->layout.top;
    int bays = making->shape->braces[face].bays;
    switch (making->shape->braces[face].way) {
    case BRACE_NONE:
        break;
    case BRACE_BAYS:
        if ((size_t)bays > top)
            tell_too_many(making, face, bays);
        else
            brace_bays(making, face, (size_t)bays, false);
        break;
    case BRACE_ALL:
        brace_bays(making, face, top, false);
        break;
    case BRACE_LONG:
        add_brace(making, face,
                  arena_print(making->reader->arena, "brace-%s-long", SHAPE_FACES[face]), false, 0,
                  top);
        break;
    case BRACE_X:
    case BRACE_TIE:
        brace_bays(making, face, top, true);
        break;
    }
}

void make_braces(struct making *making) {
    for (enum shape_face face = FACE_FRONT; face < FACE_UPRIGHT_COUNT; face++)
        brace_face(making, face);
}
