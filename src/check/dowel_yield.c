#include "check/dowel_parts.h"

#include <math.h>

#define MODES_SOURCE "NDS 2018 Table 12.3.1A"
#define REDUCTION_SOURCE "NDS 2018 Table 12.3.1B"

static const double INCH = 0.0254;

/* Reduction terms of modes I, II, and III with IV. */
struct reduction {
    double I, II, III;
};

/* KD of a fastener that bends where it is thinner than 1/4 in. */
static double thin_term(double Dy, struct working *working) {
    struct cited to = table_fastener_factor("KD.thin-to");
    if (Dy <= to.value * (1.0 + 1e-9))
        return working_cited(working, "KD", "reduction of a thin fastener",
                             table_fastener_factor("KD.thin"), QUANTITY_NUMBER);
    struct cited times = table_fastener_factor("KD.times"), add = table_fastener_factor("KD.add");
    working_cited(working, "kd1", "its reduction grows with it", times, QUANTITY_NUMBER);
    working_cited(working, "kd2", "from", add, QUANTITY_NUMBER);
    return working_step(working, "KD", "reduction of a thin fastener", "kd1 * Dy / inch + kd2",
                        times.value * Dy / INCH + add.value, QUANTITY_NUMBER, REDUCTION_SOURCE);
}

static double angle_term(double angle, struct working *working) {
    static const double DEGREE = 3.14159265358979323846 / 180.0;
    struct cited share = table_fastener_factor("Ktheta");
    working_cited(working, "ka", "what the angle adds across the grain", share, QUANTITY_NUMBER);
    working_given(working, "a", "largest angle between load and grain", angle, QUANTITY_ANGLE);
    return working_step(working, "Ka", "reduction by the angle to the grain", "1 + ka * a / 90",
                        1.0 + share.value * (angle / DEGREE) / 90.0, QUANTITY_NUMBER,
                        REDUCTION_SOURCE);
}

static double note_ratio(struct working *working, const char *symbol, const char *words,
                         const char *formula, double value) {
    return working_step(working, symbol, words, formula, value, QUANTITY_NUMBER, MODES_SOURCE);
}

static double note_term(struct working *working, const char *symbol, const char *words,
                        const char *formula, double value) {
    return working_step(working, symbol, words, formula, value, QUANTITY_NUMBER, REDUCTION_SOURCE);
}

/* Thick where it bends: each mode has its own. */
static struct reduction thick_terms(double angle, struct working *working) {
    struct cited I = table_fastener_factor("Rd.I"), II = table_fastener_factor("Rd.II"),
                 III = table_fastener_factor("Rd.III-IV");
    working_cited(working, "r1", "reduction of modes Im, Is", I, QUANTITY_NUMBER);
    working_cited(working, "r2", "reduction of mode II", II, QUANTITY_NUMBER);
    working_cited(working, "r3", "reduction of modes IIIm, IIIs, IV", III, QUANTITY_NUMBER);
    double Ka = angle_term(angle, working);
    return (struct reduction){
        note_term(working, "R1", "the same with the angle", "r1 * Ka", I.value * Ka),
        note_term(working, "R2", "the same with the angle", "r2 * Ka", II.value * Ka),
        note_term(working, "R3", "the same with the angle", "r3 * Ka", III.value * Ka)};
}

static struct reduction reduction_terms(const struct dowel *dowel,
                                        const struct dowel_bearing *bearing,
                                        struct working *working) {
    double Dy = dowel->root.value;
    if (Dy >= table_fastener_factor("large-from").value * (1.0 - 1e-9))
        return thick_terms(bearing->grain_angle, working);
    double KD = thin_term(Dy, working);
    const char *formula = "KD";
    double all = KD;
    if (bearing->large) {
        formula = "KD * Ka";
        all = KD * angle_term(bearing->grain_angle, working);
    }
    return (struct reduction){
        note_term(working, "R1", "reduction of modes Im, Is", formula, all),
        note_term(working, "R2", "reduction of mode II", formula, all),
        note_term(working, "R3", "reduction of modes IIIm, IIIs, IV", formula, all)};
}

/* The terms that the modes share (NDS 2018 Table 12.3.1A, single shear). */
struct yield_terms {
    double Re, k1, k2, k3;
};

static struct yield_terms yield_terms(const struct dowel *dowel,
                                      const struct dowel_bearing *bearing,
                                      struct working *working) {
    double lm = bearing->main, ls = bearing->side, Fem = bearing->Fem,
           bend = 2.0 * dowel->Fyb.value * dowel->root.value * dowel->root.value / (3.0 * Fem);
    double Re = note_ratio(working, "Re", "main member's pressure to the side member's",
                           "Fem / Fes", Fem / bearing->Fes);
    double Rt = note_ratio(working, "Rt", "bearing length in the main to that in the side member",
                           "lm / ls", lm / ls);
    double root = sqrt(Re + 2.0 * Re * Re * (1.0 + Rt + Rt * Rt) + Rt * Rt * Re * Re * Re);
    struct yield_terms terms = {
        .Re = Re,
        .k1 = (root - Re * (1.0 + Rt)) / (1.0 + Re),
        .k2 = sqrt(2.0 * (1.0 + Re) + bend * (1.0 + 2.0 * Re) / (lm * lm)) - 1.0,
        .k3 = sqrt(2.0 * (1.0 + Re) / Re + bend * (2.0 + Re) / (ls * ls)) - 1.0};
    note_ratio(working, "k1", "for mode II",
               "(sqrt(Re + 2 * Re^2 * (1 + Rt + Rt^2) + Rt^2 * Re^3) - Re * (1 + Rt)) / (1 + Re)",
               terms.k1);
    note_ratio(working, "k2", "for mode IIIm",
               "sqrt(2 * (1 + Re) + 2 * Fyb * (1 + 2 * Re) * Dy^2 / (3 * Fem * lm^2)) - 1",
               terms.k2);
    note_ratio(working, "k3", "for mode IIIs",
               "sqrt(2 * (1 + Re) / Re + 2 * Fyb * (2 + Re) * Dy^2 / (3 * Fem * ls^2)) - 1",
               terms.k3);
    return terms;
}

