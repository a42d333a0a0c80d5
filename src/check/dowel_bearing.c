#include "check/dowel_parts.h"

#include <math.h>

#define BEARING_SOURCE "NDS 2018 Table 12.3.3"
#define LENGTH_SOURCE "NDS 2018 12.3.5"

static const double INCH = 0.0254;

/* How deep it goes, and whether that is deep enough (NDS 2018 12.1.4.6, 12.1.5.6, 12.1.6.4). */
static void note_enough(const struct dowel_joint *joint, double tip_in, struct dowel_values *out) {
    struct working *working = joint->working;
    const struct dowel *dowel = joint->dowel;
    bool lag = dowel->kind == DOWEL_LAG;
    out->penetration_counted = out->penetration;
    if (dowel->kind == DOWEL_BOLT) {
        out->penetration_needed =
            isinf(joint->main->thickness) ? out->penetration : joint->main->thickness;
    } else {
        struct cited times = lag ? table_fastener_factor("penetration.lag")
                                 : table_constant("screw-penetration-least");
        working_cited(working, "np", "diameters that it must reach into the main member", times,
                      QUANTITY_NUMBER);
        out->penetration_needed =
            working_step(working, "pn", "depth that is needed for a value sideways", "np * D",
                         times.value * dowel->D.value, QUANTITY_LENGTH, "");
    }
    if (lag)
        out->penetration_counted = working_step(working, "pc", "depth without the point", "p - Em",
                                                out->penetration - tip_in, QUANTITY_LENGTH, "");
    out->penetrates = out->penetration > 0.0 &&
                      out->penetration_counted >= out->penetration_needed * (1.0 - 1e-9);
}

/* Tables assume 10 D of depth. For less the code lets one either cut the tabulated value by
 * depth / 10 D or work with the bearing length as it is, not both; the latter is done here. */
static void note_route(const struct dowel_joint *joint, const struct dowel_values *out) {
    double usual = table_fastener_factor("penetration.tables").value * joint->dowel->D.value;
    if (joint->dowel->kind != DOWEL_BOLT && out->penetrates && out->penetration < usual)
        working_step(joint->working, "p10",
                     "depth that printed tables assume; it is less, so the real bearing length is "
                     "taken, and the value is not cut by p / p10 as well",
                     "10 * D", usual, QUANTITY_LENGTH, LENGTH_SOURCE);
}

/* p, and what comes out behind. */
static void depth(const struct dowel_joint *joint, struct dowel_values *out) {
    struct working *working = joint->working;
    double behind = joint->dowel->length - joint->side->thickness;
    bool endless = isinf(joint->main->thickness);
    double reach = fmax(0.0, fmin(behind, joint->main->thickness));
    if (isnan(behind) || isnan(joint->main->thickness))
        reach = NAN; /* fmin and fmax lose it */
    working_given(working, "ts", "side member, under the head", joint->side->thickness,
                  QUANTITY_LENGTH);
    if (!endless)
        working_given(working, "tm", "main member, along the fastener", joint->main->thickness,
                      QUANTITY_LENGTH);
    out->penetration = working_step(working, "p", "how far it reaches into the main member",
                                    endless ? "max(0, L - ts)" : "max(0, min(L - ts, tm))", reach,
                                    QUANTITY_LENGTH, "");
    out->out_by = endless ? 0.0 : fmax(0.0, behind - joint->main->thickness);
    if (out->out_by > 0.0)
        working_step(working, "x", "how far it comes out behind", "L - ts - tm", out->out_by,
                     QUANTITY_LENGTH, "");
}

/* The part of the point that lies in the main member. */
static double point_inside(const struct dowel_joint *joint, const struct dowel_values *out) {
    const struct dowel *dowel = joint->dowel;
    if (dowel->kind == DOWEL_BOLT)
        return 0.0;
    if (dowel->kind == DOWEL_LAG)
        working_given(joint->working, "E", "length of its point", dowel->tip, QUANTITY_LENGTH);
    else
        working_step(joint->working, "E", "length of its point", "2 * D", dowel->tip,
                     QUANTITY_LENGTH, LENGTH_SOURCE ".3");
    double inside = fmin(out->penetration, fmax(0.0, dowel->tip - out->out_by));
    return working_step(joint->working, "Em", "part of the point in the main member",
                        out->out_by > 0.0 ? "min(p, max(0, E - x))" : "min(p, E)", inside,
                        QUANTITY_LENGTH, "");
}

/* rad between load and grain, 0 to pi/2, however the directions were counted. */
static double folded(double angle) {
    return isnan(angle) ? NAN : acos(fmin(1.0, fabs(cos(angle))));
}

struct wood_symbols {
    const char *gravity, *gravity_words, *angle, *along, *along_formula, *across, *across_formula;
    const char *result, *words, *small_formula, *angle_formula;
};
static const struct wood_symbols SIDE = {"Gs",
                                         "specific gravity of the side member",
                                         "as",
                                         "Fs1",
                                         "ce1 * Gs",
                                         "Fs2",
                                         "ce2 * Gs^1.45 / sqrt(D / inch)",
                                         "Fes",
                                         "how hard the side member presses on it",
                                         "ce * Gs^1.84",
                                         "Fs1 * Fs2 / (Fs1 * sin(as)^2 + Fs2 * cos(as)^2)"};
