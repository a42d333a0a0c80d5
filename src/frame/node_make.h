/* frame/node_make.h - nodes that no file holds: what a shape stands for.
 *
 * They carry the place of the key that asked for them, so that a message about them points there.
 * Nothing here fails. Inside src/frame/ only.
 */
#ifndef FRAME_NODE_MAKE_H
#define FRAME_NODE_MAKE_H

#include "frame/node.h"

/* `key` NULL in a list. Key and text are kept, not copied. */
struct node *node_new(struct arena *arena, enum node_kind kind, const char *key,
                      struct place place);
struct node *node_text(struct arena *arena, const char *key, const char *text, struct place place);

/* The same content under another key, with the places of the original. */
struct node *node_copy(struct arena *arena, const struct node *from, const char *key);

/* As the last child; walks along the children, so for short lists and maps. */
void node_add(struct node *parent, struct node *child);

/* A list of texts. */
struct node *node_list(struct arena *arena, const char *key, struct place place,
                       const char *const *texts, size_t count);

#endif
