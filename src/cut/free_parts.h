/* cut/free_parts.h - plates laid one after the other into free parts of sheets, each part cut in
 * two by a guillotine cut. For src/cut only.
 */
#ifndef CUT_FREE_PARTS_H
#define CUT_FREE_PARTS_H

#include "cut/plates.h"

/* The fewest sheets over several orders, choices of the part and ways to cut it. Stops at `bound`
 * sheets. */
struct sheets_layout free_parts_fewest(struct arena *arena, const struct plates *plates,
                                       size_t bound);

#endif
