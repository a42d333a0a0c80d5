/* fixing/fastener_input.h - a fixing and a load on one of its fasteners as check/screw takes them.
 */
#ifndef FIXING_FASTENER_INPUT_H
#define FIXING_FASTENER_INPUT_H

#include "check/screw.h"
#include "fixing/worst_load.h"

/* The input of check_screw for a load of a group. */
struct screw_input fixing_input(const struct fixing *fixing, int group,
                                const struct fixing_load *load, enum duration duration);

/* The force along the stick that its screws hold sideways, N; NAN where nothing is published. */
double fixing_holds_along(const struct fixing *fixing, enum duration duration);

#endif
