/* cut/knapsack.h - what is worth most on one board: sizes, worths and at most so many of each.
 *
 * Whole numbers throughout, so the answer is exact. For src/cut only.
 */
#ifndef CUT_KNAPSACK_H
#define CUT_KNAPSACK_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct knapsack {
    size_t count;
    const int64_t *size;  /* over 0 */
    const int64_t *worth; /* 0 or more; each sum that fits is under 2^53 */
    const int *most;      /* of each, 0 or more */
    int64_t room;
    long *patience; /* further steps where nothing is found soon; what is used is taken off */
};

/* A choice worth more than `over`, into take[], the best unless too much would have to be tried;
 * its worth, or `over` (take[] untouched) where there is none. *upper gets a number that no choice
 * is worth more than: the answer itself where everything was tried. */
int64_t knapsack_best(struct arena *arena, const struct knapsack *knapsack, int64_t over, int *take,
                      int64_t *upper);

#endif
