/* loads/combinations.h - which cases act together (ASCE 7-16 2.4.1, allowable stress design).
 *
 * D self, T trays, S snow, W wind, with the duration of the shortest load. `combine:` of a file
 * replaces the built-in ones. A combination whose cases do not occur is left out.
 */
#ifndef LOADS_COMBINATIONS_H
#define LOADS_COMBINATIONS_H

#include "loads/loads.h"

void combinations_build(struct arena *arena, struct loads *loads);

#endif
