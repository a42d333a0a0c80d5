#include "quick/fastener.h"

#include <math.h>

#define COMBINED_SOURCE "NDS 2018 12.4"

static const double SLANT = 0.78539816339744830962; /* pi / 4 */

/* Pulled and pushed at once, halfway. */
static double slanting(const struct dowel *dowel, const struct dowel_values *values,
                       struct working *working) {
    double both = dowel_combined(dowel->kind, values->axial, values->lateral, SLANT);
    if (isnan(both) || !(values->axial > 0.0) || !isfinite(values->axial))
        return both;
    working_heading(working, "Pulled and pushed at once, slanting");
    working_step(working, "P", "the lesser of pulled out and pulled through", "min(W'p, WH')",
                 values->axial, QUANTITY_WEIGHT, "");
    working_given(working, "b", "angle between the wood's surface and the load, for example", SLANT,
                  QUANTITY_ANGLE);
    return working_step(working, "Zb'", "what may act at that angle",
                        dowel->kind == DOWEL_NAIL ? "P * Z' / (P * cos(b) + Z' * sin(b))"
                                                  : "P * Z' / (P * cos(b)^2 + Z' * sin(b)^2)",
                        both, QUANTITY_WEIGHT, COMBINED_SOURCE);
}

struct fastener_answer
fastener_answer(struct arena *arena, const struct fastener_question *question, bool with_working) {
    const struct dowel *dowel = &question->dowel;
    struct fastener_answer answer = {0};
    if (with_working) {
        answer.working = ARENA_NEW(arena, struct working);
        answer.working->arena = arena;
    }
    dowel_values(dowel, &question->side, &question->main, &question->service, answer.working,
                 &answer.values);
    answer.slanting = slanting(dowel, &answer.values, answer.working);
    answer.side_hole = dowel_lead_hole_lateral(dowel, question->side.gravity.value);
    answer.main_hole = dowel_lead_hole_lateral(dowel, question->main.gravity.value);
    answer.pull_hole = dowel_lead_hole_withdrawal(dowel, question->main.gravity.value);
    answer.driven = dowel_spacing(dowel, false);
    answer.prebored = dowel_spacing(dowel, true);
    return answer;
}
