/* loads/combinations.h - which cases act together (ASCE 7-16 2.4.1, allowable stress design).
 *
 * D self, T trays, S snow, W wind, with the duration of the shortest load:
 *   D, D+T, D+S, D+T+S, D+T+0.6W, D+T+0.75S+0.45W, 0.6D+0.6W, D+push, D+T+push
 * for every way in which snow lies and wind blows (loads/weather.h). A map load of snow of 7-22 is
 * 0.7S for S; a real gust is W for 0.6W. Trays that stand shortly take 0.75 beside snow or wind.
 * `combine:` of a file replaces the built-in ones; where one names snow or wind, each variant makes
 * one more. A combination whose cases do not occur is left out.
 */
#ifndef LOADS_COMBINATIONS_H
#define LOADS_COMBINATIONS_H

#include "loads/loads.h"

/* "0.6W from left/out": a case of wind as it stands in the names of combinations. */
const char *combination_wind_part(struct arena *arena, const struct load_case *wind, double factor);

void combinations_build(struct arena *arena, struct loads *loads);

#endif
