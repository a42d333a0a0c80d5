/* spread/inputs.h - what varies from build to build: sticks, joints, trays.
 *
 * Only what has a published variability or range: sticks of table lumber (each its own board), the
 * joints of an entry of connections: whose stiffness is an estimate (all of them together: what is
 * not known is the rule, not the single joint), shelves with wet 1020 trays.
 */
#ifndef SPREAD_INPUTS_H
#define SPREAD_INPUTS_H

#include "base/arena.h"
#include "model/model.h"
#include "result/spread_answer.h"

struct spread_inputs {
    struct spread_input *items;
    size_t count, capacity;
};
struct spread_inputs spread_inputs(struct arena *arena, const struct model *model);

#endif
