/* frame/merge.h - a description with an edit put in.
 *
 * An edit is a piece of a description: {sticks: {rail: {size: 1x3}}}. Maps are merged key by key, a
 * text takes the place of what stood there, new keys come last in their map. An entry of
 * `connections` is replaced whole, since the keys of another type of connection would stay behind.
 * MERGE_REMOVES as the value of a key takes that key away.
 * Nothing here fails; nothing of `base` or `edit` is changed or shared.
 */
#ifndef FRAME_MERGE_H
#define FRAME_MERGE_H

#include "frame/node.h"

#include <stdbool.h>

#define MERGE_REMOVES "~"
bool node_removes(const struct node *value);
/* A map whose entries are replaced whole: `connections`. */
bool goes_whole(const struct node *map);

struct node *merge_edit(struct arena *arena, const struct node *base, const struct node *edit);

#endif
