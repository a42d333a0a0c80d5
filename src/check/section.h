/* check/section.h - the cross section that a check works with. */
#ifndef CHECK_SECTION_H
#define CHECK_SECTION_H

#include "working/working.h"

#include <stdbool.h>

struct section {
    double thickness, width; /* m, smaller and larger side; 0 where not known */
    double area;             /* m2 */
    double strong, weak;     /* m3, section modulus edgewise and flatwise; NAN where not known */
    double column_width, column_thickness; /* m: the sides of the rectangle that buckles alike, r x
                                              sqrt(12); those of the stick where it is one */
    bool own; /* area and moduli are the user's, not those of the rectangle */
};

/* b x d, b2 d ... of a rectangle, sides in either order. */
struct section section_rectangle(double thickness, double width);
/* A section of given area (m2) and inertias (m4); sides 0 where not known, then no stress in
 * bending can be told. */
struct section section_own(double area, double strong_inertia, double weak_inertia,
                           double thickness, double width);

#endif
