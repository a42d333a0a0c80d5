/* judge/patterns.h - mixes with shelves that are not all full (loads/patterns.h). */
#ifndef JUDGE_PATTERNS_H
#define JUDGE_PATTERNS_H

#include "judge/run.h"

/* Do the weights take trays? */
bool pattern_matters(const struct run *run, const double *weights);

/* Put the trays of a pattern in the place of those of the full shelves, in the weights of a mix,
 * whatever it makes of them. False where that cannot be solved. */
bool pattern_apply(const struct run *run, size_t pattern, double *weights);

#endif
