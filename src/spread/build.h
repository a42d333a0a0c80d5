/* spread/build.h - one build of a frame: its own boards, joints and trays.
 *
 * Each input is drawn as a plain number, and what that number means is here:
 *
 * - stiffness and strength of a stick: z, standard normal. E has the table's E as its mean and is
 *   lognormal: E exp(s z - s^2 / 2), s^2 = ln(1 + V^2), V its coefficient of variation. Emin stands
 *   for the E that 19 of 20 sticks reach, so a stick has Emin x (its E / E) / (1 - 1.645 V).
 * - Fb, Ft, Fc, Fv are values that 19 of 20 sticks reach, with what is taken off for safety and
 *   time. A stick has its own: the table's times exp(s (z + 1.645)); what is taken off stays. Fcp
 *   is an average: times exp(s z - s^2 / 2). All with the same z.
 * - joints: u, even from -1 to 1: the middle stiffness times (low / middle)^-u below 0, times
 *   (high / middle)^u above.
 * - trays: their share of the weight described, even between the lightest and the heaviest.
 */
#ifndef SPREAD_BUILD_H
#define SPREAD_BUILD_H

#include "spread/inputs.h"

#include <gsl/gsl_rng.h>

struct build {
    const struct spread_input *inputs;
    size_t count;
    double *values; /* per input, as above */
};

void build_draw(const struct build *build, gsl_rng *rng);

/* The trays of this build, in a frame with shelves of its own. */
void build_trays(const struct build *build, struct frame *frame);

/* Wood and joints: judge_options.vary with a struct build. */
void build_vary(const void *build, struct model *model);

#endif
