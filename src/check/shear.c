#include "check/shear.h"

#include "check/strength.h"

#include <math.h>

#define SHEAR_SOURCE "NDS 2018 3.4.2"
#define HANG_SOURCE "NDS 2018 3.4.3.3"

struct rating check_shear(const struct shear_input *input, struct working *working) {
    const struct section *section = &input->section;
    double limit;
    working_given(working, "V1", "force across the stick, along its wide face",
                  fabs(input->edgewise), QUANTITY_WEIGHT);
    working_given(working, "V2", "force across the stick, along its thickness",
                  fabs(input->flatwise), QUANTITY_WEIGHT);
    if (section->own) {
        working_given(working, "A", "area as given", section->area, QUANTITY_AREA);
    } else {
        working_given(working, "b", "smaller side of the stick", section->thickness,
                      QUANTITY_LENGTH);
        working_given(working, "d", "larger side of the stick", section->width, QUANTITY_LENGTH);
        working_step(working, "A", "area", "b * d", section->area, QUANTITY_AREA, "");
    }
    double stress =
        working_step(working, "fv", "stress along the grain, in the middle of the section",
                     "1.5 * sqrt(V1^2 + V2^2) / A",
                     1.5 * hypot(input->edgewise, input->flatwise) / section->area, QUANTITY_STRESS,
                     SHEAR_SOURCE);
    strength_duration(input->conditions.duration, working);
    if (!strength(input->lumber, PROPERTY_FV, &input->conditions, working, &limit))
        return rating_missing(property_words(PROPERTY_FV), SHEAR_SOURCE);
    return rating_of(stress, limit, QUANTITY_STRESS, SHEAR_SOURCE, "shear along the grain");
}

struct rating check_hang(const struct hang_input *input, struct working *working) {
    double limit;
    bool near_end = !(input->to_end >= table_constant("hang-depths").value * input->depth);
    working_given(working, "V", "force across the stick at its fastening", fabs(input->force),
                  QUANTITY_WEIGHT);
    working_given(working, "b", "size of the stick across the force", input->breadth,
                  QUANTITY_LENGTH);
    working_given(working, "d", "size of the stick along the force", input->depth, QUANTITY_LENGTH);
    working_given(working, "de", "part of it between the pushed edge and the farthest fastening",
                  input->effective, QUANTITY_LENGTH);
    strength_duration(input->conditions.duration, working);
    if (!strength(input->lumber, PROPERTY_FV, &input->conditions, working, &limit))
        return rating_missing(property_words(PROPERTY_FV), HANG_SOURCE);
    double share = near_end ? input->effective / input->depth : 1.0;
    double most = 2.0 / 3.0 * limit * input->breadth * input->effective * share * share;
    if (working)
        ARRAY_PUSH(
            working->arena, working,
            (struct step){"Vr'",
                          near_end ? "most it can hang, less than 5 d from its end"
                                   : "most it can hang, 5 d or more from its end",
                          near_end ? "2 / 3 * Fv' * b * de * (de / d)^2" : "2 / 3 * Fv' * b * de",
                          most, QUANTITY_WEIGHT, HANG_SOURCE, MARK_MEMORY, true});
    return rating_of(fabs(input->force), most, QUANTITY_WEIGHT, HANG_SOURCE,
                     "splitting where it hangs on its fastening");
}
