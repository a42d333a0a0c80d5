#include "draw/figure.h"

#include "base/vector.h"

#include <math.h>

/* What holds the frame: ground under feet, earth round a post, blocks and straps. In the plan the
 * posts hide it. */

#define GROUND_HALF 4.0 /* mm to either side of a foot */
#define STROKE 1.3      /* mm, of the slanting strokes under the ground */

static void line(struct figure *figure, struct point from, struct point to) {
    ink_line(figure->ink, PEN_GROUND, from, to);
    labels_keep_off_line(&figure->labels, from, to);
}

static void ground(struct figure *figure, struct point at) {
    line(figure, (struct point){at.x - GROUND_HALF, at.y},
         (struct point){at.x + GROUND_HALF, at.y});
    for (double x = -GROUND_HALF + STROKE; x <= GROUND_HALF + 1e-9; x += STROKE)
        line(figure, (struct point){at.x + x, at.y},
             (struct point){at.x + x - STROKE, at.y + STROKE});
}

/* A post in earth goes on below the joint. */
static void in_earth(struct figure *figure, struct point at, double deep) {
    double below = deep * figure->scale * figure->view->up[2];
    ground(figure, (struct point){at.x - 2.0 * GROUND_HALF, at.y});
    ground(figure, (struct point){at.x + 2.0 * GROUND_HALF, at.y});
    for (double y = 0.0; y < below; y += 2.0)
        for (int side = -1; side <= 1; side += 2)
            line(figure, (struct point){at.x + side * 1.5, at.y + y},
                 (struct point){at.x + side * 1.5, at.y + fmin(y + 1.2, below)});
}

static void triangle(struct figure *figure, struct point at) {
    struct point left = {at.x - 1.8, at.y + 3.0}, right = {at.x + 1.8, at.y + 3.0};
    line(figure, at, left);
    line(figure, at, right);
    line(figure, left, right);
}

/* Held along a direction only: a short double bar across it, with a tie to the joint. */
static void strap(struct figure *figure, struct point at, int axis) {
    double along[3] = {axis == 0, axis == 1, axis == 2};
    struct point way = figure_direction(figure, along);
    double length = hypot(way.x, way.y);
    if (length < 0.2 * figure->scale)
        return;
    way = (struct point){way.x / length, way.y / length};
    if (axis == 2)
        way = (struct point){-way.x, -way.y}; /* from below */
    struct point end = {at.x + 3.5 * way.x, at.y + 3.5 * way.y};
    line(figure, at, end);
    for (int bar = 0; bar < 2; bar++) {
        struct point middle = {end.x + bar * 0.7 * way.x, end.y + bar * 0.7 * way.y};
        line(figure, (struct point){middle.x - 1.8 * way.y, middle.y + 1.8 * way.x},
             (struct point){middle.x + 1.8 * way.y, middle.y - 1.8 * way.x});
    }
}

static bool holds_all(const struct support *support, int from, int to) {
    for (int k = from; k < to; k++)
        if (!support->held[k])
            return false;
    return true;
}

static void support_drawn(struct figure *figure, const struct support *support) {
    const double *joint = figure->drawing->frame->joints.items[support->joint].at;
    struct point at = figure_point(figure, joint);
    if (support->in_ground.given)
        in_earth(figure, at, support->in_ground.value);
    else if (support->foot)
        ground(figure, at);
    else if (holds_all(support, 0, 6)) {
        ground(figure, at);
        triangle(figure, at);
    } else if (holds_all(support, 0, 3) ||
               (figure->drawing->frame->plane && support->held[0] && support->held[2])) {
        triangle(figure, at);
        ground(figure, (struct point){at.x, at.y + 3.0});
    } else
        for (int axis = 0; axis < 3; axis++)
            if (support->held[axis])
                strap(figure, at, axis);
}

void figure_feet(struct figure *figure) {
    const struct frame *frame = figure->drawing->frame;
    for (size_t s = 0; figure->kind != VIEW_PLAN && s < frame->supports.count; s++)
        support_drawn(figure, &frame->supports.items[s]);
}
