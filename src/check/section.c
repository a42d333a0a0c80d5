#include "check/section.h"

#include <math.h>

struct section section_rectangle(double thickness, double width) {
    double b = fmin(thickness, width), d = fmax(thickness, width);
    return (struct section){.thickness = b,
                            .width = d,
                            .area = b * d,
                            .strong = b * d * d / 6.0,
                            .weak = d * b * b / 6.0,
                            .column_width = d,
                            .column_thickness = b,
                            .own = false};
}

struct section section_own(double area, double strong_inertia, double weak_inertia,
                           double thickness, double width) {
    double b = fmin(thickness, width), d = fmax(thickness, width);
    return (struct section){.thickness = b,
                            .width = d,
                            .area = area,
                            .strong = d > 0.0 ? 2.0 * strong_inertia / d : NAN,
                            .weak = b > 0.0 ? 2.0 * weak_inertia / b : NAN,
                            .column_width = sqrt(12.0 * strong_inertia / area),
                            .column_thickness = sqrt(12.0 * weak_inertia / area),
                            .own = true};
}
