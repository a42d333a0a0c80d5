#include "check/strength.h"

#include <math.h>

#define FACTORS_SOURCE "NDS 2018 4.3.1"

/* The symbols of one property's factors; size NULL where no size factor applies. */
struct recipe {
    const char *size, *wet, *threshold, *result, *words, *formula, *own_formula;
};

static const struct recipe RECIPES[PROPERTY_COUNT] = {
    [PROPERTY_FB] = {"CFb", "CMb", "Fbw", "Fbs", NULL, NULL, NULL},
    [PROPERTY_FT] = {"CFt", "CMt", "Ftw", "Ft'", "pull strength after all factors",
                     "Ft * CD * CMt * CFt", "Ft * CD"},
    [PROPERTY_FV] = {NULL, "CMv", "Fvw", "Fv'", "shear strength after all factors", "Fv * CD * CMv",
                     "Fv * CD"},
    [PROPERTY_FCP] = {NULL, "CMp", "Fcpw", "Fcp1",
                      "pressure across the grain, after the wet factor (time does not count)",
                      "Fcp * CMp", "Fcp"},
    [PROPERTY_FC] = {"CFc", "CMc", "Fcw", "Fcs", "push strength with every factor but CP",
                     "Fc * CD * CMc * CFc", "Fc * CD"},
};

double strength_duration(enum duration duration, struct working *working) {
    return working_cited(working, "CD", "how long the load stands (shortest in the combination)",
                         table_duration_factor(duration), QUANTITY_NUMBER);
}

static bool size_factor(const struct lumber *lumber, enum property property,
                        struct working *working, double *factor) {
    const struct lumber_value *value = &lumber->values[property];
    struct cited cited;
    if (!RECIPES[property].size) {
        *factor = 1.0;
        return true;
    }
    if (!table_size_factor(value->species, value->grade, lumber->nominal_thickness,
                           lumber->nominal_width, property, &cited))
        return false;
    *factor = working_cited(working, RECIPES[property].size, "size factor", cited, QUANTITY_NUMBER);
    return true;
}

/* CM; 1 where the reference value times the size factor is no higher than the table's threshold.
 * A row that is not there has no value, and NAN passes nothing. */
static double wet_factor(enum property property, double sized, bool wet, struct working *working) {
    const struct recipe *recipe = &RECIPES[property];
    struct cited cited = {NAN, "", MARK_TRADE}, exempt = cited;
    if (!wet)
        return working_given(working, recipe->wet, "wet factor: dry", 1.0, QUANTITY_NUMBER);
    table_wet_factor(property, &cited, &exempt);
    if (exempt.value > 0.0) {
        working_cited(working, recipe->threshold,
                      "strength x size factor up to which wet is as dry", exempt, QUANTITY_STRESS);
        if (sized <= exempt.value * (1.0 + 1e-9))
            return working_step(working, recipe->wet,
                                "wet factor: 1, strength x size factor is not over that", NULL, 1.0,
                                QUANTITY_NUMBER, cited.source);
    }
    return working_cited(working, recipe->wet, "wet factor", cited, QUANTITY_NUMBER);
}

/* Reference x size x wet, noting the three. */
static bool sized_and_wet(const struct lumber *lumber, enum property property, bool wet,
                          struct working *working, double *out) {
    const struct lumber_value *value = &lumber->values[property];
    double size;
    if (!value->has)
        return false;
    double reference = lumber_reference(lumber, property, working);
    if (!size_factor(lumber, property, working, &size))
        return false;
    double sized = reference * size;
    *out = sized * wet_factor(property, sized, wet, working);
    return true;
}

static bool own_strength(const struct lumber *lumber, enum property property,
                         struct working *working, double *out) {
    const struct lumber_value *value = &lumber->values[property];
    if (!value->has)
        return false;
    *out = working_given(working, property_symbol(property), property_words(property),
                         value->cited.value, QUANTITY_STRESS);
    return true;
}

bool strength(const struct lumber *lumber, enum property property,
              const struct conditions *conditions, struct working *working, double *out) {
    const struct recipe *recipe = &RECIPES[property];
    bool own = lumber->basis == LUMBER_OWN;
    double value;
    if (!(own ? own_strength(lumber, property, working, &value)
              : sized_and_wet(lumber, property, conditions->wet, working, &value)))
        return false;
    if (property != PROPERTY_FCP)
        value *= table_duration_factor(conditions->duration).value;
    *out = working_step(working, recipe->result, recipe->words,
                        own ? recipe->own_formula : recipe->formula, value, QUANTITY_STRESS,
                        FACTORS_SOURCE);
    return true;
}

/* Cr: only where a grade speaks for the sticks that share. */
static double repetitive_factor(const struct lumber *lumber, bool repetitive,
                                struct working *working) {
    if (repetitive && lumber->basis == LUMBER_GRADED)
        return working_cited(working, "Cr", "three or more share the load",
                             table_constant("repetitive-factor"), QUANTITY_NUMBER);
    return working_given(working, "Cr",
                         repetitive ? "sharing among three or more: not for ungraded sticks"
                                    : "sharing among three or more: none",
                         1.0, QUANTITY_NUMBER);
}

static bool flat_use_factor(const struct lumber *lumber, struct working *working, double *factor) {
    struct cited cited;
    if (!table_flat_use_factor(lumber->nominal_thickness, lumber->nominal_width, &cited))
        return false;
    *factor =
        working_cited(working, "Cfu", "flat use: load on the wide face", cited, QUANTITY_NUMBER);
    return true;
}

bool strength_bending(const struct lumber *lumber, const struct conditions *conditions,
                      struct working *working, double *edgewise, double *flatwise) {
    bool own = lumber->basis == LUMBER_OWN;
    double value, flat = 1.0;
    if (own) {
        if (!own_strength(lumber, PROPERTY_FB, working, &value))
            return false;
    } else {
        if (!sized_and_wet(lumber, PROPERTY_FB, conditions->wet, working, &value))
            return false;
        value *= repetitive_factor(lumber, conditions->repetitive, working);
    }
    value *= table_duration_factor(conditions->duration).value;
    if (edgewise)
        *edgewise = working_step(
            working, "Fbs", "bending strength on edge, with every factor but CL",
            own ? "Fb * CD" : "Fb * CD * CMb * CFb * Cr", value, QUANTITY_STRESS, FACTORS_SOURCE);
    if (!flatwise)
        return true;
    if (!own && !flat_use_factor(lumber, working, &flat))
        return false;
    *flatwise = working_step(working, "Fb2'", "bending strength flatwise, after all factors",
                             own ? "Fb * CD" : "Fb * CD * CMb * CFb * Cfu * Cr", value * flat,
                             QUANTITY_STRESS, FACTORS_SOURCE);
    return true;
}
