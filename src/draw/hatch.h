/* draw/hatch.h - the filling of a stick by how hard it works: a tone, and lines that tell the same
 * without colour. */
#ifndef DRAW_HATCH_H
#define DRAW_HATCH_H

#include "draw/drawing.h"
#include "draw/ink.h"

/* `angle` of the hatch lines, rad, in sheet coordinates. */
void hatch_shape(struct ink *ink, enum work work, const struct convex *shape, double angle);

#endif