static const struct wood_symbols MAIN = {"Gm",
                                         "specific gravity of the main member",
                                         "am",
                                         "Fm1",
                                         "ce1 * Gm",
                                         "Fm2",
                                         "ce2 * Gm^1.45 / sqrt(D / inch)",
                                         "Fem",
                                         "how hard the main member presses on it",
                                         "ce * Gm^1.84",
                                         "Fm1 * Fm2 / (Fm1 * sin(am)^2 + Fm2 * cos(am)^2)"};

static double steel_bearing(const struct dowel_layer *layer, struct working *working) {
    bool plate = layer->thickness >= table_fastener_factor("large-from").value * (1.0 - 1e-9);
    return working_cited(working, "Fes", "how hard the steel presses on it",
                         table_fastener_factor(plate ? "Fe.steel.plate" : "Fe.steel.sheet"),
                         QUANTITY_STRESS);
}

/* Dowel bearing strength; the angle is that of this member, NDS 2018 12.3.3 and 12.3.4. */
static double wood_bearing(const struct dowel_layer *layer, const struct wood_symbols *symbols,
                           double D, double angle, bool large, struct working *working) {
    double gravity = layer->gravity.value;
    dowel_note_gravity(working, symbols->gravity, symbols->gravity_words, &layer->gravity);
    if (!large) {
        double times = table_fastener_factor("Fe.small").value;
        return working_step(working, symbols->result, symbols->words, symbols->small_formula,
                            times * pow(gravity, 1.84), QUANTITY_STRESS, BEARING_SOURCE);
    }
    double along = working_step(
        working, symbols->along, "the same along the grain", symbols->along_formula,
        table_fastener_factor("Fe.along").value * gravity, QUANTITY_STRESS, BEARING_SOURCE);
    double across =
        working_step(working, symbols->across, "the same across the grain", symbols->across_formula,
                     table_fastener_factor("Fe.across").value * pow(gravity, 1.45) / sqrt(D / INCH),
                     QUANTITY_STRESS, BEARING_SOURCE);
    working_given(working, symbols->angle,
                  layer->end_grain ? "angle to the grain: runs along it, counts as across"
                                   : "angle between load and grain",
                  angle, QUANTITY_ANGLE);
    double sine = sin(angle), cosine = cos(angle);
    return working_step(working, symbols->result, symbols->words, symbols->angle_formula,
                        along * across / (along * sine * sine + across * cosine * cosine),
                        QUANTITY_STRESS, "NDS 2018 12.3.4");
}

static void note_constants(bool large, struct working *working) {
    if (!large) {
        working_cited(working, "ce", "bearing of thin fasteners, any direction",
                      table_fastener_factor("Fe.small"), QUANTITY_STRESS);
        return;
    }
    working_cited(working, "ce1", "bearing along the grain", table_fastener_factor("Fe.along"),
                  QUANTITY_STRESS);
    working_cited(working, "ce2", "bearing across the grain", table_fastener_factor("Fe.across"),
                  QUANTITY_STRESS);
}

struct dowel_bearing dowel_bearing(const struct dowel_joint *joint, struct dowel_values *out) {
    struct working *working = joint->working;
    double D = joint->dowel->D.value;
    struct dowel_bearing bearing = {.large = D >= table_fastener_factor("large-from").value *
                                                      (1.0 - 1e-9)};
    working_heading(working, "Where it lies");
    depth(joint, out);
    bearing.tip_in = point_inside(joint, out);
    note_enough(joint, bearing.tip_in, out);
    note_route(joint, out);
    bearing.side = working_step(working, "ls", "bearing length in the side member", "ts",
                                joint->side->thickness, QUANTITY_LENGTH, LENGTH_SOURCE);
    bool bolt = joint->dowel->kind == DOWEL_BOLT;
    bearing.main =
        working_step(working, "lm",
                     bolt ? "bearing length in the main member"
                          : "bearing length in the main member: half the point does not count",
                     bolt ? "p" : "p - Em / 2", out->penetration - bearing.tip_in / 2.0,
                     QUANTITY_LENGTH, LENGTH_SOURCE ".3");
    double side_angle = joint->side->steel ? 0.0 : folded(joint->side->angle);
    double main_angle = joint->main->end_grain ? acos(0.0) : folded(joint->main->angle);
    /* fmax would lose a NAN */
    bearing.grain_angle = side_angle > main_angle || isnan(side_angle) ? side_angle : main_angle;
    note_constants(bearing.large, working);
    bearing.Fes = joint->side->steel
                      ? steel_bearing(joint->side, working)
                      : wood_bearing(joint->side, &SIDE, D, side_angle, bearing.large, working);
    bearing.Fem = wood_bearing(joint->main, &MAIN, D, main_angle, bearing.large, working);
    return bearing;
}