static void yield_modes(const struct dowel *dowel, const struct dowel_bearing *bearing,
                        const struct reduction *reduction, struct working *working,
                        double modes[YIELD_MODE_COUNT]) {
    static const struct {
        const char *symbol, *formula;
    } STEPS[] = {/* ORDER YIELD MODE */
                 {"ZIm", "Dy * lm * Fem / R1"},
                 {"ZIs", "Dy * ls * Fes / R1"},
                 {"ZII", "k1 * Dy * ls * Fes / R2"},
                 {"ZIIIm", "k2 * Dy * lm * Fem / ((1 + 2 * Re) * R3)"},
                 {"ZIIIs", "k3 * Dy * ls * Fem / ((2 + Re) * R3)"},
                 {"ZIV", "Dy^2 / R3 * sqrt(2 * Fem * Fyb / (3 * (1 + Re)))"}};
    double D = dowel->root.value, lm = bearing->main, ls = bearing->side, Fem = bearing->Fem,
           Fes = bearing->Fes;
    struct yield_terms terms = yield_terms(dowel, bearing, working);
    double Re = terms.Re;
    modes[YIELD_IM] = D * lm * Fem / reduction->I;
    modes[YIELD_IS] = D * ls * Fes / reduction->I;
    modes[YIELD_II] = terms.k1 * D * ls * Fes / reduction->II;
    modes[YIELD_IIIM] = terms.k2 * D * lm * Fem / ((1.0 + 2.0 * Re) * reduction->III);
    modes[YIELD_IIIS] = terms.k3 * D * ls * Fem / ((2.0 + Re) * reduction->III);
    modes[YIELD_IV] =
        D * D / reduction->III * sqrt(2.0 * Fem * dowel->Fyb.value / (3.0 * (1.0 + Re)));
    for (int mode = 0; mode < YIELD_MODE_COUNT; mode++)
        working_step(working, STEPS[mode].symbol, yield_mode_words((enum yield_mode)mode),
                     STEPS[mode].formula, modes[mode], QUANTITY_WEIGHT, MODES_SOURCE);
}

/* The least; of equal ones (to 1e-9, so that every machine tells the same) the first. */
static int least_mode(const double modes[YIELD_MODE_COUNT]) {
    int least = 0;
    for (int mode = 0; mode < YIELD_MODE_COUNT; mode++) {
        if (!isfinite(modes[mode]))
            return -1;
        if (modes[mode] < modes[least] * (1.0 - 1e-9))
            least = mode;
    }
    return least;
}

static const struct {
    const char *name, *words;
} MODES[] = {/* ORDER YIELD MODE */
             {"Im", "the main member is crushed"},
             {"Is", "the side member is crushed"},
             {"II", "it turns in both members"},
             {"IIIm", "it bends once and crushes the main member"},
             {"IIIs", "it bends once and crushes the side member"},
             {"IV", "it bends twice"}};

const char *yield_mode_name(enum yield_mode mode) {
    return MODES[mode].name;
}

const char *yield_mode_words(enum yield_mode mode) {
    return MODES[mode].words;
}

static const char *no_modes(const struct dowel_joint *joint, const struct dowel_values *out) {
    if (!(joint->side->thickness > 0.0))
        return "there is no side member";
    if (!(out->penetration > 0.0))
        return "it does not reach the main member";
    if ((!joint->side->steel && !dowel_gravity_known(joint->side->gravity.value)) ||
        !dowel_gravity_known(joint->main->gravity.value))
        return "the wood is lighter or heavier than the published values go";
    return NULL;
}

void dowel_yield(const struct dowel_joint *joint, const struct dowel_bearing *bearing,
                 struct dowel_values *out) {
    struct working *working = joint->working;
    const char *missing = no_modes(joint, out);
    out->governs = -1;
    out->lateral_reference = NAN;
    for (int mode = 0; mode < YIELD_MODE_COUNT; mode++)
        out->modes[mode] = NAN;
    if (missing) {
        out->lateral_missing = missing;
        return;
    }
    working_heading(working, "Pushed sideways (yield limit equations)");
    struct reduction reduction = reduction_terms(joint->dowel, bearing, working);
    yield_modes(joint->dowel, bearing, &reduction, working, out->modes);
    out->governs = least_mode(out->modes);
    if (out->governs < 0) {
        out->lateral_missing = "a number is missing";
        return;
    }
    out->lateral_reference =
        working_step(working, "Z", "the least of the six",
                     "min(ZIm, min(ZIs, min(ZII, min(ZIIIm, min(ZIIIs, ZIV)))))",
                     out->modes[out->governs], QUANTITY_WEIGHT, MODES_SOURCE);
}
