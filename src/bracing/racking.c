#include "bracing/racking.h"

#include <math.h>

#define PI 3.14159265358979323846
#define SQUARE_SHEAR 5.34 /* k of the long plate with hinged edges, and */
#define LENGTH_SHEAR 4.0  /* what shortness adds: 9.34 for a square */
#define STRIP_SHEAR 8.125 /* of the long strip of unlike stiffness */

struct racking racking_of_sums(const struct racking_sheet *sheet, double sum_x2, double sum_y2) {
    double b = sheet->width, h = sheet->height;
    struct racking racking = {.sum_x2 = sum_x2, .sum_y2 = sum_y2};
    racking.fastening = sheet->slip / (h * h * (1.0 / sum_x2 + 1.0 / sum_y2));
    racking.sheet = sheet->shear * b / h;
    racking.stiffness = 1.0 / (1.0 / racking.fastening + 1.0 / racking.sheet);
    racking.corner_share = h * hypot(b / 2.0 / sum_x2, h / 2.0 / sum_y2);
    return racking;
}

struct racking racking_of(const struct racking_sheet *sheet) {
    double b = sheet->width, h = sheet->height, s = sheet->spacing;
    return racking_of_sums(sheet, b * b * (3.0 * h + b) / (6.0 * s),
                           h * h * (3.0 * b + h) / (6.0 * s));
}

double racking_play(double width, double height, double gap) {
    return 2.0 * gap * (1.0 + height / width);
}

double buckling_flow_solid(double E, double poisson, double thickness, double width,
                           double height) {
    double a = fmin(width, height), c = fmax(width, height);
    double D = E * thickness * thickness * thickness / (12.0 * (1.0 - poisson * poisson));
    double k = SQUARE_SHEAR + LENGTH_SHEAR * (a / c) * (a / c);
    return k * PI * PI * D / (a * a);
}

double buckling_flow_ribbed(double E, double poisson, double skins, double depth,
                            double across_share, double width, double height) {
    double a = fmin(width, height);
    double apart = depth - skins / 2.0; /* of the middles of the skins */
    double along = E * skins / 4.0 * apart * apart / (1.0 - poisson * poisson);
    double across = across_share * along;
    return 4.0 * STRIP_SHEAR * sqrt(sqrt(along * across * across * across)) / (a * a);
}
