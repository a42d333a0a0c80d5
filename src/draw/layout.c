#include "draw/layout.h"

#include <math.h>
#include <string.h>

#define HEADING 5.0 /* mm above a view for its name */
#define APART 4.0   /* mm between views */

double layout_coarser(double ratio) {
    static const double steps[] = {1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10};
    double ten = 1.0;
    for (; ten < 1e9; ten *= 10.0)
        for (size_t k = 0; k < sizeof steps / sizeof *steps; k++)
            if (steps[k] * ten > ratio * (1.0 + 1e-9))
                return steps[k] * ten;
    return ten;
}

/* Two columns and two rows: front, side; plan, corner. */
static size_t column_of(enum view_kind kind) {
    return kind == VIEW_SIDE || kind == VIEW_CORNER;
}

static size_t row_of(enum view_kind kind) {
    return kind == VIEW_PLAN || kind == VIEW_CORNER;
}

struct need {                           /* of one view at a scale */
    double above, below, before, after; /* from the sticks' upper left corner */
};

static struct need need_of(const struct drawing *drawing, enum view_kind kind, double scale) {
    struct extent extent = figure_extent(drawing, &VIEWS[kind]);
    struct margins margins = figure_margins(drawing, kind);
    return (struct need){margins.top + HEADING, (extent.high - extent.low) * scale + margins.bottom,
                         margins.left, (extent.right - extent.left) * scale + margins.right};
}

static struct sheet_layout layout_at(const struct drawing *drawing, const bool views[VIEW_COUNT],
                                     double ratio) {
    struct sheet_layout layout = {.ratio = ratio};
    double scale = 1000.0 / ratio, before[2] = {0}, after[2] = {0}, above[2] = {0}, below[2] = {0};
    for (int v = 0; v < VIEW_COUNT; v++) {
        struct need need = need_of(drawing, (enum view_kind)v, scale);
        if (!views[v])
            continue;
        size_t column = column_of((enum view_kind)v), row = row_of((enum view_kind)v);
        before[column] = fmax(before[column], need.before);
        after[column] = fmax(after[column], need.after);
        above[row] = fmax(above[row], need.above);
        below[row] = fmax(below[row], need.below);
    }
    double lefts[2] = {0.0, before[0] + after[0] + (before[0] > 0.0 && before[1] > 0.0) * APART};
    double tops[2] = {0.0, above[0] + below[0] + (above[0] > 0.0 && above[1] > 0.0) * APART};
    for (int v = 0; v < VIEW_COUNT; v++) {
        struct placed_view *view = &layout.views[v];
        size_t column = column_of((enum view_kind)v), row = row_of((enum view_kind)v);
        struct extent extent = figure_extent(drawing, &VIEWS[v]);
        double high = (extent.high - extent.low) * scale;
        double wide = (extent.right - extent.left) * scale;
        struct margins margins = figure_margins(drawing, (enum view_kind)v);
        view->shown = views[v];
        view->site.scale = scale;
        view->site.room = (struct box){lefts[column], tops[row] + HEADING + 0.5,
                                       lefts[column] + before[column] + after[column],
                                       tops[row] + above[row] + below[row]};
        /* on one ground line; in the middle of what the column leaves where it has no dimensions */
        view->site.at.x = lefts[column] + before[column];
        if ((enum view_kind)v == VIEW_CORNER)
            view->site.at.x =
                lefts[column] + fmax(margins.left, (before[column] + after[column] - wide) / 2.0);
        view->site.at.y = row ? tops[1] + HEADING + margins.top
                              : tops[0] + above[0] + below[0] - margins.bottom - high;
        view->heading = (struct point){lefts[column], tops[row] + HEADING - 1.4};
    }
    layout.width = lefts[1] + before[1] + after[1];
    layout.height = tops[1] + above[1] + below[1];
    return layout;
}

struct sheet_layout layout_views(const struct drawing *drawing, const bool views[VIEW_COUNT],
                                 double width, double height) {
    double ratio = 1.0;
    struct sheet_layout layout = layout_at(drawing, views, ratio);
    while ((layout.width > width || layout.height > height) && ratio < 1e6) {
        ratio = layout_coarser(ratio);
        layout = layout_at(drawing, views, ratio);
    }
    return layout;
}

struct sheet_layout layout_fold(const struct drawing *drawing, double ratio) {
    struct drawing bare = *drawing;
    const bool corner[VIEW_COUNT] = {[VIEW_CORNER] = true};
    memset(bare.shows, 0, sizeof bare.shows);
    struct sheet_layout layout = layout_at(&bare, corner, ratio);
    layout_move(&layout, 0.0, -HEADING); /* it has a sentence below and none above */
    layout.height -= HEADING;
    return layout;
}

void layout_move(struct sheet_layout *layout, double x, double y) {
    for (int v = 0; v < VIEW_COUNT; v++) {
        struct placed_view *view = &layout->views[v];
        view->site.at.x += x;
        view->site.at.y += y;
        view->site.room.left += x;
        view->site.room.right += x;
        view->site.room.top += y;
        view->site.room.bottom += y;
        view->heading.x += x;
        view->heading.y += y;
    }
}
