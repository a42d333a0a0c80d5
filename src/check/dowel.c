#include "check/dowel_parts.h"

#include <math.h>

static const double INCH = 0.0254;
static const double HALF_TURN = 1.57079632679489661923; /* pi / 2 */
/* rad; a load that is nearer than this to one direction lies in it. */
static const double SAME_DIRECTION = 1e-9;

/* Bending yield strength by nominal diameter (NDS 2018 Table I1); thinner than the table begins, as
 * its first band. */
static struct cited bending_yield(enum dowel_kind kind, double diameter) {
    static const char *const BANDS[][2] = {{"Fyb.band-1.to", "Fyb.band-1"},
                                           {"Fyb.band-2.to", "Fyb.band-2"},
                                           {"Fyb.band-3.to", "Fyb.band-3"},
                                           {"Fyb.band-4.to", "Fyb.band-4"},
                                           {"Fyb.band-5.to", "Fyb.band-5"}};
    if (kind == DOWEL_BOLT)
        return table_fastener_factor("Fyb.bolt");
    if (diameter < table_fastener_factor("Fyb.band-0.under").value)
        return table_fastener_factor("Fyb.band-0");
    for (size_t k = 0; k < sizeof BANDS / sizeof *BANDS; k++)
        if (diameter <= table_fastener_factor(BANDS[k][0]).value * (1.0 + 1e-9))
            return table_fastener_factor(BANDS[k][1]);
    return table_fastener_factor("Fyb.band-6");
}

static struct dowel dowel_of_size(const struct fastener_size *size) {
    bool threaded = size->kind == DOWEL_SCREW || size->kind == DOWEL_LAG;
    struct dowel dowel = {.kind = size->kind,
                          .nail = size->nail,
                          .size = size->name,
                          .D = size->diameter,
                          .root = threaded ? size->root : size->diameter,
                          .head = size->head,
                          .Fyb = bending_yield(size->kind, size->diameter.value)};
    switch (size->kind) {
    case DOWEL_LAG:
        dowel.tip = size->tip.value;
        break;
    case DOWEL_BOLT:
        dowel.tip = 0.0;
        break;
    default:
        dowel.tip = table_fastener_factor("tip").value * size->diameter.value;
    }
    if (size->kind == DOWEL_NAIL)
        dowel_set_length(&dowel, size->length.value);
    return dowel;
}

bool dowel_find(enum dowel_kind kind, enum nail_kind nail, const char *size, struct dowel *out) {
    struct fastener_size found;
    if (!table_fastener_find(kind, nail, size, &found))
        return false;
    *out = dowel_of_size(&found);
    return true;
}

bool dowel_of_diameter(enum dowel_kind kind, enum nail_kind nail, double diameter,
                       struct dowel *out) {
    struct fastener_size found;
    if (!table_fastener_of_diameter(kind, nail, diameter, &found))
        return false;
    *out = dowel_of_size(&found);
    return true;
}

void dowel_set_length(struct dowel *dowel, double length) {
    dowel->length = length;
    switch (dowel->kind) {
    case DOWEL_SCREW:
        dowel->thread = length * table_fastener_factor("thread.screw").value;
        break;
    case DOWEL_LAG:
        dowel->thread = fmin(length * table_fastener_factor("thread.lag.share").value +
                                 table_fastener_factor("thread.lag.add").value,
                             table_fastener_factor("thread.lag.most").value);
        dowel->thread = fmin(dowel->thread, length);
        break;
    default:
        dowel->thread = length;
    }
}

bool dowel_gravity_known(double gravity) {
    const double dust = 1e-9;
    return gravity >= table_fastener_factor("gravity-from").value - dust &&
           gravity <= table_fastener_factor("gravity-to").value + dust;
}

void dowel_note_gravity(struct working *working, const char *symbol, const char *words,
                        const struct cited *gravity) {
    if (gravity->source && gravity->source[0])
        working_cited(working, symbol, words, *gravity, QUANTITY_NUMBER);
    else
        working_given(working, symbol, words, gravity->value, QUANTITY_NUMBER);
}

static void note_dowel(const struct dowel *dowel, struct working *working) {
    working_heading(working, "The fastener");
    working_cited(working, "D", "diameter of its shank", dowel->D, QUANTITY_LENGTH);
    if (dowel->kind == DOWEL_SCREW || dowel->kind == DOWEL_LAG)
        working_cited(working, "Dy", "diameter at the root of its thread: it bends there",
                      dowel->root, QUANTITY_LENGTH);
    else
        working_step(working, "Dy", "diameter where it bends", "D", dowel->D.value, QUANTITY_LENGTH,
                     "NDS 2018 12.3.7");
    /* some formulas want the diameter as a number of inches */
    if (dowel->D.value > table_fastener_factor("KD.thin-to").value)
        working_given(working, "inch", "one inch", INCH, QUANTITY_LENGTH);
    working_given(working, "L", "length", dowel->length, QUANTITY_LENGTH);
    working_cited(working, "Fyb", "bending yield strength of its steel", dowel->Fyb,
                  QUANTITY_STRESS);
}

void dowel_values(const struct dowel *dowel, const struct dowel_layer *side,
                  const struct dowel_layer *main, const struct dowel_service *service,
                  struct working *working, struct dowel_values *out) {
    struct dowel_joint joint = {dowel, side, main, service, working};
    *out =
        (struct dowel_values){.lateral_missing = "", .withdrawal_missing = "", .pull_missing = ""};
    note_dowel(dowel, working);
    struct dowel_bearing bearing = dowel_bearing(&joint, out);
    dowel_yield(&joint, &bearing, out);
    dowel_lateral(&joint, out);
    dowel_withdrawal(&joint, bearing.tip_in, out);
    dowel_pull_through(&joint, out);
    bool either = isnan(out->withdrawal) || isnan(out->pull_through);
    out->axial = out->withdrawal == 0.0 ? 0.0
                 : either               ? NAN
                                        : fmin(out->withdrawal, out->pull_through);
}

double dowel_combined(enum dowel_kind kind, double axial, double lateral, double angle) {
    double cosine = cos(angle), sine = sin(angle);
    if (isnan(angle) || (kind == DOWEL_BOLT && angle > SAME_DIRECTION))
        return NAN;
    if (angle <= SAME_DIRECTION)
        return lateral;
    if (angle >= HALF_TURN - SAME_DIRECTION)
        return axial;
    if (kind != DOWEL_NAIL) {
        cosine *= cosine;
        sine *= sine;
    }
    if (isinf(axial))
        return lateral / cosine;
    if (axial == 0.0)
        return axial * lateral; /* 0, or NAN where the other is not known */
    return axial * lateral / (axial * cosine + lateral * sine);
}
