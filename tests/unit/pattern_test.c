/* Forces on a group of screws (joints.md 3.4): by hand, and in balance with what acts. */
#include "check/pattern.h"

#include "near.h"

#include <gsl/gsl_rng.h>

enum { MOST = 12 };

/* Sum of forces and of moments about the group's middle, against the load. */
static void in_balance(const struct pattern *pattern, const double force[2], double moment) {
    double out[MOST][2], sum[2] = {0.0, 0.0}, middle[2] = {0.0, 0.0}, turning = 0.0;
    pattern_forces(pattern, force, moment, out);
    for (size_t k = 0; k < pattern->count; k++)
        for (int i = 0; i < 2; i++) {
            sum[i] += out[k][i];
            middle[i] += pattern->at[k][i] / (double)pattern->count;
        }
    for (size_t k = 0; k < pattern->count; k++)
        turning += (pattern->at[k][0] - middle[0]) * out[k][1] -
                   (pattern->at[k][1] - middle[1]) * out[k][0];
    double size = hypot(force[0], force[1]) + fabs(moment);
    NEAR_ABS(sum[0], force[0], 1e-9 * size);
    NEAR_ABS(sum[1], force[1], 1e-9 * size);
    NEAR_ABS(turning, moment, 1e-9 * size);
}

Test(pattern, random_groups_are_in_balance) {
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 20264);
    for (int round = 0; round < 500; round++) {
        double at[MOST][2];
        struct pattern pattern = {2 + gsl_rng_uniform_int(random, MOST - 1),
                                  (const double(*)[2])at};
        for (size_t k = 0; k < pattern.count; k++)
            for (int i = 0; i < 2; i++)
                at[k][i] = 0.2 * gsl_rng_uniform(random) - 0.05;
        const double force[2] = {2000.0 * gsl_rng_uniform(random) - 1000.0,
                                 2000.0 * gsl_rng_uniform(random) - 1000.0};
        in_balance(&pattern, force, 100.0 * gsl_rng_uniform(random) - 50.0);
    }
    gsl_rng_free(random);
}

Test(pattern, random_lines_are_in_balance) {
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 20265);
    for (int round = 0; round < 500; round++) {
        double at[MOST][2];
        size_t count = 2 + gsl_rng_uniform_int(random, MOST - 1);
        pattern_line(count, 0.01 + 0.2 * gsl_rng_uniform(random), 3.0 * gsl_rng_uniform(random),
                     at);
        const double force[2] = {gsl_rng_uniform(random), -gsl_rng_uniform(random)};
        in_balance(&(struct pattern){count, (const double(*)[2])at}, force,
                   10.0 * gsl_rng_uniform(random) - 5.0);
    }
    gsl_rng_free(random);
}

/* No screw ever carries less than its even share of the force alone, nor of the moment alone. */
Test(pattern, the_worst_carries_at_least_the_average) {
    const double at[4][2] = {{0.0, 0.0}, {0.06, 0.0}, {0.06, 0.03}, {0.0, 0.03}};
    const struct pattern pattern = {4, at};
    double out[4][2];
    pattern_forces(&pattern, (const double[2]){30.0, 40.0}, 7.0, out);
    cr_assert(pattern_largest(4, (const double(*)[2])out) >= 50.0 / 4.0, "under the average");
}

/* Two screws 60 mm apart: a moment alone is the couple F x 60 mm; with a force of 200 N across
 * their line, 100 N each: 21.9 N-m gives 365 N more on one and 365 N less on the other. */
