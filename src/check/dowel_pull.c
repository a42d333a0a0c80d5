#include "check/dowel_parts.h"

#include <math.h>

#define FACTORS_SOURCE "NDS 2018 Table 11.3.1"

static const double INCH = 0.0254, PI = 3.14159265358979323846;

/* W, the reference withdrawal value (NDS 2018 12.2). */
static double reference(const struct dowel_joint *joint) {
    struct working *working = joint->working;
    double G = joint->main->gravity.value, D = joint->dowel->D.value;
    const char *words = "holds for each length, before the factors";
    if (joint->dowel->kind == DOWEL_NAIL) {
        struct cited times = table_fastener_factor("W.nail");
        working_cited(working, "cw", "withdrawal of smooth nails", times, QUANTITY_STRESS);
        return working_step(working, "W", words, "cw * Gm^2.5 * D", times.value * pow(G, 2.5) * D,
                            QUANTITY_LINE_LOAD, "NDS 2018 12.2.3");
    }
    if (joint->dowel->kind == DOWEL_SCREW) {
        struct cited times = table_fastener_factor("W.screw");
        working_cited(working, "cw", "withdrawal of wood screws", times, QUANTITY_STRESS);
        return working_step(working, "W", words, "cw * Gm^2 * D", times.value * G * G * D,
                            QUANTITY_LINE_LOAD, "NDS 2018 12.2.2");
    }
    struct cited times = table_fastener_factor("W.lag");
    working_cited(working, "cw", "withdrawal of lag screws", times, QUANTITY_LINE_LOAD);
    return working_step(working, "W", words, "cw * Gm^1.5 * (D / inch)^0.75",
                        times.value * pow(G, 1.5) * pow(D / INCH, 0.75), QUANTITY_LINE_LOAD,
                        "NDS 2018 12.2.1");
}

/* The thread in the main member; of nails the whole length, of lags without the point. */
static double held_length(const struct dowel_joint *joint, double tip_in,
                          const struct dowel_values *out) {
    struct working *working = joint->working;
    const struct dowel *dowel = joint->dowel;
    if (dowel->kind == DOWEL_NAIL)
        return working_step(working, "pt", "length that holds", "p", out->penetration,
                            QUANTITY_LENGTH, "NDS 2018 12.2.3");
    working_step(
        working, "T", "length of its thread, with the point", NULL, dowel->thread, QUANTITY_LENGTH,
        dowel->kind == DOWEL_SCREW ? "NDS 2018 Table L3, 2/3 of the length" : "NDS 2018 Table L2");
    if (dowel->kind == DOWEL_SCREW)
        return working_step(working, "pt", "thread in the main member", "min(T, p)",
                            fmin(dowel->thread, out->penetration), QUANTITY_LENGTH,
                            "NDS 2018 12.2.2");
    return working_step(working, "pt", "thread in the main member, without the point",
                        "max(0, min(T - E, p - Em))",
                        fmax(0.0, fmin(dowel->thread - dowel->tip, out->penetration - tip_in)),
                        QUANTITY_LENGTH, "NDS 2018 12.2.1");
}

static double wet_factor(const struct dowel_joint *joint) {
    const char *row = "CM.withdrawal", *words = "wet factor";
    if (joint->dowel->kind == DOWEL_NAIL) {
        row = joint->service->toe_nailed ? "CM.withdrawal.toe-nail" : "CM.withdrawal.nail";
        words = joint->service->toe_nailed ? "wet factor: not for slanted nails"
                                           : "wet factor: wood that swells and shrinks lets go";
    }
    return dowel_factor(joint, "CMw", joint->service->wet, row, words, "wet factor: dry");
}

/* Why there is no withdrawal value; NULL where there is. */
static const char *no_withdrawal(const struct dowel_joint *joint, const struct dowel_values *out) {
    const struct dowel *dowel = joint->dowel;
    bool nail = dowel->kind == DOWEL_NAIL;
    if (dowel->kind == DOWEL_BOLT)
        return "a bolt is not pulled out: its washers press on the wood";
    if (!(out->penetration > 0.0))
        return "it does not reach the main member";
    if (!dowel_gravity_known(joint->main->gravity.value))
        return "the wood is lighter or heavier than the published values go";
    if (dowel->kind == DOWEL_LAG)
        return NULL;
    double from = table_fastener_factor(nail ? "W.nail.D-from" : "W.screw.D-from").value;
    double to = table_fastener_factor(nail ? "W.nail.D-to" : "W.screw.D-to").value;
    if (!(dowel->D.value >= from * (1.0 - 1e-9) && dowel->D.value <= to * (1.0 + 1e-9)))
        return "it is thinner or thicker than the published values go";
    return NULL;
}

