/* cut/sheets.h - rectangles out of sheets by guillotine cuts: the fewest sheets, and how sure that
 * is.
 *
 * Every cut goes from edge to edge of what is cut, as a saw on a guide does. Plain numbers, whole
 * nanometres; neighbours lie a kerf apart. A piece that may not turn keeps its width along the
 * sheet's width (flutes keep their direction).
 *
 * A few pieces are cut exactly (every guillotine pattern is looked at, see cut/guillotine.h); many
 * by laying them into free parts in several orders. The bound is by area, and by pieces that do not
 * lie beside each other.
 */
#ifndef CUT_SHEETS_H
#define CUT_SHEETS_H

#include "base/arena.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct sheet_piece {
    int64_t width, height; /* nm, over 0 */
    bool may_turn;
};
struct sheet_task {
    const struct sheet_piece *pieces;
    size_t count;
    int64_t width, height; /* nm, of a sheet */
    int64_t kerf;
};

struct placed {
    int sheet;    /* -1: the piece is larger than a sheet */
    int64_t x, y; /* nm, of its corner nearest to the sheet's */
    bool turned;
};
struct sheet_plan {
    struct placed *places; /* per piece */
    int sheets;
    int bound;
    bool proved; /* sheets == bound */
    int too_large;
};

struct sheet_plan sheets_cut(struct arena *arena, const struct sheet_task *task);

#endif
