/* pieces/rectangles.h - the rectangles that sheets are cut from (frame format, "Cut lengths").
 *
 * A panel reaches the outer edges of the sticks that its edges lie on, and its overhang beyond; one
 * that is not rectangular is cut from the smallest rectangle that holds it with a side along one of
 * its edges. A sheet as a deck covers the rails' common length and their outer faces.
 */
#ifndef PIECES_RECTANGLES_H
#define PIECES_RECTANGLES_H

#include "model/model.h"

struct rectangle {
    double across, along; /* m; `along` the run of a panel (its flutes) */
    double area;          /* m2 of the panel itself */
    bool is_whole;        /* the panel is the rectangle */
    bool edge_without_stick;
};
struct rectangle panel_rectangle(const struct model *model, const struct panel *panel);

/* A piece of sheet. */
struct sheet_part {
    const char *name; /* "roof", "lower/deck" */
    int sheet;        /* table_sheet index */
    int panel, shelf; /* which it belongs to; the other -1 */
    struct rectangle rectangle;
};
struct sheet_parts {
    struct sheet_part *items;
    size_t count, capacity;
};

/* Panels in file order, then decks. */
struct sheet_parts sheet_parts(struct arena *arena, const struct model *model);

/* Must its flutes keep their direction? */
bool sheet_is_fluted(int sheet);

#endif
