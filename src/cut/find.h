/* cut/find.h - the steps from quick plans to proof, one after the other until the plan costs no
 * more than its bound. For src/cut only.
 */
#ifndef CUT_FIND_H
#define CUT_FIND_H

#include "cut/kinds.h"

struct found {
    struct layout best;
    int64_t bound; /* no plan costs less */
};
struct found find_layout(struct arena *arena, const struct kinds *kinds);

#endif
