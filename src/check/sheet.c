#include "check/sheet.h"

#include <math.h>
#include <stdio.h>

#define SPAN_TABLE "sheet-spans"
#define SCREW_SOURCE "NDS 2018 12.2"

static double in_of(const struct sheet_press *press) {
    double flat = cos(press->slope);
    return press->with_weight * press->weight * flat +
           press->with_snow * press->snow * flat * flat +
           press->with_wind * press->wind * press->in.value;
}

static double out_of(const struct sheet_press *press, struct cited coefficient) {
    return press->with_wind * press->wind * coefficient.value -
           press->with_weight * press->weight * cos(press->slope);
}

static void note_weight(const struct sheet_press *press, struct working *working) {
    working_given(working, "A", "slope of the sheet", press->slope, QUANTITY_ANGLE);
    working_given(working, "g", "own weight on its face", press->weight, QUANTITY_PRESSURE);
    working_given(working, "fg", "factor of its weight in this combination", press->with_weight,
                  QUANTITY_NUMBER);
}

static void note_wind(const struct sheet_press *press, const char *words, struct cited coefficient,
                      struct working *working) {
    working_given(working, "q", "velocity pressure of the wind", press->wind, QUANTITY_PRESSURE);
    working_given(working, "fw", "factor of the wind", press->with_wind, QUANTITY_NUMBER);
    working_cited(working, "C", words, coefficient, QUANTITY_NUMBER);
}

static double note_in(const struct sheet_press *press, struct working *working) {
    note_weight(press, working);
    working_given(working, "s", "snow on the level area", press->snow, QUANTITY_PRESSURE);
    working_given(working, "fs", "factor of the snow", press->with_snow, QUANTITY_NUMBER);
    note_wind(press, "net coefficient, pressed in", press->in, working);
    return working_step(working, "p", "pressure on the sheet",
                        "fg * g * cos(A) + fs * s * cos(A)^2 + fw * q * C", in_of(press),
                        QUANTITY_PRESSURE, "");
}

static double note_out(const struct sheet_press *press, const char *words, struct cited coefficient,
                       struct working *working) {
    note_weight(press, working);
    note_wind(press, words, coefficient, working);
    return working_step(working, "p", "pressure outward", "fw * q * C - fg * g * cos(A)",
                        out_of(press, coefficient), QUANTITY_PRESSURE, "");
}

static bool row_of(const char *sheet, const char *field, struct cited *out) {
    char row[128];
    int length = snprintf(row, sizeof row, "%s.%s", sheet, field);
    return (size_t)length < sizeof row && table_value(SPAN_TABLE, row, out);
}

/* The row of the next higher load. */
static bool span_at(const char *sheet, double pressure, struct cited *out, double *load) {
    static const struct {
        double kg;
        const char *field;
    } ROWS[] = {{50, "50"}, {80, "80"}, {100, "100"}, {120, "120"}};
    for (size_t k = 0; k < sizeof ROWS / sizeof *ROWS; k++) {
        *load = ROWS[k].kg * table_constant("gravity").value;
        if (pressure <= *load * (1.0 + 1e-9) && row_of(sheet, ROWS[k].field, out))
            return true;
    }
    return false;
}

static struct rating missing(const char *what, double demand, enum quantity quantity) {
    struct rating rating = rating_missing(
        what, quantity == QUANTITY_LENGTH ? "published spans of clear sheets" : SCREW_SOURCE);
    rating.demand = demand;
    rating.quantity = quantity;
    return rating;
}

struct rating check_sheet_span(const struct sheet_span_input *input, struct working *working) {
    const struct sheet_press *press = &input->press;
    bool out = out_of(press, press->out) > in_of(press);
    struct cited allowed, most;
    double load;
    double pressure = out ? note_out(press, "net coefficient, sucked out", press->out, working)
                          : note_in(press, working);
    working_given(working, "L", "span between the sticks that bear it", input->span,
                  QUANTITY_LENGTH);
    if (!row_of(input->sheet, "50", &allowed))
        return missing("the span of this sheet", input->span, QUANTITY_LENGTH);
    if (row_of(input->sheet, "roof", &most) && input->height > most.value)
        return missing("the span of so thin a sheet as a roof", input->span, QUANTITY_LENGTH);
    if (!span_at(input->sheet, pressure, &allowed, &load)) {
        struct rating past =
            missing("the span of this sheet under so much pressure", input->span, QUANTITY_LENGTH);
        past.beyond = true;
        return past;
    }
    working_given(working, "pt", "the next higher load of the table", load, QUANTITY_PRESSURE);
    working_cited(working, "Lt", "largest span at that load", allowed, QUANTITY_LENGTH);
    return rating_of(input->span, allowed.value, QUANTITY_LENGTH, allowed.source,
                     out ? "sucked out by wind" : "pressed in");
}

double sheet_screw_pull(const struct sheet_screw_input *input) {
    return out_of(&input->press, input->press.edge) * input->spacing * input->width;
}

/* The head has no value in the sheet: what pulls the screw out may still be too much. */
static struct rating head_not_known(const struct dowel_values *values, double pull,
                                    const char *what) {
    if (pull > values->withdrawal)
        return rating_of(pull, values->withdrawal, QUANTITY_WEIGHT, SCREW_SOURCE,
                         "pulled out of the wood");
    return missing(what, pull, QUANTITY_WEIGHT);
}

static void note_withdrawal(const struct dowel_values *values, struct working *working) {
    working_given(working, "W", "withdrawal value for each length of thread",
                  values->withdrawal_per_length, QUANTITY_SLIP);
    working_given(working, "l", "thread in the wood", values->withdrawal_length, QUANTITY_LENGTH);
    working_given(working, "F", "product of its factors (duration, wet)", values->withdrawal_factor,
                  QUANTITY_NUMBER);
    working_step(working, "W'", "what one screw holds against being pulled out", "W * l * F",
                 values->withdrawal, QUANTITY_WEIGHT, SCREW_SOURCE);
}

struct rating check_sheet_screw(const struct sheet_screw_input *input, struct working *working) {
    struct dowel_values values;
    note_out(&input->press, "net coefficient at edges and corners", input->press.edge, working);
    working_given(working, "b", "spacing of the screws", input->spacing, QUANTITY_LENGTH);
    working_given(working, "w", "width of sheet that hangs on them", input->width, QUANTITY_LENGTH);
    working_given(working, "pu", "that pressure in the units of the next step",
                  out_of(&input->press, input->press.edge), QUANTITY_LOAD);
    double pull = working_step(working, "P", "pull on one screw", "pu * b * w",
                               sheet_screw_pull(input), QUANTITY_WEIGHT, "");
    dowel_values(input->dowel, &input->side, &input->main, &input->service, NULL, &values);
    if (*values.withdrawal_missing)
        return missing(values.withdrawal_missing, pull, QUANTITY_WEIGHT);
    note_withdrawal(&values, working);
    if (input->side.steel)
        return head_not_known(&values, pull, "what a screw head holds in this sheet");
    if (*values.pull_missing)
        return head_not_known(&values, pull, values.pull_missing);
    working_given(working, "H", "what its head holds in the sheet, all factors in",
                  values.pull_through, QUANTITY_WEIGHT);
    return rating_of(pull, values.axial, QUANTITY_WEIGHT, SCREW_SOURCE,
                     values.withdrawal < values.pull_through ? "pulled out of the wood"
                                                             : "head pulled through the sheet");
}
