#include "check/bearing.h"

#include "check/strength.h"

#include <math.h>

#define BEARING_SOURCE "NDS 2018 3.10.2"

/* Cb = (lb + 3/8 in)/lb for a contact under 6 in that is 3 in or more from the end; else 1. */
static double length_factor(const struct bearing_input *input, struct working *working) {
    bool shorter = input->along < table_constant("bearing-full-length").value;
    /* a contact laid out at just 3 in may come in a rounding less */
    bool inside = input->to_end >= table_constant("bearing-end-distance").value * (1.0 - 1e-9);
    if (!shorter || !inside)
        return working_given(working, "Cb",
                             shorter ? "short contact: none, nearer than 3 in to the end"
                                     : "short contact: none, 6 in or longer",
                             1.0, QUANTITY_NUMBER);
    struct cited more = table_constant("bearing-lengthening");
    working_cited(working, "lm", "length that the wood beside it helps along", more,
                  QUANTITY_LENGTH);
    return working_step(working, "Cb", "short contact", "(lb + lm) / lb",
                        (input->along + more.value) / input->along, QUANTITY_NUMBER, more.source);
}

struct rating check_bearing(const struct bearing_input *input, struct working *working) {
    struct conditions conditions = {.wet = input->wet, .duration = DURATION_TEN_YEARS};
    double value;
    working_given(working, "R", "force on the contact", fabs(input->force), QUANTITY_WEIGHT);
    working_given(working, "lb", "contact along the grain", input->along, QUANTITY_LENGTH);
    working_given(working, "bb", "contact across the grain", input->across, QUANTITY_LENGTH);
    double stress = working_step(working, "fcp", "pressure across the grain", "R / (lb * bb)",
                                 fabs(input->force) / (input->along * input->across),
                                 QUANTITY_STRESS, BEARING_SOURCE);
    if (!strength(input->lumber, PROPERTY_FCP, &conditions, working, &value))
        return rating_missing(property_words(PROPERTY_FCP), BEARING_SOURCE);
    double limit =
        working_step(working, "Fcp'", "pressure across the grain that it takes", "Fcp1 * Cb",
                     value * length_factor(input, working), QUANTITY_STRESS, BEARING_SOURCE);
    return rating_of(stress, limit, QUANTITY_STRESS, BEARING_SOURCE, "pressure across the grain");
}
