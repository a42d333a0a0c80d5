/* bracing/faces.h - gathering cells into faces, naming them and numbering their bays. For
 * src/bracing only. */
#ifndef BRACING_FACES_H
#define BRACING_FACES_H

#include "bracing/cells.h"
#include "bracing/loops.h"

/* Fill `faces` and each cell's face: cells that share a joint and a plane; kind, plane and axes. */
void faces_gather(struct arena *arena, const struct net *net, struct cells *cells);

/* Names: words, the, axis, kept_open. */
void faces_name(struct arena *arena, struct cells *cells);

/* Bays and columns of faces and cells, and the words of each cell. `loops` are those of the
 * cells. */
void faces_number(struct arena *arena, const struct net *net, const struct loops *loops,
                  struct cells *cells);

#endif
