/* fix/panel_changes.h - changes of sheets and lids. For src/fix only.
 */
#ifndef FIX_PANEL_CHANGES_H
#define FIX_PANEL_CHANGES_H

#include "fix/work.h"

/* Each adds a slot for that panel. (fix/sheet_changes.c, fix/lid_changes.c) */
void changes_of_sheet(struct work *work, int index);
void changes_of_sheet_screws(struct work *work, int index); /* size and spacing are said */
void changes_of_hinges(struct work *work, int index);

struct choice *panel_slot(struct work *work, enum change_kind kind, int panel);
/* An edit of those keys: "screw: 8". */
const char *panel_edit(const struct work *work, const struct panel *panel, const char *keys);
/* From corner `k` to the next, m. */
double panel_edge(const struct work *work, const struct panel *panel, int k);

#endif
