/* report/names.h - the names that the frame format accepts, list by list.
 */
#ifndef REPORT_NAMES_H
#define REPORT_NAMES_H

#include "base/arena.h"

#include <stddef.h>

struct name_list {
    const char *key;   /* "species" */
    const char *words; /* where they are used */
    const char *const *names;
    size_t count;
};

/* All lists, from the tables and of the format's own words. */
const struct name_list *name_lists(struct arena *arena, size_t *count);

/* The list called `key`, NULL where there is none. */
const struct name_list *name_list_find(struct arena *arena, const char *key);

#endif
