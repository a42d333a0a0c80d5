/* judge/load_shape.h - how a stretch of a stick is loaded, for the effective length of a beam (NDS
 * 2018 Table 3.3.3). Anything that is not plainly one of the table's rows takes its general row. */
#ifndef JUDGE_LOAD_SHAPE_H
#define JUDGE_LOAD_SHAPE_H

#include "check/stability.h"
#include "judge/holding.h"
#include "solve/stations.h"

/* `states` are those of the member's segments under one mix; `strong` is the local axis about which
 * the stick is edgewise (1: y, loads along z; 2: z, loads along y). */
enum load_shape load_shape_of(const struct model *model, const struct model_member *member,
                              const struct stick_state *states, const struct stretch *stretch,
                              int strong);

#endif
