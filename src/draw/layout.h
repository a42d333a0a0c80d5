/* draw/layout.h - the views of one sheet: one scale, and a place for each. mm. */
#ifndef DRAW_LAYOUT_H
#define DRAW_LAYOUT_H

#include "draw/figure.h"

struct placed_view {
    bool shown;
    struct site_of_view site;
    struct point heading; /* the base line of its name */
};

struct sheet_layout {
    double ratio;         /* the drawing is 1 : ratio */
    double width, height; /* of the views together, headings included */
    struct placed_view views[VIEW_COUNT];
};

/* As large as fits into `width` by `height`, at a ratio that rules and folding rules have. The
 * views stand two and two: front and side on one ground line, plan under the front. */
struct sheet_layout layout_views(const struct drawing *drawing, const bool views[VIEW_COUNT],
                                 double width, double height);

/* One way to fold at a given ratio. */
struct sheet_layout layout_fold(const struct drawing *drawing, double ratio);

/* Move everything. */
void layout_move(struct sheet_layout *layout, double x, double y);

/* The next coarser ratio. */
double layout_coarser(double ratio);

#endif
