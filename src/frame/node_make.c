#include "frame/node_make.h"

struct node *node_new(struct arena *arena, enum node_kind kind, const char *key,
                      struct place place) {
    struct node *node = ARENA_NEW(arena, struct node);
    *node = (struct node){.kind = kind, .place = place, .key_place = place, .key = key, .text = ""};
    return node;
}

struct node *node_text(struct arena *arena, const char *key, const char *text, struct place place) {
    struct node *node = node_new(arena, NODE_TEXT, key, place);
    node->text = text;
    return node;
}

void node_add(struct node *parent, struct node *child) {
    struct node **end = &parent->first;
    while (*end)
        end = &(*end)->next;
    *end = child;
    child->parent = parent;
    parent->count++;
}

struct node *node_copy(struct arena *arena, const struct node *from, const char *key) {
    struct node *node = node_new(arena, from->kind, key, from->place);
    node->text = from->text;
    for (const struct node *child = from->first; child; child = child->next)
        node_add(node, node_copy(arena, child, child->key));
    return node;
}

struct node *node_list(struct arena *arena, const char *key, struct place place,
                       const char *const *texts, size_t count) {
    struct node *list = node_new(arena, NODE_LIST, key, place);
    for (size_t k = 0; k < count; k++)
        node_add(list, node_text(arena, NULL, texts[k], place));
    return list;
}
