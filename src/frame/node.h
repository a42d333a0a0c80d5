/* frame/node.h - the file as a small tree of lists, maps and texts, each with its place.
 *
 * Nothing is interpreted here: every scalar is text, whatever YAML would make of it. Nodes live in
 * the arena; the tree is at most NODE_DEPTH deep, so it may be walked by recursion.
 */
#ifndef FRAME_NODE_H
#define FRAME_NODE_H

#include "base/arena.h"
#include "base/problem.h"

#include <stdbool.h>

enum node_kind {
    NODE_TEXT,
    NODE_LIST,
    NODE_MAP,
    NODE_BROKEN /* its problem is already told: say nothing more about it */
};
enum { NODE_DEPTH = 32 };

struct node {
    enum node_kind kind;
    int count;              /* children */
    struct place place;     /* of the value */
    struct place key_place; /* of its key; of the value where it has none */
    const char *key;        /* NULL in a list and at the root */
    const char *text;       /* NODE_TEXT; "" where nothing stands after the colon */
    struct node *parent;    /* NULL at the root */
    struct node *first, *next;
};

/* The child of a map under that key; NULL where there is none, or where `map` is no map. */
const struct node *node_child(const struct node *map, const char *key);

/* The same value, wherever it stands. */
bool node_same(const struct node *a, const struct node *b);

/* "members.rail-1.from", "loads.2.force" (list items count from 1); "" at the root. */
const char *node_path(struct arena *arena, const struct node *node);

#endif
