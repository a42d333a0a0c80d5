/* fold/readable.h - the same ways to fold in a form that reads well.
 *
 * Any mix of the ways is a way; by elimination: first the movements left and right alone, then
 * front and back alone, then up and down alone, then the rest; each with as few moving joints as
 * elimination gives, the earlier joints of the file leading. Deterministic.
 */
#ifndef FOLD_READABLE_H
#define FOLD_READABLE_H

#include "fold/ways.h"

#define READABLE_AT_MOST 100 /* more ways than these are left as they are */

/* Replaces the movements (largest entry 1). Ways that are a mix of the others go. */
void fold_readable(struct arena *arena, const struct model *model, struct fold_ways *ways);

#endif
