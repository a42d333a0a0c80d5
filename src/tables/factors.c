#include "tables/data.h"

int table_width_row(double width) {
    static const int rows[] = {2, 3, 4, 5, 6, 8, 10, 12};
    if (!(width >= rows[0]))
        return 0;
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++)
        if (width <= rows[k])
            return rows[k];
    return 14;
}

/* Dimension lumber and boards; the tables here do not hold for timbers of 5 in and thicker. */
static bool thickness_known(double nominal_thickness) {
    return nominal_thickness > 0.0 && nominal_thickness <= 4.0;
}

bool table_size_factor(int species, int grade, double nominal_thickness, double nominal_width,
                       enum property property, struct cited *out) {
    static const char *const table = "size-factors";
    int width = table_width_row(nominal_width);
    if (species < 0 || species >= table_species_count() || grade < 0 || grade >= GRADE_UNGRADED ||
        !thickness_known(nominal_thickness))
        return false;
    int as = table_grade_in_width(grade, width);
    if (as == GRADE_UNGRADED)
        return false;
    const char *name = table_property_name(property);
    if (property != PROPERTY_FB && property != PROPERTY_FT && property != PROPERTY_FC)
        return table_row_give(table_row_named(table, "none.%s", name), out);
    bool thick = property == PROPERTY_FB && nominal_thickness > 3.0;
    return table_row_give(table_row_named(table, "%s.w%d.%s%s", table_factor_group(species, as),
                                          width, name, thick ? "-4in" : ""),
                          out);
}

bool table_flat_use_factor(double nominal_thickness, double nominal_width, struct cited *out) {
    int width = table_width_row(nominal_width);
    if (width == 0 || !thickness_known(nominal_thickness))
        return false;
    const char *thickness = nominal_thickness > 3.0 ? "t4" : "t2-3";
    return table_row_give(table_row_named("flat-use-factors", "%s.w%d", thickness, width), out);
}

bool table_wet_factor(enum property property, struct cited *factor, struct cited *exempt) {
    static const char *const table = "wet-service-factors";
    const char *name = table_property_name(property);
    if (!table_row_give(table_row_find(table, name), factor))
        return false;
    if (!table_row_give(table_row_named(table, "%s.exempt-to", name), exempt))
        *exempt = (struct cited){.value = 0.0, .source = factor->source, .mark = factor->mark};
    return true;
}

static const char *const duration_names[] = {
    [DURATION_PERMANENT] = "permanent",     [DURATION_TEN_YEARS] = "ten-years",
    [DURATION_TWO_MONTHS] = "two-months",   [DURATION_SEVEN_DAYS] = "seven-days",
    [DURATION_TEN_MINUTES] = "ten-minutes",
};

const char *duration_name(enum duration duration) {
    return duration_names[duration];
}

struct cited table_duration_factor(enum duration duration) {
    return table_row_cited(table_row_in(table_of_load_duration_factors, duration_names[duration]));
}
