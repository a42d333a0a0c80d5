/* frame/shape_build.h - a shape and what it stands for, in one tree. Inside src/frame/ only. */
#ifndef FRAME_SHAPE_BUILD_H
#define FRAME_SHAPE_BUILD_H

#include "frame/reader.h"

/* Put what the shape under `root` stands for in its place, together with the file's own joints,
 * members, supports, shelves and panels (an entry of the same name replaces a made one); `shape`
 * and `leave-out` are taken out. The shape was read well. False, and the tree as it was, where
 * that cannot be done: told, or left for the readers of the sections to tell. */
bool shape_build(struct reader *reader, struct node *root);

#endif
