/* check/pattern.h - what a force and a moment on a group of equal screws put on each of them.
 *
 * The group is elastic and turns about its middle: each screw takes the same share of the force,
 * and of the moment in proportion to its distance from the middle (F_i = M r_i / sum r^2), at right
 * angles to the line from the middle. Plane of the screws' heads; N, N-m, m.
 */
#ifndef CHECK_PATTERN_H
#define CHECK_PATTERN_H

#include <stddef.h>

struct pattern {
    size_t count;
    const double (*at)[2]; /* m, any origin */
};

/* Force on each screw from a force through the middle of the group and a moment (right-handed, from
 * the first axis to the second). The forces add up to the force, and their moments about the middle
 * to the moment; where all screws stand on one spot the moment is left out. */
void pattern_forces(const struct pattern *pattern, const double force[2], double moment,
                    double (*out)[2]);

/* A line of screws, evenly spread over `length` in the direction of the angle `slope` (rad), about
 * the origin. */
void pattern_line(size_t count, double length, double slope, double (*at)[2]);

/* Largest force on a screw; NAN where one is not a number. */
double pattern_largest(size_t count, const double (*forces)[2]);

/* Sum of the squared distances from the middle, m2; 0 where all stand on one spot. */
double pattern_sum_r2(const struct pattern *pattern);

/* The largest moment that such a group carries where each screw carries one newton: sum r^2 / r of
 * the outermost, m. 0 where all stand on one spot. */
double pattern_moment_arm(const struct pattern *pattern);

#endif
