/* bracing/candidates.h - where a diagonal could go.
 *
 * Both diagonals of every cell, and the long ones of each upright or sloped face: from a foot
 * corner to the far top corner, both ways. Left out: a pair of joints that a stick joins already or
 * that came before, and a pair that the ground holds at both ends. Order: cells as in
 * bracing/cells.h, the one that starts at the lower end of the first joint first; then the long
 * ones by face.
 */
#ifndef BRACING_CANDIDATES_H
#define BRACING_CANDIDATES_H

#include "bracing/cells.h"

struct candidate {
    int from, to;          /* joints; from is the lower, of equal height the first in the file */
    const char *where;     /* "front, lower bay"; "front, long" */
    bool closed_off;       /* no brace may go there: a panel opens, or the face is kept open */
    const char *closed_by; /* "the panel front opens", "the front is kept open"; "" */
    int face;
    int cell; /* -1: a long one */
};

struct candidates {
    struct candidate *items;
    size_t count;
};

struct candidates candidates_of(struct arena *arena, const struct cells *cells);

#endif
