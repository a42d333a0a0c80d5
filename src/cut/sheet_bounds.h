/* cut/sheet_bounds.h - sheets that are needed whatever the pattern: by area, and by plates that do
 * not lie beside each other. For src/cut only.
 */
#ifndef CUT_SHEET_BOUNDS_H
#define CUT_SHEET_BOUNDS_H

#include "cut/plates.h"

/* Areas with widths and heights made larger and smaller by dual feasible functions (Fekete and
 * Schepers 2001): over a threshold from the full width a plate counts as full width, under it as
 * none. */
int sheets_bound(const struct plates *plates);

#endif
