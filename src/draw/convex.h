/* draw/convex.h - convex polygons in the plane of the paper.
 *
 * Corners go round one way, either one. Lengths mm; areas under CONVEX_NOTHING count as nothing.
 */
#ifndef DRAW_CONVEX_H
#define DRAW_CONVEX_H

#include "base/arena.h"

#include <stdbool.h>

#define CONVEX_NOTHING 1e-4 /* mm2 */

struct point {
    double x, y;
};
struct convex {
    struct point *corners;
    size_t count;
};
struct convexes {
    struct convex *items;
    size_t count, capacity;
};

double convex_area(const struct convex *shape); /* never negative */

/* The part where a x + b y <= c. */
struct convex convex_clip(struct arena *arena, const struct convex *shape, double a, double b,
                          double c);

/* What is left of the pieces without `hole`, as pieces that do not overlap. */
struct convexes convex_without(struct arena *arena, const struct convexes *pieces,
                               const struct convex *hole);

/* The stretch of the line from `from` to `to` that lies in the shape, as shares 0 to 1 of it,
 * borders counted where `with_borders`. False where there is none. */
bool convex_stretch(const struct convex *shape, struct point from, struct point to,
                    bool with_borders, double *begin, double *end);

#endif
