/* frame/name_index.h - names to numbers 0, 1, 2 ... in the order in which they were added. */
#ifndef FRAME_NAME_INDEX_H
#define FRAME_NAME_INDEX_H

#include "base/arena.h"

#include <stddef.h>

struct name_index {
    const char **items; /* the names, by number */
    size_t count, capacity;
    int *slots; /* number + 1, 0 where empty; at most half full */
    size_t slot_count;
};

/* The number of a name, -1 where it is not there. */
int name_index_find(const struct name_index *index, const char *name);

/* Add a name that is not there yet; the name is kept, not copied. */
int name_index_add(struct arena *arena, struct name_index *index, const char *name);

#endif