Test(pattern, two_screws_by_hand) {
    double at[2][2], out[2][2];
    pattern_line(2, 0.060, 0.0, at);
    const struct pattern pattern = {2, (const double(*)[2])at};
    pattern_forces(&pattern, (const double[2]){0.0, 200.0}, 21.9, out);
    NEAR_ABS(out[0][0], 0.0, 1e-12);
    NEAR_ABS(out[0][1], 100.0 - 365.0, 1e-9);
    NEAR_ABS(out[1][1], 100.0 + 365.0, 1e-9);
    NEAR_REL(pattern_largest(2, (const double(*)[2])out), 465.0, 1e-12);
    /* the page's own number: Z' = 0.7 x 117 lb = 364 N allows 364 x 0.060 = 21.9 N-m */
    NEAR_REL(pattern_moment_arm(&pattern), 0.060, 1e-12);
    NEAR_ABS(364.0 * pattern_moment_arm(&pattern), 21.9, 0.1);
}

/* Two screws 2.4 in apart under 30 lb across and 60 lb-in: 15 lb each, and 60 / 2.4 = 25 lb. */
Test(pattern, two_screws_in_inches) {
    const double inch = 0.0254, pound = 4.4482216152605;
    double at[2][2], out[2][2];
    pattern_line(2, 2.4 * inch, 1.5707963267948966, at);
    pattern_forces(&(struct pattern){2, (const double(*)[2])at},
                   (const double[2]){30.0 * pound, 0.0}, 60.0 * pound * inch, out);
    NEAR_ABS(out[0][0] / pound, 15.0 + 25.0, 1e-9);
    NEAR_ABS(out[1][0] / pound, 15.0 - 25.0, 1e-9);
    NEAR_ABS(out[0][1] / pound, 0.0, 1e-9);
}

/* Four on 60 x 30 mm: sum r^2 = 4 (30^2 + 15^2) = 4500 mm2, r = 33.541 mm. */
Test(pattern, four_screws_on_a_rectangle) {
    const double at[4][2] = {{0.1, 0.2}, {0.16, 0.2}, {0.16, 0.23}, {0.1, 0.23}};
    const struct pattern pattern = {4, at};
    double out[4][2];
    NEAR_REL(pattern_moment_arm(&pattern), 4500e-6 / 33.541020e-3, 1e-7);
    pattern_forces(&pattern, (const double[2]){0.0, 0.0}, 4.5, out);
    for (int k = 0; k < 4; k++) /* 4.5 N-m x r / 4500 mm2: 15 N and 30 N */
        NEAR_REL(hypot(out[k][0], out[k][1]), hypot(15.0, 30.0), 1e-12);
    NEAR_REL(out[1][0], 15.0, 1e-9); /* lower right: to the right, and up */
    NEAR_REL(out[1][1], 30.0, 1e-9);
}

/* Three in a line: n (n + 1) / (12 (n - 1)) L^2 = L^2 / 2, the outermost at L / 2: L. */
Test(pattern, arms_of_lines) {
    static const double want[] = {0.0, 1.0, 1.0, 10.0 / 9.0, 1.25};
    for (size_t n = 1; n <= 5; n++) {
        double at[5][2];
        pattern_line(n, 1.0, 0.4, at);
        NEAR_ABS(pattern_moment_arm(&(struct pattern){n, (const double(*)[2])at}), want[n - 1],
                 1e-12);
    }
}

/* Screws on one spot carry the force and no moment, wherever the spot is. */
Test(pattern, on_one_spot) {
    double at[10][2], out[10][2];
    for (int k = 0; k < 10; k++) {
        at[k][0] = 0.1;
        at[k][1] = 0.7;
    }
    const struct pattern pattern = {10, (const double(*)[2])at};
    pattern_forces(&pattern, (const double[2]){100.0, -200.0}, 5.0, out);
    for (int k = 0; k < 10; k++) {
        NEAR_REL(out[k][0], 10.0, 1e-9);
        NEAR_REL(out[k][1], -20.0, 1e-9);
    }
    cr_assert(pattern_moment_arm(&pattern) == 0.0, "an arm on one spot");
}

Test(pattern, a_number_that_is_none_stays_the_worst) {
    const double forces[3][2] = {{1.0, 0.0}, {NAN, 0.0}, {9.0, 0.0}};
    cr_assert(isnan(pattern_largest(3, forces)), "NaN was lost");
}
