/* bracing/panel_rack.h - the racking force on a sheet against what it may take (check
 * `panel-rack`).
 *
 * Wood panels: allowable unit shear for the spacing of the fastenings x width (APA, SDPWS; nails of
 * the table stand for screws as thick), x (1 - (0.5 - G)) for light wood, x 2b/h where over twice
 * as tall as wide; published for wind (ten minutes), so x CD/1.6; spacing over 6 in: x 6 in/s
 * [trade]. Clear sheets: a third of the bearing strength at the corner screw; half of the shear
 * buckling load. Both: the corner screw's own lateral value, where one is given.
 */
#ifndef BRACING_PANEL_RACK_H
#define BRACING_PANEL_RACK_H

#include "bracing/sheets.h"
#include "working/working.h"

struct panel_rack {
    bool covered;
    const char *missing; /* what has no published value; "" where covered */
    double demand;       /* N, racking force on the sheet */
    double limit;        /* N; NAN where not covered */
    const char *source;  /* of what governs */
    const char *governs; /* "shear of the sheet", "corner screw", "corner screw in the sheet",
                            "buckling of the sheet" */
    bool screw_left_out; /* no lateral value was given: to be said */
};

/* `bar_forces`: N, tension positive, of the sheet's two bars at `stiffness`. `screw_lateral`:
 * lateral value of one edge screw with all factors, N; NAN where not known. `working` may be
 * NULL. */
struct panel_rack panel_rack_rating(const struct model *model, const struct bracing_sheet *sheet,
                                    enum stiffness stiffness, const double bar_forces[2],
                                    double screw_lateral, enum duration duration,
                                    struct working *working);

#endif
