/* fix/effort.h - how much trouble a change is, where no price decides.
 *
 * The unit is a board foot of wood (1 ft x 1 ft x 1 in). Wood counts by its own volume; what is no
 * wood counts as the rows fix-* of tables/constants.tsv say [trade].
 */
#ifndef FIX_EFFORT_H
#define FIX_EFFORT_H

#include "fix/work.h"

double board_feet(double cubic_metres);

/* Volume of all that is cut from a kind of stick, board feet. */
double stick_wood(const struct work *work, int stick);
/* Of one piece of that kind, with the work of cutting and fitting it. */
double piece_effort(const struct work *work, int stick, double length);

double effort_of(const char *row); /* of tables/constants.tsv */

#endif
