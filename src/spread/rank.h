/* spread/rank.h - which inputs matter most for a check: Spearman's rank correlation.
 *
 * Of unrelated numbers it is about 0 with a standard deviation of 1 / sqrt(builds - 1); what is not
 * three of those away from 0 is not told from chance, and not named.
 */
#ifndef SPREAD_RANK_H
#define SPREAD_RANK_H

#include "base/arena.h"
#include "result/spread_answer.h"

/* Fill the matters of a check. `values`: per input, per build. */
void rank_matters(struct arena *arena, const double *const *values, size_t inputs, size_t builds,
                  struct spread_check *check);

#endif
