/* bracing/sheets.h - which panels brace the frame, and the bars that stand for them.
 *
 * Plywood, OSB and hardboard brace where they are screwed on all four edges to sticks; clear sheets
 * only with `braces: yes`; nothing that opens, is held otherwise, or lies more than 5 mm out of one
 * plane. A sheet acts as two crossing bars between opposite corners, half each, with the racking
 * stiffness of bracing/racking.h; not rectangular: mean width and height, own diagonals. Slip of a
 * screw: EN 1995-1-1 Table 7.1 with the lightest wood under its edges, 2/3 when wet; in clear
 * sheets in series with the give of the hole. Values of sheets: tables/sheet-shear.tsv.
 */
#ifndef BRACING_SHEETS_H
#define BRACING_SHEETS_H

#include "bracing/racking.h"
#include "model/model.h"
#include "solve/system.h"

struct bracing_sheet {
    int panel;
    bool braces;        /* it counts */
    bool clear;         /* a clear sheet: no verdict may lean on it */
    const char *reason; /* why it does not count, for people: "it opens"; "" where it counts */
    /* The rest holds only where it braces. */
    double width, height; /* m, mean; width along the more level pair of edges */
    bool upright;         /* the height goes up: the rule for tall narrow panels applies */
    double diagonals[2];  /* m, corners 0-2 and 1-3 */
    double gravity;       /* oven-dry specific gravity of the lightest wood under its edges; NAN
                             where one is not known */
    struct racking racking[STIFFNESS_COUNT]; /* screws at low, middle and high slip */
    double play; /* m of free travel where a hole is 1 mm too large all round: clear sheets
                    only, for information */
};

/* One for each panel of the frame, in file order. */
struct bracing_sheet *bracing_sheets(struct arena *arena, const struct model *model);

/* The two bars of a sheet that braces. */
void bracing_sheet_bars(const struct model *model, const struct bracing_sheet *sheet,
                        enum stiffness stiffness, struct bar bars[2]);

/* Bars of all that brace, two a sheet in file order; `clear_too`: clear sheets as well. Returns how
 * many bars. `(*panel_of)[k]` (may be NULL) gets the panel of bar k. */
size_t bracing_bars(struct arena *arena, const struct model *model,
                    const struct bracing_sheet *sheets, enum stiffness stiffness, bool clear_too,
                    struct bar **bars, int **panel_of);

#endif
