/* loads/panels.h - the weight of covers, carried one way along their flutes.
 *
 * A panel's load goes along `runs` (up-down: along the slope; across: sideways) to the sticks under
 * its two ends and to any stick between that is parallel to them, by the lever rule; sticks on one
 * line share by their lengths; where no stick lies, to the corner joints, with a caution.
 */
#ifndef LOADS_PANELS_H
#define LOADS_PANELS_H

#include "loads/loads.h"

/* Weight of a panel, N: as typed, else sheet (overhang on all sides) and the sticks that frame it.
 */
double panel_weight(const struct model *model, const struct panel *panel);

/* From the middle of one end of its run to the middle of the other: the way its flutes go. */
void panel_run(const struct model *model, const struct panel *panel, double run[3]);

/* Area of the sheet, overhang on all sides included, m2. */
double panel_area(const struct model *model, const struct panel *panel);

/* One line of sticks or one pair of corners that carries a share of a panel. */
struct bearer {
    int member;      /* -1: no stick; the two corner joints carry it */
    double from, to; /* m along the member */
    int corners[2];
    double share; /* of the panel's load; all shares sum to 1 */
    double place; /* along the run: 0 at its first end, 1 at the other */
};

/* The bearers of a panel; returns how many, and the list in the arena. */
size_t panel_bearers(struct arena *arena, const struct model *model, const struct panel *panel,
                     struct bearer **bearers);

/* Length of the run, m: the longer of the two edges along it. */
double panel_longest_run(const struct model *model, const struct panel *panel);

/* Put a force (N, global) that is uniform over the panel onto its bearers. */
void panel_load(struct arena *arena, const struct model *model, const struct bearer *bearers,
                size_t count, const double force[3], struct load_set *set);

/* Add the weight of all panels to the set. */
void panels_weigh(struct arena *arena, const struct model *model, struct load_set *set);

#endif
