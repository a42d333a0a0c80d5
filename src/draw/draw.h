/* draw/draw.h - a frame as SVG.
 *
 * One file, sizes in mm, generic fonts, nothing from elsewhere; the same drawing gives the same
 * bytes. On a sheet the views share one scale.
 */
#ifndef DRAW_DRAW_H
#define DRAW_DRAW_H

#include "base/text.h"
#include "draw/drawing.h"

/* A whole document: the views asked for on one sheet (A4 for all four, A5 for one), then the ways
 * to fold where they are shown. A plane frame has only its front. */
void draw_sheet(struct text *out, const struct drawing *drawing, const bool views[VIEW_COUNT]);

/* One view, or one way to fold seen from the corner, as an <svg> to stand in a page. */
void draw_view(struct text *out, const struct drawing *drawing, enum view_kind kind);
void draw_fold(struct text *out, const struct drawing *drawing, const struct motion *motion);

/* What the marks on the sticks mean, as an <svg> to stand in a page. */
void draw_legend(struct text *out, const struct drawing *drawing);

#endif
