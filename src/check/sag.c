#include "check/sag.h"

#include <math.h>

#define SAG_SOURCE "NDS 2018 3.5.2"

struct cited creep_factor(bool wet) {
    return table_constant(wet ? "creep-wet" : "creep-dry");
}

struct rating check_sag(const struct sag_input *input, struct working *working) {
    lumber_stiffness(input->lumber, input->wet, working);
    double Kcr =
        working_cited(working, "Kcr", input->wet ? "creep, wet wood" : "creep, wood that stays dry",
                      creep_factor(input->wet), QUANTITY_NUMBER);
    working_step(working, "yl", "sag at once under what stands for long", input->standing_formula,
                 input->standing, QUANTITY_LENGTH, "");
    working_step(working, "ys", "sag under the rest", input->brief_formula, input->brief,
                 QUANTITY_LENGTH, "");
    double sum = working_step(working, "y", "sag in the long run", "Kcr * yl + ys",
                              Kcr * input->standing + input->brief, QUANTITY_LENGTH, SAG_SOURCE);
    double limit = input->limit;
    if (input->divisor > 0.0) {
        if (!input->standing_formula)
            working_given(working, "L", "span", input->span, QUANTITY_LENGTH);
        working_given(working, "n", "share of the span that it may sag: one in", input->divisor,
                      QUANTITY_NUMBER);
        limit = working_step(working, "ya", "most it may sag", "L / n",
                             input->span / input->divisor, QUANTITY_LENGTH, "");
    } else {
        working_given(working, "ya", "most it may sag", limit, QUANTITY_LENGTH);
    }
    return rating_of(fabs(sum), limit, QUANTITY_LENGTH, SAG_SOURCE, "sag with creep");
}
