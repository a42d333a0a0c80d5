#include "check/hinge.h"

#include <math.h>

/* Share of the wind that one hinge gets: a quarter shut, half open. */
#define SHUT_SHARE 0.25
#define OPEN_SHARE 0.5

static double hanging(const struct hinge_input *input) {
    return input->with_weight * input->weight *
           (0.5 + input->deep * sin(input->incline) / (2.0 * input->apart));
}

static double blown(const struct hinge_input *input, bool open) {
    return input->with_wind * input->wind * input->area *
           (open ? OPEN_SHARE * input->open.value : SHUT_SHARE * input->shut.value);
}

static double note_weight(const struct hinge_input *input, struct working *working) {
    working_given(working, "Wp", "weight of the panel", input->weight, QUANTITY_WEIGHT);
    working_given(working, "fg", "factor of the weight", input->with_weight, QUANTITY_NUMBER);
    working_given(working, "b", "from the hinges to the other edge", input->deep, QUANTITY_LENGTH);
    working_given(working, "h", "from hinge to hinge", input->apart, QUANTITY_LENGTH);
    working_given(working, "A", "slope of the line of hinges", input->incline, QUANTITY_ANGLE);
    return working_step(working, "Rg", "its weight on one hinge",
                        "fg * Wp * (0.5 + b * sin(A) / (2 * h))", hanging(input), QUANTITY_WEIGHT,
                        "");
}

static double note_wind(const struct hinge_input *input, bool open, struct working *working) {
    working_given(working, "q", "velocity pressure of the wind", input->wind, QUANTITY_LOAD);
    working_given(working, "fw", "factor of the wind", input->with_wind, QUANTITY_NUMBER);
    working_given(working, "a", "area of the panel", input->area, QUANTITY_AREA);
    working_cited(working, "C", open ? "net coefficient, open" : "net coefficient, shut",
                  open ? input->open : input->shut, QUANTITY_NUMBER);
    return working_step(working, "Rw", "wind on one hinge",
                        open ? "0.5 * fw * q * a * C" : "0.25 * fw * q * a * C", blown(input, open),
                        QUANTITY_WEIGHT, "");
}

struct rating check_hinge(const struct hinge_input *input, struct working *working) {
    bool open = input->opens && blown(input, true) > blown(input, false);
    bool wind = input->with_wind * input->wind > 0.0;
    double force = note_weight(input, working);
    if (wind)
        force += note_wind(input, open, working);
    working_given(working, "n", "screws in one leaf", input->count, QUANTITY_NUMBER);
    double each =
        working_step(working, "P", "force on one screw", wind ? "(Rg + Rw) / n" : "Rg / n",
                     force / input->count, QUANTITY_WEIGHT, "");
    struct screw_input sideways = input->screw, pulled = input->screw;
    struct dowel_values values;
    dowel_values(input->screw.dowel, &input->screw.side, &input->screw.main, &input->screw.service,
                 NULL, &values);
    sideways.shear = each;
    pulled.pull = each;
    struct rating shear = screw_rating(&sideways, &values), pull = screw_rating(&pulled, &values);
    struct rating worst = rating_worse(shear, pull);
    if (worst.covered)
        worst.governs = open ? "standing open in wind" : wind ? "shut in wind" : "hanging there";
    check_screw(rating_is_worse(&pull, &shear) ? &pulled : &sideways, working);
    return worst;
}
