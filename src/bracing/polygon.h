/* bracing/polygon.h - four corners in a plane: inside, flat, cut by a line. m. */
#ifndef BRACING_POLYGON_H
#define BRACING_POLYGON_H

#include <stdbool.h>

struct polygon {
    const double *at[4];
    double normal[3];    /* unit, right-handed around the corners */
    double inward[4][3]; /* unit, of each side */
};

/* False where it is not convex, a corner is nearly straight, or one lies further than `flat` out of
 * the plane of the others. */
bool polygon_make(const double *const corners[4], double flat, struct polygon *out);

/* Distance of a point inside the nearest side (negative: outside), seen along the normal. */
double polygon_depth(const struct polygon *polygon, const double point[3]);

/* Distance of a point from the plane. */
double polygon_off(const struct polygon *polygon, const double point[3]);

/* Length of the piece from `a` to `b` that lies more than `margin` inside. */
double polygon_cut(const struct polygon *polygon, const double a[3], const double b[3],
                   double margin);

#endif