void dowel_withdrawal(const struct dowel_joint *joint, double tip_in, struct dowel_values *out) {
    bool lag = joint->dowel->kind == DOWEL_LAG;
    bool end_grain = joint->main->end_grain && joint->dowel->kind != DOWEL_BOLT;
    const char *missing = no_withdrawal(joint, out);
    out->withdrawal = out->withdrawal_per_length = out->withdrawal_factor = NAN;
    out->withdrawal_length = 0.0;
    if (end_grain && !lag) {
        working_heading(joint->working, "Pulled out");
        dowel_factor(joint, "Cegw", true, "Ceg.withdrawal",
                     "end grain: it must not be pulled out of it", "");
        out->withdrawal = out->withdrawal_per_length = out->withdrawal_factor = 0.0;
        return;
    }
    if (missing) {
        out->withdrawal_missing = missing;
        return;
    }
    working_heading(joint->working, "Pulled out");
    out->withdrawal_per_length = reference(joint);
    out->withdrawal_length = held_length(joint, tip_in, out);
    double CD = dowel_duration_factor(joint), CM = wet_factor(joint), Ct = dowel_heat_factor(joint);
    double Ceg = dowel_factor(joint, "Cegw", end_grain, "Ceg.withdrawal.lag",
                              "end grain of the main member", "end grain: no, side grain");
    double Ctn = dowel_factor(joint, "Ctnw", joint->service->toe_nailed, "Ctn.withdrawal",
                              "driven at a slant", "driven at a slant: no");
    out->withdrawal_factor = CD * CM * Ct * Ceg * Ctn;
    out->withdrawal = working_step(
        joint->working, "W'p", "what may pull it out", "W * pt * CD * CMw * Ct * Cegw * Ctnw",
        out->withdrawal_per_length * out->withdrawal_length * out->withdrawal_factor,
        QUANTITY_WEIGHT, FACTORS_SOURCE);
}

static bool between(double value, const char *from, const char *to) {
    return value >= table_fastener_factor(from).value * (1.0 - 1e-9) &&
           value <= table_fastener_factor(to).value * (1.0 + 1e-9);
}

static const char *no_pull_through(const struct dowel_joint *joint) {
    if (isnan(joint->dowel->head.value))
        return "no head size is published for it";
    if (!between(joint->dowel->head.value, "WH.head-from", "WH.head-to"))
        return "its head is smaller or larger than the published values go";
    if (!between(joint->side->thickness, "WH.side-from", "WH.side-to"))
        return "the side member is thinner or thicker than the published values go";
    if (!dowel_gravity_known(joint->side->gravity.value))
        return "the wood is lighter or heavier than the published values go";
    return NULL;
}

/* WH (NDS 2018 12.2.5). */
static double pull_reference(const struct dowel_joint *joint) {
    struct working *working = joint->working;
    double G = joint->side->gravity.value, t = joint->side->thickness;
    double DH =
        working_cited(working, "DH", "diameter of its head", joint->dowel->head, QUANTITY_LENGTH);
    struct cited to = table_fastener_factor("WH.thin-to");
    bool thin = t <= to.value * DH;
    struct cited times = table_fastener_factor(thin ? "WH.thin" : "WH.thick");
    working_cited(working, "nt", "heads that a side member is thin to", to, QUANTITY_NUMBER);
    working_given(working, "pi", "round of a circle over its width", PI, QUANTITY_NUMBER);
    working_cited(working, "ch",
                  thin ? "pull-through: the side member is thin"
                       : "pull-through: the side member is thick",
                  times, QUANTITY_STRESS);
    return working_step(working, "WH", "before the factors",
                        thin ? "ch * pi * DH * Gs^2 * ts" : "ch * pi * DH^2 * Gs^2",
                        times.value * PI * DH * G * G * (thin ? t : DH), QUANTITY_WEIGHT,
                        "NDS 2018 12.2.5");
}

void dowel_pull_through(const struct dowel_joint *joint, struct dowel_values *out) {
    out->pull_through = out->pull_factor = NAN;
    if (joint->side->steel) {
        out->pull_through = INFINITY;
        return;
    }
    const char *missing = no_pull_through(joint);
    if (missing) {
        out->pull_missing = missing;
        return;
    }
    working_heading(joint->working, "The head pulled through the side member");
    double WH = pull_reference(joint);
    double CD = dowel_duration_factor(joint);
    double CM = dowel_factor(joint, "CMh", joint->service->wet, "CM.pull-through", "wet factor",
                             "wet factor: dry");
    double Ct = dowel_heat_factor(joint);
    out->pull_factor = CD * CM * Ct;
    out->pull_through =
        working_step(joint->working, "WH'", "what may pull its head through", "WH * CD * CMh * Ct",
                     WH * out->pull_factor, QUANTITY_WEIGHT, FACTORS_SOURCE);
}
