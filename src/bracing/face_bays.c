#include "bracing/faces.h"

#include "base/text.h"
#include "base/vector.h"

#include <math.h>
#include <stdlib.h>

enum direction { ALONG_UPWARD, ALONG_ACROSS };

struct numbering {
    struct arena *arena;
    const struct net *net;
    const struct loops *loops;
    struct cells *cells;
    int *passed; /* per joint: the highest number of a cell that ends there */
};

struct rung {
    size_t cell;
    double at;
    int face;
};

static const double *axis_of(const struct face *face, enum direction direction) {
    return direction == ALONG_UPWARD ? face->upward : face->across;
}

/* The side whose middle lies lowest (sign 1) or highest (-1) along the direction. */
static int extreme_side(const struct numbering *numbering, size_t cell, const double axis[3],
                        double sign) {
    int best = 0;
    double least = INFINITY;
    for (int side = 0; side < 4; side++) {
        const int *joints = numbering->loops->items[cell].joints;
        double at = sign * (vector_dot(net_at(numbering->net, joints[side]), axis) +
                            vector_dot(net_at(numbering->net, joints[(side + 1) % 4]), axis));
        if (at < least - 1e-9) {
            least = at;
            best = side;
        }
    }
    return best;
}

static int compare_rungs(const void *left, const void *right) {
    const struct rung *a = left, *b = right;
    if (a->face != b->face)
        return a->face < b->face ? -1 : 1;
    if (a->at != b->at)
        return a->at < b->at ? -1 : 1;
    return (a->cell > b->cell) - (a->cell < b->cell);
}

/* The number of a cell is one more than the highest of those that end on its first side. */
static int number_cell(struct numbering *numbering, size_t cell, const double axis[3]) {
    int *joints, number = 0;
    const struct loop *loop = &numbering->loops->items[cell];
    size_t count = loop_side_joints(numbering->arena, numbering->net, loop,
                                    extreme_side(numbering, cell, axis, 1.0), &joints);
    for (size_t k = 0; k < count; k++)
        if (numbering->passed[joints[k]] > number)
            number = numbering->passed[joints[k]];
    number++;
    count = loop_side_joints(numbering->arena, numbering->net, loop,
                             extreme_side(numbering, cell, axis, -1.0), &joints);
    for (size_t k = 0; k < count; k++)
        if (numbering->passed[joints[k]] < number)
            numbering->passed[joints[k]] = number;
    return number;
}

static void forget(struct numbering *numbering, size_t cell) {
    for (int side = 0; side < 4; side++) {
        int *joints;
        size_t count = loop_side_joints(numbering->arena, numbering->net,
                                        &numbering->loops->items[cell], side, &joints);
        for (size_t k = 0; k < count; k++)
            numbering->passed[joints[k]] = 0;
    }
}

static void number_all(struct numbering *numbering, enum direction direction) {
    struct cells *cells = numbering->cells;
    struct rung *rungs = ARENA_ARRAY(numbering->arena, struct rung, cells->count);
    for (size_t k = 0; k < cells->count; k++) {
        rungs[k] = (struct rung){.cell = k, .face = cells->items[k].face};
        const double *axis = axis_of(&cells->faces[rungs[k].face], direction);
        for (int c = 0; c < 4; c++)
            rungs[k].at += vector_dot(net_at(numbering->net, cells->items[k].joints[c]), axis);
    }
    if (cells->count > 0)
        qsort(rungs, cells->count, sizeof *rungs, compare_rungs);
    for (size_t k = 0, start = 0; k < cells->count; k++) {
        struct face *face = &cells->faces[rungs[k].face];
        struct cell *cell = &cells->items[rungs[k].cell];
        int number = number_cell(numbering, rungs[k].cell, axis_of(face, direction));
        int *most = direction == ALONG_UPWARD ? &face->bays : &face->columns;
        *(direction == ALONG_UPWARD ? &cell->bay : &cell->column) = number;
        *most = number > *most ? number : *most;
        if (k + 1 < cells->count && rungs[k + 1].face == rungs[k].face)
            continue;
        for (; start <= k; start++)
            forget(numbering, rungs[start].cell);
    }
}

static const char *ordinal(struct arena *arena, int number) {
    static const char *const words[] = {"first", "second",  "third",  "fourth", "fifth",
                                        "sixth", "seventh", "eighth", "ninth",  "tenth"};
    if (number <= (int)(sizeof words / sizeof *words))
        return words[number - 1];
    return arena_print(arena, "number %d", number);
}

static const char *upward_words(struct arena *arena, const struct face *face, int bay) {
    static const char *const two[] = {"lower bay", "upper bay"};
    static const char *const three[] = {"lower bay", "middle bay", "upper bay"};
    if (face->kind == FACE_LEVEL)
        return arena_print(arena, "%s bay from the front", ordinal(arena, bay));
    if (face->bays <= 3)
        return face->bays == 2 ? two[bay - 1] : three[bay - 1];
    return arena_print(arena, "bay %d from the ground", bay);
}

static const char *bay_words(struct arena *arena, const struct face *face,
                             const struct cell *cell) {
    struct text text = text_new(arena);
    text_add(&text, cell->row_words);
    if (face->columns > 1)
        text_print(&text, "%s%s%s from the %s", face->bays > 1 ? ", " : "",
                   ordinal(arena, cell->column), face->bays > 1 ? "" : " bay",
                   fabs(face->across[0]) >= fabs(face->across[1]) ? "left" : "front");
    return text_string(&text);
}

void faces_number(struct arena *arena, const struct net *net, const struct loops *loops,
                  struct cells *cells) {
    struct numbering numbering = {arena, net, loops, cells,
                                  ARENA_ARRAY(arena, int, cells->model->frame->joints.count)};
    number_all(&numbering, ALONG_UPWARD);
    number_all(&numbering, ALONG_ACROSS);
    for (size_t k = 0; k < cells->count; k++) {
        struct cell *cell = &cells->items[k];
        const struct face *face = &cells->faces[cell->face];
        cell->row_words = face->bays > 1 ? upward_words(arena, face, cell->bay) : "";
        cell->bay_words = bay_words(arena, face, cell);
        cell->where = *cell->bay_words ? arena_print(arena, "%s, %s", face->words, cell->bay_words)
                                       : face->words;
    }
}
