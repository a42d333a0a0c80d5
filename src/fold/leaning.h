/* fold/leaning.h - which faces of the frame go out of square in a movement. For fold/words.c. */
#ifndef FOLD_LEANING_H
#define FOLD_LEANING_H

#include "bracing/cells.h"

/* One face, or one row of its bays, that leans. */
struct leaning {
    int face;
    const char *row; /* "lower bay"; "" where the whole face leans */
    bool several;    /* bays side by side */
};

struct leanings {
    struct leaning *items;
    size_t count, capacity;
};

/* Faces of one kind that lean, in the order of the faces. For upright faces only those that move
 * mostly along `axis` (0 x, 1 y) in their own plane; -1 for level and sloped ones. */
struct leanings leanings_find(struct arena *arena, const struct cells *cells,
                              const double (*moves)[3], enum face_kind kind, int axis);

/* "the front and back", "the lower bay of the left side", "the lower bays of the front and 2 more
 * faces". */
const char *leanings_words(struct arena *arena, const struct cells *cells,
                           const struct leanings *leanings);

#endif
