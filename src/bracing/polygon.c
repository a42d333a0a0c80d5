#include "bracing/polygon.h"

#include "base/vector.h"

#define STRAIGHT 0.02 /* rad: a corner that turns by less is none */

/* How far the farthest corner lies from the plane of the other three. */
static double out_of_plane(const double *const corners[4]) {
    double worst = 0.0;
    for (int k = 0; k < 4; k++) {
        double a[3], b[3], normal[3], to[3];
        vector_between(corners[(k + 1) % 4], corners[(k + 2) % 4], a);
        vector_between(corners[(k + 1) % 4], corners[(k + 3) % 4], b);
        vector_cross(a, b, normal);
        vector_unit(normal);
        vector_between(corners[(k + 1) % 4], corners[k], to);
        worst = fmax(worst, fabs(vector_dot(to, normal)));
    }
    return worst;
}

bool polygon_make(const double *const corners[4], double flat, struct polygon *out) {
    double a[3], b[3], sides[4][3];
    vector_between(corners[0], corners[2], a);
    vector_between(corners[1], corners[3], b);
    vector_cross(a, b, out->normal);
    if (!(vector_length(out->normal) > 0.0))
        return false;
    vector_unit(out->normal);
    for (int k = 0; k < 4; k++) {
        out->at[k] = corners[k];
        vector_between(corners[k], corners[(k + 1) % 4], sides[k]);
        vector_unit(sides[k]);
        vector_cross(out->normal, sides[k], out->inward[k]);
        vector_unit(out->inward[k]);
    }
    for (int k = 0; k < 4; k++) {
        double turn[3];
        vector_cross(sides[k], sides[(k + 1) % 4], turn);
        if (!(vector_dot(turn, out->normal) > STRAIGHT))
            return false;
    }
    return out_of_plane(corners) <= flat;
}

double polygon_depth(const struct polygon *polygon, const double point[3]) {
    double depth = INFINITY;
    for (int k = 0; k < 4; k++) {
        double to[3];
        vector_between(polygon->at[k], point, to);
        depth = fmin(depth, vector_dot(to, polygon->inward[k]));
    }
    return depth;
}

double polygon_off(const struct polygon *polygon, const double point[3]) {
    double to[3];
    vector_between(polygon->at[0], point, to);
    return fabs(vector_dot(to, polygon->normal));
}

double polygon_cut(const struct polygon *polygon, const double a[3], const double b[3],
                   double margin) {
    double from = 0.0, to = 1.0, along[3];
    double length = vector_between(a, b, along);
    for (int k = 0; k < 4; k++) {
        double start[3];
        vector_between(polygon->at[k], a, start);
        double depth = vector_dot(start, polygon->inward[k]) - margin;
        double slope = vector_dot(along, polygon->inward[k]);
        if (fabs(slope) <= 1e-12 * length) {
            if (depth < 0.0)
                return 0.0;
        } else if (slope > 0.0) {
            from = fmax(from, -depth / slope);
        } else {
            to = fmin(to, -depth / slope);
        }
    }
    return to > from ? (to - from) * length : 0.0;
}
