#include "lumber/by_eye.h"

#include <math.h>
#include <stdio.h>

#define RATIO_SOURCE "ASTM D245, strength ratio of the knots and grain you measured"
static const double INCH = 0.0254;

/* D245 changes its formula at this ratio. */
static const double TURN = 0.45;

static double positive(double ratio) {
    return ratio > 0.0 ? ratio : 0.0;
}

/* Inches. */
static double edge_of_wide_face(double knot, double face) {
    double left = positive(1.0 - (knot - 1.0 / 24.0) / (face + 3.0 / 8.0));
    if (left * left >= TURN)
        return left * left;
    left = positive(1.0 - knot / (face + 1.0 / 8.0));
    return left * left;
}

static double narrow_face(double knot, double face) {
    double left = 1.0 - (knot - 1.0 / 24.0) / (face + 3.0 / 8.0);
    return left >= TURN ? left : positive(1.0 - (knot - 1.0 / 24.0) / face);
}

double knot_ratio(double knot, double thickness, double width) {
    double k = knot / INCH;
    double wide = edge_of_wide_face(k, width / INCH), narrow = narrow_face(k, thickness / INCH);
    return fmin(1.0, wide < narrow ? wide : narrow);
}

bool grain_ratio(double slope, bool push, double *ratio) {
    static const int runs[] = {20, 15, 12, 10, 8, 6};
    for (size_t i = 0; i < sizeof runs / sizeof *runs; i++) {
        char row[32];
        struct cited cited;
        if (!(slope * runs[i] <= 1.0 + 1e-9))
            continue;
        snprintf(row, sizeof row, "%s.%d", push ? "compression" : "bending", runs[i]);
        if (!table_value("strength-ratios", row, &cited))
            return false;
        *ratio = cited.value;
        return true;
    }
    return false;
}

/* Raise one value; false where it stays. */
static bool raise_value(struct lumber *lumber, enum property property, double left) {
    int number_2 = table_grade_find("no-2");
    struct lumber_value *value = &lumber->values[property];
    struct cited no_2, in_no_2, factor;
    if (!value->has || !table_value("strength-ratios", "grade.no-2", &in_no_2) ||
        !table_design_value(lumber->species, number_2, lumber->nominal_width, property, &no_2) ||
        !table_size_factor(lumber->species, number_2, lumber->nominal_thickness,
                           lumber->nominal_width, property, &factor))
        return false;
    double raised = no_2.value * fmin(1.0, left / in_no_2.value);
    if (!(raised > value->cited.value))
        return false;
    *value = (struct lumber_value){.has = true,
                                   .cited = {raised, RATIO_SOURCE, MARK_MEMORY},
                                   .species = lumber->species,
                                   .grade = number_2,
                                   .by_eye = true,
                                   .no_2 = no_2,
                                   .left = {left, RATIO_SOURCE, MARK_MEMORY}};
    return true;
}

/* Whether the ratio speaks for less bending strength than an ungraded stick was given. */
static bool falls_short(const struct lumber *lumber, double left) {
    const struct lumber_value *value = &lumber->values[PROPERTY_FB];
    struct cited no_2, in_no_2;
    return value->has && table_value("strength-ratios", "grade.no-2", &in_no_2) &&
           table_design_value(lumber->species, table_grade_find("no-2"), lumber->nominal_width,
                              PROPERTY_FB, &no_2) &&
           no_2.value * left / in_no_2.value < value->cited.value;
}

void raise_by_eye(struct lumber *lumber, double knot, double slope) {
    double along, pushed;
    bool ungraded = lumber->basis == LUMBER_UNGRADED || lumber->basis == LUMBER_PLAIN_BOARD;
    if (!ungraded || !(knot >= 0.0) || !(slope >= 0.0))
        return;
    if (!grain_ratio(slope, false, &along) || !grain_ratio(slope, true, &pushed)) {
        lumber->worse_than_taken = true;
        return;
    }
    double knots = knot_ratio(knot, lumber->thickness, lumber->width);
    lumber->worse_than_taken = falls_short(lumber, fmin(along, knots));
    bool bends = raise_value(lumber, PROPERTY_FB, fmin(along, knots));
    bool pulls = raise_value(lumber, PROPERTY_FT, fmin(along, knots));
    bool pushes = raise_value(lumber, PROPERTY_FC, fmin(pushed, knots));
    if (bends || pulls || pushes)
        lumber->basis = LUMBER_BY_EYE;
}

double lumber_reference(const struct lumber *lumber, enum property property,
                        struct working *working) {
    const struct lumber_value *value = &lumber->values[property];
    struct cited in_no_2;
    if (!value->has)
        return NAN;
    if (!value->by_eye || !table_value("strength-ratios", "grade.no-2", &in_no_2))
        return working_cited(working, property_symbol(property), property_words(property),
                             value->cited, QUANTITY_STRESS);
    working_cited(working, "F2", "the same of No.2 of this species", value->no_2, QUANTITY_STRESS);
    working_cited(working, "q", "share of clear-wood strength that knots and grain leave",
                  value->left, QUANTITY_NUMBER);
    working_cited(working, "q2", "share that No.2 stands for", in_no_2, QUANTITY_NUMBER);
    return working_step(working, property_symbol(property), property_words(property),
                        "F2 * min(1, q / q2)", value->cited.value, QUANTITY_STRESS, RATIO_SOURCE);
}
