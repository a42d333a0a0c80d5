/* draw/legend.h - what tones, hatches and lines mean: only those that the drawing has. */
#ifndef DRAW_LEGEND_H
#define DRAW_LEGEND_H

#include "draw/figure.h"

/* From `at` downward, in rows of at most `width` mm. Returns how far down it goes. */
double legend_draw(const struct drawing *drawing, struct point at, double width, struct ink *ink);

#endif
