/* cut/failed.h - what the search has found hopeless: pieces left, and the cost that was left for
 * them. For src/cut only.
 */
#ifndef CUT_FAILED_H
#define CUT_FAILED_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct failed;

struct failed *failed_new(struct arena *arena, size_t kinds);

/* Failed with these pieces left and at least as much cost left? */
bool failed_before(const struct failed *failed, const int *left, int64_t cost_left);

/* Remember; forgotten where there is no more room. */
void failed_note(struct failed *failed, const int *left, int64_t cost_left);

#endif
