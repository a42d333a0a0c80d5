/* quick/fastener.h - what one screw, nail, lag or bolt holds: the quick question without a frame.
 */
#ifndef QUICK_FASTENER_H
#define QUICK_FASTENER_H

#include "base/arena.h"
#include "check/dowel.h"

struct fastener_question {
    struct dowel dowel; /* with its length */
    struct dowel_layer side, main;
    const char *side_wood, *main_wood; /* species; NULL where only the specific gravity was given */
    struct dowel_service service;
};

struct fastener_answer {
    struct dowel_values values;
    double slanting; /* N at 45 degrees between all sideways and all pull; NAN where unknown */
    struct dowel_hole side_hole, main_hole; /* for a load sideways */
    struct dowel_hole pull_hole;            /* in the main member, for a pull alone */
    struct dowel_spacing driven, prebored;
    struct working *working; /* NULL unless asked for */
};

struct fastener_answer fastener_answer(struct arena *arena,
                                       const struct fastener_question *question, bool with_working);

#endif
