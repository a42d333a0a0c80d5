/* Stiffness and weight of a stick. */
#include "lumber/lumber.h"

#include <math.h>

struct stiffness_names {
    enum property property;
    const char *reference, *adjusted, *formula, *words;
};
static const struct stiffness_names MEAN = {PROPERTY_E, "E", "E'", "E * CME",
                                            "stiffness after the wet factor"};
static const struct stiffness_names LEAST = {PROPERTY_EMIN, "Emin", "Emin'", "Emin * CME",
                                             "low stiffness after the wet factor"};

static double adjusted(const struct lumber *lumber, bool wet, const struct stiffness_names *names,
                       struct working *working) {
    const struct lumber_value *value = &lumber->values[names->property];
    if (!value->has)
        return NAN;
    if (lumber->basis == LUMBER_OWN) {
        bool stands_in = names->property == PROPERTY_EMIN && lumber->emin_is_e;
        return working_given(working, names->adjusted,
                             stands_in ? "stiffness as given, E for want of an Emin"
                                       : "stiffness as given",
                             value->cited.value, QUANTITY_STRESS);
    }
    working_cited(working, names->reference, property_words(names->property), value->cited,
                  QUANTITY_STRESS);
    double factor = 1.0;
    if (wet) {
        struct cited cited, exempt;
        if (!table_wet_factor(names->property, &cited, &exempt))
            return NAN;
        factor = working_cited(working, "CME", "wet factor on stiffness", cited, QUANTITY_NUMBER);
    } else {
        working_given(working, "CME", "wet factor on stiffness: dry", factor, QUANTITY_NUMBER);
    }
    return working_step(working, names->adjusted, names->words, names->formula,
                        value->cited.value * factor, QUANTITY_STRESS, "NDS 2018 4.3.1");
}

double lumber_stiffness(const struct lumber *lumber, bool wet, struct working *working) {
    return adjusted(lumber, wet, &MEAN, working);
}

double lumber_least_stiffness(const struct lumber *lumber, bool wet, struct working *working) {
    return adjusted(lumber, wet, &LEAST, working);
}

double lumber_shear_modulus(const struct lumber *lumber, bool wet) {
    if (lumber->has_shear_modulus)
        return lumber->shear_modulus;
    return lumber_stiffness(lumber, wet, NULL) / table_constant("shear-modulus-ratio").value;
}

/* From the oven-dry specific gravity, on the volume at `moisture` percent. */
static double density_at(double gravity, double moisture) {
    return 1000.0 * gravity * (1.0 + moisture / 100.0) / (1.0 + 0.009 * gravity * moisture);
}

static bool density(const struct lumber *lumber, double moisture, double *out) {
    if (lumber->has_density) {
        *out = lumber->density;
        return true;
    }
    if (!lumber->has_gravity)
        return false;
    *out = density_at(lumber->gravity.value, moisture);
    return true;
}

bool lumber_density(const struct lumber *lumber, bool wet, double *out) {
    return density(lumber, table_constant(wet ? "moisture-wet" : "moisture-dry").value, out);
}

bool lumber_slip_density(const struct lumber *lumber, double *out) {
    return density(lumber, 12.0, out);
}

double rectangle_torsion(double thickness, double width) {
    double t = fmin(thickness, width), b = fmax(thickness, width), t4 = t * t * t * t;
    return b * t * t * t * (1.0 / 3.0 - 0.21 * (t / b) * (1.0 - t4 / (12.0 * b * b * b * b)));
}
