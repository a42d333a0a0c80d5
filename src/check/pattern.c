#include "check/pattern.h"

#include "check/rating.h"

#include <math.h>

static void middle_of(const struct pattern *pattern, double middle[2]) {
    middle[0] = middle[1] = 0.0;
    for (size_t k = 0; k < pattern->count; k++)
        for (int i = 0; i < 2; i++)
            middle[i] += pattern->at[k][i] / (double)pattern->count;
}

/* m; screws nearer to the middle of their group than this stand on it. */
static const double ON_IT = 1e-9;

/* Sum of the squared distances from the middle; `largest` gets the largest distance. Both 0 where
 * all stand on one spot. */
static double spread(const struct pattern *pattern, const double middle[2], double *largest) {
    double sum = 0.0;
    *largest = 0.0;
    for (size_t k = 0; k < pattern->count; k++) {
        double r = hypot(pattern->at[k][0] - middle[0], pattern->at[k][1] - middle[1]);
        sum += r * r;
        *largest = fmax(*largest, r);
    }
    if (*largest >= ON_IT)
        return sum;
    return *largest = 0.0;
}

void pattern_forces(const struct pattern *pattern, const double force[2], double moment,
                    double (*out)[2]) {
    double middle[2], largest;
    middle_of(pattern, middle);
    double sum = spread(pattern, middle, &largest);
    double turn = sum > 0.0 ? moment / sum : 0.0;
    for (size_t k = 0; k < pattern->count; k++) {
        out[k][0] = force[0] / (double)pattern->count - turn * (pattern->at[k][1] - middle[1]);
        out[k][1] = force[1] / (double)pattern->count + turn * (pattern->at[k][0] - middle[0]);
    }
}

void pattern_line(size_t count, double length, double slope, double (*at)[2]) {
    for (size_t k = 0; k < count; k++) {
        double along = count > 1 ? length * ((double)k / (double)(count - 1) - 0.5) : 0.0;
        at[k][0] = along * cos(slope);
        at[k][1] = along * sin(slope);
    }
}

double pattern_largest(size_t count, const double (*forces)[2]) {
    double largest = 0.0;
    for (size_t k = 0; k < count; k++) {
        double force = hypot(forces[k][0], forces[k][1]);
        if (ratio_worse(force, largest))
            largest = force;
    }
    return largest;
}

double pattern_sum_r2(const struct pattern *pattern) {
    double middle[2], largest;
    middle_of(pattern, middle);
    return spread(pattern, middle, &largest);
}

double pattern_moment_arm(const struct pattern *pattern) {
    double middle[2], largest;
    middle_of(pattern, middle);
    double sum = spread(pattern, middle, &largest);
    return largest > 0.0 ? sum / largest : 0.0;
}
