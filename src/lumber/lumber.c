#include "lumber/lumber.h"

#include "lumber/by_eye.h"

#include <math.h>

/* Table 4A and 4B are for dimension lumber; thicker posts and timbers have other tables. */
static const double THICKEST = 4.0;
static const double BOARD_BELOW = 2.0;

const char *property_words(enum property property) {
    static const char *const words[PROPERTY_COUNT] = {
        [PROPERTY_FB] = "bending strength Fb",
        [PROPERTY_FT] = "strength against pull along the grain Ft",
        [PROPERTY_FV] = "shear strength along the grain Fv",
        [PROPERTY_FCP] = "strength against pressure across the grain Fcp",
        [PROPERTY_FC] = "strength against push along the grain Fc",
        [PROPERTY_E] = "stiffness E",
        [PROPERTY_EMIN] = "low stiffness Emin",
    };
    return words[property];
}

const char *property_symbol(enum property property) {
    static const char *const symbols[PROPERTY_COUNT] = {
        [PROPERTY_FB] = "Fb",     [PROPERTY_FT] = "Ft", [PROPERTY_FV] = "Fv",
        [PROPERTY_FCP] = "Fcp",   [PROPERTY_FC] = "Fc", [PROPERTY_E] = "E",
        [PROPERTY_EMIN] = "Emin",
    };
    return symbols[property];
}

const char *lumber_basis_words(enum lumber_basis basis) {
    switch (basis) {
    case LUMBER_UNGRADED:
        return "no grade stamp: taken, value by value, as the lower of its species' No.3 and "
               "Northern Species No.3; this is an assumption";
    case LUMBER_BY_EYE:
        return "no grade stamp: raised from ungraded by your own measure of knots and grain, at "
               "most to No.2; this is your own grading";
    case LUMBER_PLAIN_BOARD:
        return "boards under 2 in carry no strength by their grade unless stress-rated: taken as "
               "ungraded, an assumption";
    case LUMBER_NO_VALUES:
        return "this grade has no published strength at this size; its stiffness is taken as that "
               "of an ungraded stick";
    case LUMBER_OWN:
        return "the values are your own";
    case LUMBER_GRADED:
        break;
    }
    return "";
}

/* The value of one row at this size, with its size factor published too: a value whose factor is
 * not known is no value. */
static struct lumber_value row_value(const struct lumber *lumber, int species, int grade,
                                     enum property property) {
    struct lumber_value value = {.has = false, .species = species, .grade = grade};
    struct cited factor;
    if (species < 0 || grade < 0)
        return value;
    value.has = table_design_value(species, grade, lumber->nominal_width, property, &value.cited) &&
                table_size_factor(species, grade, lumber->nominal_thickness, lumber->nominal_width,
                                  property, &factor);
    return value;
}

/* The lower of the species' No.3 and Northern Species No.3; none where either has none. */
static struct lumber_value ungraded_value(const struct lumber *lumber, enum property property) {
    int number_3 = table_grade_find("no-3");
    struct lumber_value own = row_value(lumber, lumber->species, number_3, property);
    struct lumber_value northern =
        row_value(lumber, table_species_find("northern-species"), number_3, property);
    if (!own.has || !northern.has) {
        own.has = false;
        return own;
    }
    return northern.cited.value < own.cited.value ? northern : own;
}

static bool is_stiffness(enum property property) {
    return property == PROPERTY_E || property == PROPERTY_EMIN;
}

/* A stick without values still has to bend by some amount: as an ungraded one of this species, of
 * the nearest size that the tables hold. */
static struct lumber_value fallback_stiffness(const struct lumber *lumber, enum property property) {
    struct lumber nearest = *lumber;
    nearest.nominal_thickness = fmin(nearest.nominal_thickness, THICKEST);
    nearest.nominal_width = fmax(2.0, fmin(nearest.nominal_width, 12.0));
    return ungraded_value(&nearest, property);
}

static void fill_values(struct lumber *lumber) {
    bool as_ungraded = lumber->basis == LUMBER_UNGRADED || lumber->basis == LUMBER_PLAIN_BOARD;
    bool too_thick = lumber->nominal_thickness > THICKEST;
    for (int i = 0; i < PROPERTY_COUNT; i++) {
        enum property property = (enum property)i;
        struct lumber_value *value = &lumber->values[i];
        *value = as_ungraded ? ungraded_value(lumber, property)
                             : row_value(lumber, lumber->species, lumber->grade, property);
        if (too_thick)
            value->has = false;
        if (value->has)
            continue;
        lumber->basis = LUMBER_NO_VALUES;
        if (is_stiffness(property))
            *value = fallback_stiffness(lumber, property);
    }
}

struct lumber lumber_from_table(struct lumber_from_table stick) {
    struct lumber lumber = {
        .basis = LUMBER_GRADED,
        .species = stick.species,
        .grade = stick.grade,
        .finger_jointed = stick.finger_jointed,
        .thickness = fmin(stick.thickness, stick.width),
        .width = fmax(stick.thickness, stick.width),
    };
    if (stick.size >= 0) {
        const struct dressed_size *size = table_size(stick.size);
        lumber.thickness = size->thickness;
        lumber.width = size->width;
        lumber.nominal_thickness = size->nominal_thickness;
        lumber.nominal_width = size->nominal_width;
    } else {
        lumber.nominal_thickness = table_nominal_inches(lumber.thickness);
        lumber.nominal_width = table_nominal_inches(lumber.width);
    }
    if (stick.grade < 0 || stick.grade == GRADE_UNGRADED)
        lumber.basis = LUMBER_UNGRADED;
    else if (lumber.nominal_thickness < BOARD_BELOW && !stick.stress_rated)
        lumber.basis = LUMBER_PLAIN_BOARD;
    fill_values(&lumber);
    if (stick.measured)
        raise_by_eye(&lumber, stick.knots, stick.slope_of_grain);
    if (lumber.worse_than_taken) /* nobody knows how strong it is: no check passes it */
        lumber.values[PROPERTY_FB].has = lumber.values[PROPERTY_FT].has =
            lumber.values[PROPERTY_FC].has = false;
    lumber.has_gravity = table_specific_gravity(stick.species, &lumber.gravity);
    return lumber;
}

struct lumber lumber_from_numbers(struct lumber_from_numbers stick) {
    struct lumber lumber = {
        .basis = LUMBER_OWN,
        .species = -1,
        .grade = -1,
        .finger_jointed = stick.finger_jointed,
        .thickness = fmin(stick.thickness, stick.width),
        .width = fmax(stick.thickness, stick.width),
        .has_density = !isnan(stick.density),
        .density = stick.density,
        .has_shear_modulus = !isnan(stick.shear_modulus),
        .shear_modulus = stick.shear_modulus,
    };
    for (int i = 0; i < PROPERTY_COUNT; i++)
        lumber.values[i] = (struct lumber_value){.has = !isnan(stick.values[i]),
                                                 .cited = {stick.values[i], "given", MARK_TRADE},
                                                 .species = -1,
                                                 .grade = -1};
    if (!lumber.values[PROPERTY_EMIN].has) {
        lumber.values[PROPERTY_EMIN] = lumber.values[PROPERTY_E];
        lumber.emin_is_e = true;
    }
    return lumber;
}

bool lumber_unfit_finger_joints(const struct lumber *lumber, bool standing_bending, bool tension) {
    return lumber->finger_jointed && (standing_bending || tension);
}
