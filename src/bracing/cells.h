/* bracing/cells.h - the four-sided openings between sticks, and the faces of the frame they lie in.
 *
 * A cell is four joints a-b-c-d around an opening: each side lies along one stick (which may pass
 * through other joints on the way), or along the ground between two joints that stand on it; flat
 * within 5 mm, convex, and with no stick that divides it. Diagonals do not divide: neither sticks
 * that act as brace or tie, nor a stick from corner to corner, nor a stick that crosses without a
 * joint. A face is all cells in one plane that hang together. Lengths m.
 */
#ifndef BRACING_CELLS_H
#define BRACING_CELLS_H

#include "model/model.h"

#define CELL_FLAT 0.005 /* m out of plane that still counts as flat */

enum face_kind { FACE_UPRIGHT, FACE_SLOPED, FACE_LEVEL };

struct face {
    enum face_kind kind;
    const char *words; /* "front", "left", "roof", "front roof", "lower shelf", "level at 29 in",
                          "inner upright face 18 in from the left"; may stand for several faces */
    const char *the;   /* the same in a sentence: "the front", "the left side", "the lower shelf" */
    bool kept_open;    /* named in `keep-open` */
    double at[3], normal[3];     /* a point of the plane, unit normal */
    double across[3], upward[3]; /* unit vectors in it: to the right (front to back in a side),
                                    and up (away from the front in a level face) */
    int bays, columns; /* how many cells lie one above the other, and side by side, at most */
    int axis;          /* level direction in which it leans: 0 x, 1 y; -1 neither or a level face */
};

struct cell {
    int joints[4]; /* around; joints[0] is the first in the file */
    int face;
    int bay, column;   /* from the ground (level face: from the front), and from the left (a side:
                          from the front); both from 1 */
    bool on_ground;    /* one side is the ground */
    const char *where; /* "front, lower bay", "roof", "lower shelf, second from the left" */
    const char *bay_words; /* "lower bay", "second bay from the left"; "" where the face has one */
    const char *row_words; /* the same without the column: "lower bay"; "" where all are in a row */
};

struct cells {
    const struct model *model;
    struct cell *items; /* in the order of their joints in the file */
    size_t count;
    struct face *faces; /* in the order of their first cells */
    size_t face_count;
};

struct cells *cells_find(struct arena *arena, const struct model *model);

/* How far a cell goes out of square under movements of the joints: the largest change of a corner's
 * angle, rad for movements in m. */
double cell_lean(const struct model *model, const struct cell *cell, const double (*moves)[3]);

#endif
