/* cut/holders.h - rectangles that hold sets of plates, and how they are cut. For src/cut only. */
#ifndef CUT_HOLDERS_H
#define CUT_HOLDERS_H

#include "cut/plates.h"

/* One plate, or two holders beside or above each other. */
struct holder {
    int64_t width, height;
    int plate; /* -1: of two parts */
    bool turned;
    bool above; /* the second part lies above the first, else beside it */
    const struct holder *parts[2];
};

/* The smallest rectangles for one set: none is inside of another. */
struct holders {
    const struct holder **items;
    size_t count, capacity;
};

/* Keep it unless it is no smaller than one that is there or larger than a sheet; drop those that
 * are no smaller than it. */
void holders_offer(struct arena *arena, const struct plates *plates, struct holders *holders,
                   struct holder holder);

/* One plate, lying and turned. */
void holders_of_plate(struct arena *arena, const struct plates *plates, size_t plate,
                      struct holders *holders);

/* Two parts, beside and above each other. */
struct holder holder_of_two(const struct holder *one, const struct holder *two, bool above);

/* The plates of a holder onto a sheet, from its corner on. */
struct sheet_layout holder_sheet(struct arena *arena, const struct holder *holder);

#endif
