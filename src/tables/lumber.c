#include "tables/data.h"

#include <string.h>

/* The grades from good to poor, in the order in which they are offered. */
enum grade { SELECT_STRUCTURAL, NO_1, NO_2, NO_3, STUD, CONSTRUCTION, STANDARD, UTILITY, UNGRADED };

static const char *const grade_names[] = {
    [SELECT_STRUCTURAL] = "select-structural",
    [NO_1] = "no-1",
    [NO_2] = "no-2",
    [NO_3] = "no-3",
    [STUD] = "stud",
    [CONSTRUCTION] = "construction",
    [STANDARD] = "standard",
    [UTILITY] = "utility",
    [UNGRADED] = "ungraded",
};
enum { GRADES = sizeof grade_names / sizeof *grade_names };

const int GRADE_UNGRADED = UNGRADED;

static const char *const property_names[] = {
    [PROPERTY_FB] = "Fb", [PROPERTY_FT] = "Ft", [PROPERTY_FV] = "Fv",     [PROPERTY_FCP] = "Fcp",
    [PROPERTY_FC] = "Fc", [PROPERTY_E] = "E",   [PROPERTY_EMIN] = "Emin",
};

static const char *const species_table = "specific-gravity";
static const char *const by_width = "southern-pine"; /* the one species with values by width */

const char *table_property_name(enum property property) {
    return property_names[property];
}

int table_species_count(void) {
    return table_row_count(species_table);
}

const char *table_species_name(int species) {
    return table_row_at(species_table, species)->row;
}

int table_species_find(const char *name) {
    return table_row_index(species_table, name);
}

bool table_specific_gravity(int species, struct cited *out) {
    if (species < 0 || species >= table_species_count())
        return false;
    *out = table_row_cited(table_row_at(species_table, species));
    return true;
}

int table_grade_count(void) {
    return GRADES;
}

const char *table_grade_name(int grade) {
    return grade_names[grade];
}

int table_grade_find(const char *name) {
    return table_name_index(grade_names, GRADES, sizeof *grade_names, name);
}

static bool is_light_framing(int grade) {
    return grade == CONSTRUCTION || grade == STANDARD || grade == UTILITY;
}

int table_grade_in_width(int grade, int width) {
    if (width == 0 || (is_light_framing(grade) && width > 4))
        return UNGRADED;
    return grade == STUD && width >= 8 ? NO_3 : grade;
}

/* The part of the row id that names the width; NULL where the species has no such row. */
static const char *width_part(int grade, int width) {
    if (is_light_framing(grade))
        return width == 4 ? "w4" : NULL;
    if (width <= 4)
        return "w2-4";
    if (width <= 6)
        return "w5-6";
    return width == 8 ? "w8" : width == 10 ? "w10" : "w12";
}

static const struct table_row *design_row(const char *species, int grade, int width,
                                          enum property property) {
    static const char *const table = "design-values";
    const char *name = property_names[property], *grade_name = grade_names[grade];
    bool varies = strcmp(species, by_width) == 0;
    const char *part = varies ? width_part(grade, width) : NULL;
    if (varies && !part)
        return NULL;
    if (property == PROPERTY_FV || property == PROPERTY_FCP)
        return table_row_named(table, "%s.%s", species, name);
    if (varies)
        return table_row_named(table, "%s.%s.%s.%s", species, grade_name, part, name);
    return table_row_named(table, "%s.%s.%s", species, grade_name, name);
}

bool table_design_value(int species, int grade, double nominal_width, enum property property,
                        struct cited *out) {
    if (species < 0 || species >= table_species_count() || grade < 0 || grade >= UNGRADED)
        return false;
    int width = table_width_row(nominal_width);
    int as = table_grade_in_width(grade, width);
    if (as == UNGRADED)
        return false;
    return table_row_give(design_row(table_species_name(species), as, width, property), out);
}

const char *table_factor_group(int species, int grade) {
    if (strcmp(table_species_name(species), by_width) == 0)
        return "southern-pine";
    if (grade == CONSTRUCTION || grade == STANDARD)
        return "construction-standard";
    return grade == STUD ? "stud" : grade == UTILITY ? "utility" : "structural";
}
