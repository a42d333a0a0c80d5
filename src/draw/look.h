/* draw/look.h - a frame from one side: which parts of the sides and edges of its sticks are seen.
 *
 * Exact, not by order of painting: from every side the sides in front of it are taken away, each
 * only where it is in front (two planes cross in a line), so sticks that cross or run into one
 * another come out right. Where two lie in one plane the stick that comes first in the file is on
 * top. Paper coordinates of the view in mm, up positive; depth in m, towards the one who looks.
 */
#ifndef DRAW_LOOK_H
#define DRAW_LOOK_H

#include "draw/convex.h"
#include "draw/view.h"
#include "draw/wood.h"

struct face_seen { /* one side of a stick that looks this way */
    int member;
    struct convex outline;
    double depth[3];        /* depth = depth[0] x + depth[1] y + depth[2] */
    struct convexes pieces; /* what is seen of it */
};

struct line_seen {
    int member; /* -1: no edge of a stick */
    struct point ends[2];
    double depths[2];
    bool outer; /* an edge between a side that looks this way and one that does not */
};

struct stretch { /* a part of a line, shares of it */
    double begin, end;
};
struct stretches {
    struct stretch *items;
    size_t count, capacity;
};

struct look {
    struct arena *arena;
    struct face_seen *faces;
    size_t face_count;
    struct line_seen *edges;
    size_t edge_count;
    /* squares of the paper, each with the faces that touch it */
    double left, bottom, square;
    size_t columns, rows;
    size_t *first; /* into `touching`, columns * rows + 1 */
    int *touching;
    size_t *asked; /* per face: the last question that met it */
    size_t questions;
};

/* `scale` mm of paper a metre. */
struct look *look_at(struct arena *arena, const struct wood *woods, size_t count,
                     const struct view *view, double scale);

/* The seen parts of a line: of an edge, or of any other. */
struct stretches look_line(struct look *look, const struct line_seen *line);

/* ---- between look.c and hidden.c ---- */

struct patch {
    double left, low, right, high;
};
struct squares {
    size_t column, last_column, row, last_row; /* first > last: none */
};
struct squares look_squares(const struct look *look, struct patch patch);
struct patch patch_of(const struct point *points, size_t count);

/* Fill the pieces of every face. */
void look_hide(struct look *look);

#endif
