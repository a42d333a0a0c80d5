#include "spread/build.h"

#include <gsl/gsl_randist.h>
#include <math.h>

static const char *const ROWS[PROPERTY_COUNT] = {
    [PROPERTY_FB] = "spread-Fb",   [PROPERTY_FT] = "spread-Ft", [PROPERTY_FV] = "spread-Fv",
    [PROPERTY_FCP] = "spread-Fcp", [PROPERTY_FC] = "spread-Fc", [PROPERTY_E] = "spread-E",
    [PROPERTY_EMIN] = "spread-E"};

void build_draw(const struct build *build, gsl_rng *rng) {
    for (size_t k = 0; k < build->count; k++)
        switch (build->inputs[k].kind) {
        case SPREAD_JOINTS:
            build->values[k] = gsl_ran_flat(rng, -1.0, 1.0);
            break;
        case SPREAD_TRAYS:
            build->values[k] = gsl_ran_flat(rng, table_constant("spread-tray-low").value,
                                            table_constant("spread-tray-high").value) /
                               table_tray(table_tray_find("tray-1020-wet"))->weight;
            break;
        default:
            build->values[k] = gsl_ran_gaussian(rng, 1.0);
        }
}

void build_trays(const struct build *build, struct frame *frame) {
    for (size_t k = 0; k < build->count; k++)
        if (build->inputs[k].kind == SPREAD_TRAYS)
            frame->shelves.items[build->inputs[k].index].tray_share = build->values[k];
}

/* s of a lognormal value with the coefficient of variation of a property. */
static double spread_of(enum property property) {
    double variation = table_constant(ROWS[property]).value;
    return sqrt(log1p(variation * variation));
}

/* Of a value whose published number is the mean. */
static double about_mean(enum property property, double z) {
    double s = spread_of(property);
    return exp(s * z - s * s / 2.0);
}

/* Of a value whose published number is the one that 19 of 20 sticks reach. */
static double above_exclusion(enum property property, double z) {
    return exp(spread_of(property) * (z + table_constant("spread-exclusion").value));
}

static void set_stiffness(struct model_member *member, double z) {
    double share = about_mean(PROPERTY_E, z);
    double least =
        1.0 - table_constant("spread-exclusion").value * table_constant("spread-E").value;
    member->E *= share;
    if (!member->lumber.has_shear_modulus)
        member->G *= share;
    member->lumber.values[PROPERTY_E].cited.value *= share;
    member->lumber.values[PROPERTY_EMIN].cited.value *= share / least;
}

static void set_strength(struct lumber *lumber, double z) {
    for (int p = PROPERTY_FB; p <= PROPERTY_FC; p++)
        lumber->values[p].cited.value *=
            p == PROPERTY_FCP ? about_mean(p, z) : above_exclusion((enum property)p, z);
}

static double between(double middle, double other, double u) {
    double share = fabs(u);
    if (!isfinite(middle) || !isfinite(other))
        return middle;
    if (middle > 0.0 && other > 0.0)
        return middle * pow(other / middle, share);
    return middle + (other - middle) * share;
}

static void set_springs(struct member_end *end, double u) {
    for (int k = 0; k < 6; k++) {
        double middle = end->springs[STIFFNESS_MIDDLE].k[k];
        double other = end->springs[u < 0.0 ? STIFFNESS_LOW : STIFFNESS_HIGH].k[k];
        for (int s = 0; s < STIFFNESS_COUNT; s++)
            end->springs[s].k[k] = between(middle, other, u);
    }
}

static void set_joints(struct model *model, int connection, double u) {
    for (size_t m = 0; m < model->member_count; m++)
        for (int e = 0; e < 2; e++)
            if (model->members[m].ends[e].connection == connection)
                set_springs(&model->members[m].ends[e], u);
    model->has_screws = false; /* this build has one stiffness, no low and no high */
}

void build_vary(const void *with, struct model *model) {
    const struct build *build = with;
    for (size_t k = 0; k < build->count; k++) {
        int index = build->inputs[k].index;
        switch (build->inputs[k].kind) {
        case SPREAD_STIFFNESS:
            set_stiffness(&model->members[index], build->values[k]);
            break;
        case SPREAD_STRENGTH:
            set_strength(&model->members[index].lumber, build->values[k]);
            break;
        case SPREAD_JOINTS:
            set_joints(model, index, build->values[k]);
            break;
        default: /* trays are the frame's (build_trays) */
            break;
        }
    }
}
