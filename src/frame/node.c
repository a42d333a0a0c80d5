#include "frame/node.h"

#include "units/quote.h"

#include <string.h>

const struct node *node_child(const struct node *map, const char *key) {
    if (!map || map->kind != NODE_MAP)
        return NULL;
    for (const struct node *child = map->first; child; child = child->next)
        if (strcmp(child->key, key) == 0)
            return child;
    return NULL;
}

bool node_same(const struct node *a, const struct node *b) {
    if (a->kind != b->kind || a->count != b->count || strcmp(a->text, b->text) != 0)
        return false;
    const struct node *x = a->first, *y = b->first;
    for (; x && y; x = x->next, y = y->next)
        if ((x->key && strcmp(x->key, y->key) != 0) || !node_same(x, y))
            return false;
    return true;
}

static int place_in_list(const struct node *node) {
    int number = 1;
    for (const struct node *each = node->parent->first; each != node; each = each->next)
        number++;
    return number;
}

const char *node_path(struct arena *arena, const struct node *node) {
    const char *path = "";
    for (; node->parent; node = node->parent) {
        const char *dot = *path ? "." : "";
        if (node->key)
            path = arena_print(arena, "%s%s%s", plain_text(arena, node->key), dot, path);
        else
            path = arena_print(arena, "%d%s%s", place_in_list(node), dot, path);
    }
    return path;
}
