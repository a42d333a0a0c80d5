#include "check/slat.h"

#include "check/bend.h"
#include "check/sag.h"

#include <math.h>

static struct rating bending(const struct slat_input *input, double moment, enum duration duration,
                             enum load_shape shape, struct working *working) {
    struct bend_input bend = {.lumber = input->lumber,
                              .conditions = input->conditions,
                              .section = input->section,
                              .edgewise = input->on_edge ? moment : 0.0,
                              .flatwise = input->on_edge ? 0.0 : moment,
                              .shape = shape,
                              .unheld = input->on_edge ? input->span : 0.0};
    bend.conditions.duration = duration;
    return check_bend(&bend, working);
}

static struct rating under_share(const struct slat_input *input, struct working *working) {
    double line = input->own_weight + input->standing + input->brief;
    working_heading(working, "Bending under its share of the load");
    working_given(working, "w", "load along the slat, own weight in it", line, QUANTITY_LINE_LOAD);
    working_given(working, "L", "span from rail to rail", input->span, QUANTITY_LENGTH);
    double moment = working_step(working, "M", "bending in the middle", "w * L^2 / 8",
                                 line * input->span * input->span / 8.0, QUANTITY_MOMENT, "");
    struct rating rating =
        bending(input, moment, input->conditions.duration, LOAD_SHAPE_UNIFORM, working);
    rating.governs = rating.covered ? "bending under its share" : "";
    return rating;
}

static struct rating under_can(const struct slat_input *input, struct working *working) {
    working_heading(working, "Bending under a full watering can set down on it");
    working_given(working, "Pw", "the can", input->can, QUANTITY_WEIGHT);
    working_given(working, "wo", "own weight of the slat", input->own_weight, QUANTITY_LINE_LOAD);
    working_given(working, "L", "span from rail to rail", input->span, QUANTITY_LENGTH);
    double moment = working_step(working, "M", "bending in the middle", "Pw * L / 4 + wo * L^2 / 8",
                                 input->can * input->span / 4.0 +
                                     input->own_weight * input->span * input->span / 8.0,
                                 QUANTITY_MOMENT, "");
    struct rating rating = bending(input, moment, DURATION_TEN_MINUTES, LOAD_SHAPE_MIDDLE, working);
    rating.governs = rating.covered ? "bending under a full watering can" : "";
    return rating;
}

/* 5 w L^4/(384 E' I). */
static double sag_of_line(double line, double span, double stiffness, double inertia) {
    return 5.0 * line * span * span * span * span / (384.0 * stiffness * inertia);
}

static struct rating sag(const struct slat_input *input, struct working *working) {
    const struct section *section = &input->section;
    double stiffness = lumber_stiffness(input->lumber, input->conditions.wet, NULL);
    double side = input->on_edge ? section->column_width : section->column_thickness;
    double inertia = section->area * side * side / 12.0;
    double standing = input->own_weight + input->standing;
    working_heading(working, "Sag under its share of the load");
    working_given(working, "I", "moment of inertia as it lies", inertia, QUANTITY_INERTIA);
    working_given(working, "L", "span from rail to rail", input->span, QUANTITY_LENGTH);
    working_given(working, "wl", "load that stands for long", standing, QUANTITY_LINE_LOAD);
    working_given(working, "ws", "the rest of the load", input->brief, QUANTITY_LINE_LOAD);
    struct sag_input sag = {.lumber = input->lumber,
                            .wet = input->conditions.wet,
                            .standing = sag_of_line(standing, input->span, stiffness, inertia),
                            .brief = sag_of_line(input->brief, input->span, stiffness, inertia),
                            .span = input->span,
                            .standing_formula = "5 * wl * L^4 / (384 * E' * I)",
                            .brief_formula = "5 * ws * L^4 / (384 * E' * I)",
                            .divisor = input->sag_divisor};
    struct rating rating = check_sag(&sag, working);
    rating.governs = "sag";
    return rating;
}

struct rating check_slat(const struct slat_input *input, struct working *working) {
    struct rating worst = under_share(input, working);
    worst = rating_worse(worst, sag(input, working));
    return rating_worse(worst, under_can(input, working));
}
