/* pieces/sticks.h - every piece of stick that a frame is made of, as it is cut: members, slats, and
 * the sticks that frame a lid.
 *
 * Lengths along the middle line of the piece, m. A piece with slanting ends needs more board than
 * that: up to its long points.
 */
#ifndef PIECES_STICKS_H
#define PIECES_STICKS_H

#include "pieces/ends.h"

struct stick_piece {
    const char *name; /* "rail-1", "lower/slat-1", "lid/frame-1" */
    int stick;
    int member, shelf, panel; /* which it belongs to; the others -1 */
    double length;            /* m, along its middle */
    double needs;             /* m of board, long point to long point */
    struct end_cut ends[2];   /* members alone */
    bool given;               /* `length:` says so */
};
struct stick_pieces {
    struct stick_piece *items;
    size_t count, capacity;
};

/* Members in file order, then slats shelf by shelf, then frames of panels. */
struct stick_pieces stick_pieces(struct arena *arena, const struct model *model);

#endif
