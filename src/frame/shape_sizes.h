/* frame/shape_sizes.h - how large the sticks of a shape stand in it, in m.
 *
 * The stick must have a size (`has_size`). Inside src/frame/ only.
 */
#ifndef FRAME_SHAPE_SIZES_H
#define FRAME_SHAPE_SIZES_H

#include "frame/frame.h"

/* Sizes that are equal on paper. */
#define HAIR 1e-6

/* A post's size along the width and along the depth: its larger side is along the width, unless it
 * faces the side. */
double post_along_x(const struct stick *post);
double post_along_y(const struct stick *post);

/* A rail's size up and down: its larger side, unless it lies flat. */
double rail_depth(const struct stick *rail);

#endif
