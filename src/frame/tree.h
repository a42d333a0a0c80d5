/* frame/tree.h - YAML text to a tree of nodes.
 *
 * Refused on the way: anchors, aliases, tags, merge keys, a second document, keys that are no
 * plain text, keys given twice (the first stays), nesting deeper than NODE_DEPTH, more joints,
 * members or values than the limits allow. Reading stops at once where going on would cost time or
 * make no sense.
 */
#ifndef FRAME_TREE_H
#define FRAME_TREE_H

#include "frame/node.h"

#include <stddef.h>

/* More problems than anybody reads; one more says that these are not all. */
enum { MOST_PROBLEMS = 1000 };

struct tree_limits {
    int entries; /* under `joints` and under `members` */
    int values;  /* in the whole file */
};

/* The root, or NULL where the text could not be read to its end (then there is a problem). */
struct node *tree_read(struct arena *arena, const char *bytes, size_t length,
                       struct tree_limits limits, struct problems *problems);

/* The root of text that is known to be good or is tried: no limits; NULL where it does not read. */
struct node *tree_of_text(struct arena *arena, const char *bytes, size_t length);

#endif
