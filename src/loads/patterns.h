/* loads/patterns.h - shelves that are not all full: each alone, their front halves, their back
 * halves.
 *
 * Full and empty are combinations of their own (with and without the case of the trays). In a
 * pattern the sets of the trays are replaced by its own, whatever the combination makes of them.
 * Explicit loads of the case count as one more shelf. Up to eight shelves are taken one by one;
 * more are taken level by level, from the top eight levels. A plane frame has no halves.
 */
#ifndef LOADS_PATTERNS_H
#define LOADS_PATTERNS_H

#include "loads/loads.h"

/* Fill loads->patterns and add their sets behind the others. The shelves are measured. */
void patterns_build(struct arena *arena, struct loads *loads);

#endif
