#include "fold/leaning.h"

#include "base/text.h"
#include "base/vector.h"

#include <math.h>
#include <string.h>

#define LEANS 0.05      /* of the largest change of a corner's angle */
#define MOSTLY 0.7      /* of the squares of the movement in the plane of the face */
#define FACES_AT_MOST 4 /* named in a sentence */

/* Squares of the movement of leaning cells in the plane of their face. */
struct share {
    double along, all;
};

static void add_share(const struct cells *cells, const struct cell *cell, const double (*moves)[3],
                      int axis, struct share *share) {
    const double *normal = cells->faces[cell->face].normal;
    for (int k = 0; k < 4; k++) {
        const double *move = moves[cell->joints[k]];
        double off = vector_dot(move, normal);
        share->all += vector_dot(move, move) - off * off;
        share->along += move[axis] * move[axis];
    }
}

struct counts { /* of the cells of a face */
    size_t all, leaning;
    struct share share;
};

/* Rows of bays in which every cell leans, else the single cells. */
static void add_rows(struct arena *arena, const struct cells *cells, const bool *leans, int face,
                     struct leanings *list) {
    int bays = cells->faces[face].bays;
    size_t *all = ARENA_ARRAY(arena, size_t, bays + 1);
    size_t *leaning = ARENA_ARRAY(arena, size_t, bays + 1);
    for (size_t k = 0; k < cells->count; k++)
        if (cells->items[k].face == face) {
            all[cells->items[k].bay]++;
            leaning[cells->items[k].bay] += leans[k];
        }
    for (size_t k = 0; k < cells->count; k++) {
        const struct cell *cell = &cells->items[k];
        if (cell->face != face || leaning[cell->bay] == 0)
            continue;
        bool row = leaning[cell->bay] == all[cell->bay];
        if (row || leans[k])
            ARRAY_PUSH(arena, list,
                       (struct leaning){face,
                                        row && *cell->row_words ? cell->row_words : cell->bay_words,
                                        row && all[cell->bay] > 1});
        if (row)
            leaning[cell->bay] = 0;
    }
}

struct leanings leanings_find(struct arena *arena, const struct cells *cells,
                              const double (*moves)[3], enum face_kind kind, int axis) {
    double *lean = ARENA_ARRAY(arena, double, cells->count), largest = 0.0, fastest = 0.0;
    bool *leans = ARENA_ARRAY(arena, bool, cells->count);
    struct counts *counts = ARENA_ARRAY(arena, struct counts, cells->face_count);
    struct leanings list = {0};
    for (size_t k = 0; k < cells->count; k++) {
        lean[k] = cell_lean(cells->model, &cells->items[k], moves);
        largest = fmax(largest, lean[k]);
        for (int c = 0; c < 4; c++)
            fastest = fmax(fastest, vector_length(moves[cells->items[k].joints[c]]));
    }
    /* noise of a movement that leaves every cell square */
    if (!(largest * cells->model->size > 1e-6 * fastest))
        return list;
    for (size_t k = 0; k < cells->count; k++) {
        struct counts *count = &counts[cells->items[k].face];
        leans[k] = lean[k] > LEANS * largest;
        count->all++;
        count->leaning += leans[k];
        if (leans[k] && axis >= 0)
            add_share(cells, &cells->items[k], moves, axis, &count->share);
    }
    for (size_t f = 0; f < cells->face_count; f++) {
        if (cells->faces[f].kind != kind || counts[f].leaning == 0 ||
            (axis >= 0 && !(cells->faces[f].axis == axis &&
                            counts[f].share.along > MOSTLY * counts[f].share.all)))
            continue;
        if (counts[f].leaning == counts[f].all || list.count > FACES_AT_MOST)
            ARRAY_PUSH(arena, &list, (struct leaning){(int)f, "", false});
        else
            add_rows(arena, cells, leans, (int)f, &list);
    }
    return list;
}

static const char *without_the(const char *words) {
    return strncmp(words, "the ", 4) == 0 ? words + 4 : words;
}

static void name_one(struct text *text, const struct cells *cells, const struct leaning *one,
                     const struct leaning *before) {
    const char *the = cells->faces[one->face].the;
    bool alike = before && strcmp(before->row, one->row) == 0;
    if (alike) {
        text_add(text, without_the(the));
        return;
    }
    if (*one->row)
        text_print(text, "the %s%s of ", one->row, one->several ? "s" : "");
    text_add(text, the);
}

const char *leanings_words(struct arena *arena, const struct cells *cells,
                           const struct leanings *leanings) {
    struct text text = text_new(arena);
    size_t named = leanings->count <= FACES_AT_MOST ? leanings->count : FACES_AT_MOST - 1;
    for (size_t k = 0; k < named; k++) {
        if (k > 0)
            text_add(&text, k + 1 == leanings->count ? " and " : ", ");
        name_one(&text, cells, &leanings->items[k], k > 0 ? &leanings->items[k - 1] : NULL);
    }
    if (named < leanings->count)
        text_print(&text, " and %zu more", leanings->count - named);
    return text_string(&text);
}
