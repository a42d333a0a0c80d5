#include "draw/figure.h"

#include "base/vector.h"

#include <math.h>

/* Panels are drawn as glass is in an elevation: a few slanting strokes, so that the wood behind
 * stays to be seen. */

#define FACING 0.3 /* cosine: a sheet that is seen more edgewise is left out */

static void corners_of(const struct figure *figure, size_t panel, struct point out[4]) {
    const struct frame *frame = figure->drawing->frame;
    for (int k = 0; k < 4; k++)
        out[k] =
            figure_point(figure, frame->joints.items[frame->panels.items[panel].corners[k]].at);
}

static double depth_of(const struct figure *figure, size_t panel) {
    const struct frame *frame = figure->drawing->frame;
    double depth = 0.0;
    for (int k = 0; k < 4; k++)
        depth +=
            view_spot(figure->view, frame->joints.items[frame->panels.items[panel].corners[k]].at)
                .depth /
            4.0;
    return depth;
}

/* How squarely it is looked at, 0 to 1. */
static double facing(const struct figure *figure, size_t panel) {
    const struct frame *frame = figure->drawing->frame;
    const int *corners = frame->panels.items[panel].corners;
    double one[3], other[3], normal[3];
    vector_between(frame->joints.items[corners[0]].at, frame->joints.items[corners[2]].at, one);
    vector_between(frame->joints.items[corners[1]].at, frame->joints.items[corners[3]].at, other);
    vector_cross(one, other, normal);
    vector_unit(normal);
    return fabs(vector_dot(normal, figure->view->toward));
}

static bool is_covered(const struct figure *figure, size_t panel, struct point middle) {
    for (size_t k = 0; k < figure->drawing->frame->panels.count; k++) {
        struct point corners[4];
        struct convex shape = {corners, 4};
        double begin, end;
        corners_of(figure, k, corners);
        if (k != panel && facing(figure, k) >= FACING &&
            depth_of(figure, k) > depth_of(figure, panel) + 1e-6 &&
            convex_stretch(&shape, middle, (struct point){middle.x + 0.01, middle.y}, false, &begin,
                           &end))
            return true;
    }
    return false;
}

bool figure_panel_middle(const struct figure *figure, size_t panel, struct point *middle) {
    struct point corners[4];
    corners_of(figure, panel, corners);
    *middle = (struct point){0.0, 0.0};
    for (int k = 0; k < 4; k++) {
        middle->x += corners[k].x / 4.0;
        middle->y += corners[k].y / 4.0;
    }
    return facing(figure, panel) >= FACING && !is_covered(figure, panel, *middle);
}

/* From the sheet's own coordinates to those of the look, with the depth of the sheet there. */
static struct line_seen stroke(const struct figure *figure, size_t panel, struct point from,
                               struct point to) {
    double depth = depth_of(figure, panel);
    return (struct line_seen){.member = -1,
                              .ends = {{from.x - figure->left, figure->top - from.y},
                                       {to.x - figure->left, figure->top - to.y}},
                              .depths = {depth, depth}};
}

static void draw_stroke(struct figure *figure, size_t panel, struct point from, struct point to) {
    struct line_seen line = stroke(figure, panel, from, to);
    struct stretches seen = look_line(figure->look, &line);
    for (size_t k = 0; k < seen.count; k++) {
        struct stretch part = seen.items[k];
        struct point a = {from.x + part.begin * (to.x - from.x),
                          from.y + part.begin * (to.y - from.y)};
        struct point b = {from.x + part.end * (to.x - from.x), from.y + part.end * (to.y - from.y)};
        ink_line(figure->ink, PEN_SHEET, a, b);
        labels_keep_off_line(&figure->labels, a, b);
    }
}

void figure_sheets(struct figure *figure) {
    for (size_t k = 0; k < figure->drawing->frame->panels.count; k++) {
        struct point corners[4], middle;
        if (!figure_panel_middle(figure, k, &middle))
            continue;
        corners_of(figure, k, corners);
        struct convex shape = {corners, 4};
        double reach = sqrt(convex_area(&shape));
        static const double offs[] = {-0.34, -0.29, -0.24, 0.26, 0.31};
        for (size_t s = 0; s < sizeof offs / sizeof *offs; s++) {
            double off = offs[s] * reach, half = (s == 1 ? 0.16 : 0.11) * reach;
            struct point at = {middle.x + off, middle.y + off * 0.4};
            draw_stroke(figure, k, (struct point){at.x - half * 0.6, at.y + half},
                        (struct point){at.x + half * 0.6, at.y - half});
        }
    }
}
