#include "frame/merge.h"

#include <string.h>

static struct node *copy(struct arena *arena, const struct node *from, struct node *parent) {
    struct node *node = ARENA_NEW(arena, struct node);
    *node = *from;
    node->parent = parent;
    struct node **end = &node->first;
    for (const struct node *child = from->first; child; child = child->next) {
        *end = copy(arena, child, node);
        end = &(*end)->next;
    }
    *end = NULL;
    return node;
}

bool node_removes(const struct node *value) {
    return value->kind == NODE_TEXT && strcmp(value->text, MERGE_REMOVES) == 0;
}

bool goes_whole(const struct node *map) {
    return map->key && strcmp(map->key, "connections") == 0 && map->parent && !map->parent->key;
}

static struct node *merged(struct arena *arena, const struct node *base, const struct node *edit,
                           struct node *parent);

static struct node *merged_child(struct arena *arena, const struct node *child,
                                 const struct node *change, struct node *parent) {
    if (!change)
        return copy(arena, child, parent);
    if (!goes_whole(parent))
        return merged(arena, child, change, parent);
    struct node *whole = copy(arena, change, parent);
    whole->key_place = child->key_place;
    return whole;
}

static struct node *merged(struct arena *arena, const struct node *base, const struct node *edit,
                           struct node *parent) {
    if (base->kind != NODE_MAP || edit->kind != NODE_MAP) {
        struct node *whole = copy(arena, edit, parent);
        whole->key_place = base->key_place;
        whole->key = base->key;
        return whole;
    }
    struct node *node = ARENA_NEW(arena, struct node);
    *node = *base;
    node->parent = parent;
    struct node **end = &node->first;
    for (const struct node *child = base->first; child; child = child->next) {
        const struct node *change = node_child(edit, child->key);
        if (change && node_removes(change)) {
            node->count--;
            continue;
        }
        *end = merged_child(arena, child, change, node);
        end = &(*end)->next;
    }
    for (const struct node *child = edit->first; child; child = child->next)
        if (!node_child(base, child->key)) {
            *end = copy(arena, child, node);
            end = &(*end)->next;
            node->count++;
        }
    *end = NULL;
    return node;
}

struct node *merge_edit(struct arena *arena, const struct node *base, const struct node *edit) {
    return merged(arena, base, edit, NULL);
}
