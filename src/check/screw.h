/* check/screw.h - the worst fastener of a joint: sideways load, pull, both at once (NDS 2018
 * chapters 11 and 12). Forces N. See check/dowel.h for what one fastener holds.
 */
#ifndef CHECK_SCREW_H
#define CHECK_SCREW_H

#include "check/bearing.h"
#include "check/dowel.h"

struct screw_input {
    const struct dowel *dowel;
    struct dowel_layer side, main;
    struct dowel_service service;
    double shear, pull; /* on the worst one; a pull under `little` is none */
    double little;
    struct bearing_input washers[2]; /* bolts: the pull presses here, force left out */
    int washer_count;
};

/* `values` are those of this input (dowel_values), so that many loads can be rated with one set. */
struct rating screw_rating(const struct screw_input *input, const struct dowel_values *values);

/* Both in one, with the working. */
struct rating check_screw(const struct screw_input *input, struct working *working);

#endif
