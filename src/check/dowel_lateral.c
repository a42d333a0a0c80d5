#include "check/dowel_parts.h"

#include <math.h>

#define FACTORS_SOURCE "NDS 2018 Table 11.3.1"

double dowel_duration_factor(const struct dowel_joint *joint) {
    return working_cited(joint->working, "CD",
                         "how long the load stands (shortest in the combination)",
                         table_duration_factor(joint->service->duration), QUANTITY_NUMBER);
}

double dowel_heat_factor(const struct dowel_joint *joint) {
    struct cited cited = {NAN, "", MARK_TRADE};
    table_value("temperature-factors",
                joint->service->wet ? "connection.wet.to-100F" : "connection.dry.to-100F", &cited);
    return working_cited(joint->working, "Ct", "lasting heat: none over 100 F", cited,
                         QUANTITY_NUMBER);
}

double dowel_factor(const struct dowel_joint *joint, const char *symbol, bool applies,
                    const char *row, const char *words, const char *otherwise) {
    if (applies)
        return working_cited(joint->working, symbol, words, table_fastener_factor(row),
                             QUANTITY_NUMBER);
    return working_step(joint->working, symbol, otherwise, NULL, 1.0, QUANTITY_NUMBER,
                        FACTORS_SOURCE);
}

static const char *too_short(enum dowel_kind kind) {
    return kind == DOWEL_BOLT ? "the bolt does not go all through the main member"
                              : "it does not reach deep enough into the wood behind";
}

void dowel_lateral(const struct dowel_joint *joint, struct dowel_values *out) {
    struct working *working = joint->working;
    out->lateral = out->lateral_factor = NAN;
    if (isnan(out->lateral_reference))
        return;
    working_heading(working, "What may act sideways");
    double CD = dowel_duration_factor(joint);
    double CM = dowel_factor(joint, "CMz", joint->service->wet, "CM.lateral", "wet factor",
                             "wet factor: dry");
    double Ct = dowel_heat_factor(joint);
    double Cg = dowel_factor(joint, "Cg", false, "", "", "one fastener, no group");
    double Cdelta = dowel_factor(joint, "Cdelta", false, "", "",
                                 "far enough from ends, edges and its neighbours");
    double Ceg = dowel_factor(joint, "Cegz", joint->main->end_grain, "Ceg.lateral",
                              "end grain of the main member", "end grain: no, side grain");
    double Ctn = dowel_factor(joint, "Ctnz", joint->service->toe_nailed, "Ctn.lateral",
                              "driven at a slant", "driven at a slant: no");
    out->lateral_factor = CD * CM * Ct * Cg * Cdelta * Ceg * Ctn;
    double lateral =
        working_step(working, "Z'",
                     out->penetrates ? "what may act sideways"
                                     : "for information: it does not reach deep "
                                       "enough, no published value holds",
                     "Z * CD * CMz * Ct * Cg * Cdelta * Cegz * Ctnz",
                     out->lateral_reference * out->lateral_factor, QUANTITY_WEIGHT, FACTORS_SOURCE);
    if (out->penetrates)
        out->lateral = lateral;
    else
        out->lateral_missing = too_short(joint->dowel->kind);
}
