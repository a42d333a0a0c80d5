#include "draw/hatch.h"

#include <math.h>

/* ORDER WORK: how far apart hatch lines are, mm; 0 none */
static const double APART[WORK_COUNT] = {0.0, 0.0, 1.5, 0.8, 1.0, 0.8};

/* Lines in the direction (x, y), each where it lies in the shape. */
static void lines(struct ink *ink, enum pen pen, const struct convex *shape, double x, double y,
                  double apart) {
    double low = INFINITY, high = -INFINITY, from = INFINITY, to = -INFINITY;
    for (size_t k = 0; k < shape->count; k++) {
        double across = shape->corners[k].y * x - shape->corners[k].x * y;
        double along = shape->corners[k].x * x + shape->corners[k].y * y;
        low = fmin(low, across);
        high = fmax(high, across);
        from = fmin(from, along - 1.0);
        to = fmax(to, along + 1.0);
    }
    for (double line = ceil(low / apart); line * apart < high; line += 1.0) {
        double off = line * apart, begin, end;
        struct point a = {from * x - off * y, from * y + off * x};
        struct point b = {to * x - off * y, to * y + off * x};
        if (!convex_stretch(shape, a, b, false, &begin, &end))
            continue;
        ink_line(ink, pen, (struct point){a.x + begin * (b.x - a.x), a.y + begin * (b.y - a.y)},
                 (struct point){a.x + end * (b.x - a.x), a.y + end * (b.y - a.y)});
    }
}

void hatch_shape(struct ink *ink, enum work work, const struct convex *shape, double angle) {
    double x = cos(angle), y = sin(angle);
    ink_shape(ink, (enum pen)(PEN_WOOD_PLAIN + (int)work), shape->corners, shape->count);
    if (!(APART[work] > 0.0))
        return;
    lines(ink, work == WORK_NO_RULE ? PEN_HATCH_DOTS : PEN_HATCH, shape, x, y, APART[work]);
    if (work == WORK_FAILS)
        lines(ink, PEN_HATCH, shape, -y, x, APART[work]);
}
