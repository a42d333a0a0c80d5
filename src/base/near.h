/* base/near.h - the name that was probably meant. */
#ifndef BASE_NEAR_H
#define BASE_NEAR_H

#include <stddef.h>

/* The nearest of `count` names to `found` (edit distance with neighbouring letters swapped counting
 * as one, case ignored), or NULL where none is close: at most a third of the letters, and at least
 * one, may differ, and one has to be the same. The first in order wins a tie. */
const char *near_name(const char *found, const char *const *names, size_t count);

#endif
