/* base/vector.h - three numbers. */
#ifndef BASE_VECTOR_H
#define BASE_VECTOR_H

#include <math.h>

#define SINE_45 0.70710678118654752 /* sine and cosine of 45 degrees */

static inline double vector_dot(const double a[3], const double b[3]) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static inline double vector_length(const double a[3]) {
    return sqrt(vector_dot(a, a));
}

static inline void vector_cross(const double a[3], const double b[3], double out[3]) {
    double x = a[1] * b[2] - a[2] * b[1];
    double y = a[2] * b[0] - a[0] * b[2];
    double z = a[0] * b[1] - a[1] * b[0];
    out[0] = x;
    out[1] = y;
    out[2] = z;
}

/* Scale to length 1; a zero vector stays. */
static inline void vector_unit(double a[3]) {
    double length = vector_length(a);
    if (length > 0.0)
        for (int k = 0; k < 3; k++)
            a[k] /= length;
}

/* out = b - a; returns its length. */
static inline double vector_between(const double a[3], const double b[3], double out[3]) {
    for (int k = 0; k < 3; k++)
        out[k] = b[k] - a[k];
    return vector_length(out);
}

#endif
