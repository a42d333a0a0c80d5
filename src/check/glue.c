#include "check/glue.h"

#include <math.h>

#define GLUE_SOURCE "engineering practice [trade]"

static double polar(const struct glue_input *input) {
    double a = input->along, b = input->across;
    return a * b * (a * a + b * b) / 12.0;
}

double glue_moment(const struct glue_input *input) {
    double corner = hypot(input->along, input->across) / 2.0;
    return corner > 0.0 ? table_constant("glue-shear").value * polar(input) / corner : 0.0;
}

/* Shear at the worst corner in one direction (0 along, 1 across). The force may point the way the
 * moment turns: there both add up. */
static double corner_shear(const struct glue_input *input, int direction) {
    double beside = direction == 0 ? input->across : input->along;
    return fabs(input->force[direction]) / (input->along * input->across) +
           fabs(input->moment) / polar(input) * beside / 2.0;
}

static void note(const struct glue_input *input, double stress, struct working *working) {
    working_given(working, "a", "glued along the stick", input->along, QUANTITY_LENGTH);
    working_given(working, "b", "glued across the stick", input->across, QUANTITY_LENGTH);
    working_given(working, "Fa", "force along the stick", fabs(input->force[0]), QUANTITY_WEIGHT);
    working_given(working, "Fb", "force across it", fabs(input->force[1]), QUANTITY_WEIGHT);
    working_given(working, "M", "moment in the plane of the glue", fabs(input->moment),
                  QUANTITY_MOMENT);
    working_step(working, "ta", "shear at the worst corner, along",
                 "Fa / (a * b) + 6 * M / (a * (a^2 + b^2))", corner_shear(input, 0),
                 QUANTITY_STRESS, "");
    working_step(working, "tb", "the same, across", "Fb / (a * b) + 6 * M / (b * (a^2 + b^2))",
                 corner_shear(input, 1), QUANTITY_STRESS, "");
    working_step(working, "t", "both together", "sqrt(ta^2 + tb^2)", stress, QUANTITY_STRESS, "");
    working_cited(working, "ts", "shear that a dry glue line may carry",
                  table_constant("glue-shear"), QUANTITY_STRESS);
    working_step(working, "r", "share of the limit", "t / ts",
                 stress / table_constant("glue-shear").value, QUANTITY_NUMBER, "");
}

struct rating check_glue(const struct glue_input *input, struct working *working) {
    if (input->wet)
        return rating_missing("glue where it may get wet", GLUE_SOURCE);
    if (!(input->pull <= table_constant("little-pull").value))
        return rating_missing("a pull across a glue line", GLUE_SOURCE);
    double stress = hypot(corner_shear(input, 0), corner_shear(input, 1));
    note(input, stress, working);
    return rating_of(stress, table_constant("glue-shear").value, QUANTITY_STRESS, GLUE_SOURCE,
                     "glue line");
}
