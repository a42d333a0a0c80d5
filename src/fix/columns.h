/* fix/columns.h - where legs under the shelves would stand. For src/fix only.
 */
#ifndef FIX_COLUMNS_H
#define FIX_COLUMNS_H

#include "fix/work.h"

/* A place on the ground plan with the rails that a leg there would hold, from the ground up. */
struct column {
    double at[3];
    struct {
        double *items; /* m, heights */
        size_t count, capacity;
    } heights;
    int shelf; /* the first that has a rail here */
};
struct columns {
    struct column *items;
    size_t count, capacity;
};

/* Under the middle of the longest stretch of each shelf rail that no upright divides. */
struct columns find_columns(struct work *work);

/* Height of the lowest support, m. */
double ground_height(const struct work *work);

#endif
