/* fix/ballast_places.h - where ballast can lie. For src/fix only.
 */
#ifndef FIX_BALLAST_PLACES_H
#define FIX_BALLAST_PLACES_H

#include "fix/work.h"

/* What the weight is shared over: evenly along low sticks, or alike on the feet. */
struct places {
    bool feet;
    struct {
        int *items; /* members, or joints */
        size_t count, capacity;
    } list;
    double length; /* m of all the sticks */
};

/* The rails of the shelf that lies lowest, else every level stick down there. None where the lowest
 * lie over half of the height: the weight would stand in the way there. */
struct places low_sticks(struct work *work);

/* None where nothing stands on feet. */
struct places all_feet(struct work *work);

#endif
