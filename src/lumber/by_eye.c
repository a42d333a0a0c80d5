#include "lumber/by_eye.h"

#include <math.h>
#include <stdio.h>

#define RATIO_SOURCE "ASTM D245, strength ratio of the knots and grain you measured"

static struct cited row(const char *name) {
    struct cited cited = {.value = NAN, .source = ""};
    table_value("strength-ratios", name, &cited);
    return cited;
}

static double positive(double ratio) {
    return ratio > 0.0 ? ratio : 0.0;
}

/* The numbers of D245's formulas for knots: m, and the share at which they change. */
struct knot_rule {
    double less, more, more_low, turn;
};
static struct knot_rule knot_rule(void) {
    return (struct knot_rule){row("knot.less").value, row("knot.more").value,
                              row("knot.more-low").value, row("knot.turn").value};
}

static double edge_of_wide_face(const struct knot_rule *rule, double knot, double face) {
    double left = positive(1.0 - (knot - rule->less) / (face + rule->more));
    if (left * left >= rule->turn)
        return left * left;
    left = positive(1.0 - knot / (face + rule->more_low));
    return left * left;
}

static double narrow_face(const struct knot_rule *rule, double knot, double face) {
    double left = 1.0 - (knot - rule->less) / (face + rule->more);
    return left >= rule->turn ? left : positive(1.0 - (knot - rule->less) / face);
}

double knot_ratio(double knot, double thickness, double width) {
    struct knot_rule rule = knot_rule();
    return fmin(1.0,
                fmin(edge_of_wide_face(&rule, knot, width), narrow_face(&rule, knot, thickness)));
}

/* The row of the next steeper slope of the table. */
static bool grain_row(double slope, bool push, struct cited *cited) {
    static const int runs[] = {20, 15, 12, 10, 8, 6};
    for (size_t i = 0; i < sizeof runs / sizeof *runs; i++) {
        char name[32];
        if (!(slope * runs[i] <= 1.0 + 1e-9))
            continue;
        snprintf(name, sizeof name, "%s.%d", push ? "compression" : "bending", runs[i]);
        return table_value("strength-ratios", name, cited);
    }
    return false;
}

bool grain_ratio(double slope, bool push, double *ratio) {
    struct cited cited;
    if (!grain_row(slope, push, &cited))
        return false;
    *ratio = cited.value;
    return true;
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
    struct lumber_eye eye = {.knot = knot, .slope = slope};
    struct knot_rule rule = knot_rule();
    bool ungraded = lumber->basis == LUMBER_UNGRADED || lumber->basis == LUMBER_PLAIN_BOARD;
    if (!ungraded || !(knot >= 0.0) || !(slope >= 0.0))
        return;
    if (!grain_row(slope, false, &eye.grain[0]) || !grain_row(slope, true, &eye.grain[1])) {
        lumber->worse_than_taken = true;
        return;
    }
    eye.wide = edge_of_wide_face(&rule, knot, lumber->width);
    eye.narrow = narrow_face(&rule, knot, lumber->thickness);
    double knots = knot_ratio(knot, lumber->thickness, lumber->width);
    double along = fmin(eye.grain[0].value, knots), pushed = fmin(eye.grain[1].value, knots);
    lumber->worse_than_taken = falls_short(lumber, along);
    bool bends = raise_value(lumber, PROPERTY_FB, along);
    bool pulls = raise_value(lumber, PROPERTY_FT, along);
    bool pushes = raise_value(lumber, PROPERTY_FC, pushed);
    if (!bends && !pulls && !pushes)
        return;
    lumber->basis = LUMBER_BY_EYE;
    lumber->eye = eye;
}

/* ---- the working ---- */

static void note_knot(const struct lumber *lumber, struct working *working) {
    const struct lumber_eye *eye = &lumber->eye;
    double turn = knot_rule().turn;
    bool wide = eye->wide >= turn, narrow = eye->narrow >= turn;
    working_given(working, "k", "largest knot, as you measured it", eye->knot, QUANTITY_LENGTH);
    working_given(working, "wf", "wide face of the stick", lumber->width, QUANTITY_LENGTH);
    working_given(working, "nf", "narrow face of the stick", lumber->thickness, QUANTITY_LENGTH);
    working_cited(working, "k1", "taken off the knot", row("knot.less"), QUANTITY_LENGTH);
    if (wide || narrow)
        working_cited(working, "k2", "put to the face", row("knot.more"), QUANTITY_LENGTH);
    if (!wide)
        working_cited(working, "k3", "put to the wide face where the knot is large",
                      row("knot.more-low"), QUANTITY_LENGTH);
    working_step(working, "qw", "share that it leaves on the edge of the wide face",
                 wide ? "(1 - (k - k1) / (wf + k2))^2" : "(1 - k / (wf + k3))^2", eye->wide,
                 QUANTITY_NUMBER, RATIO_SOURCE);
    working_step(working, "qn", "share that it leaves on the narrow face",
                 narrow ? "1 - (k - k1) / (nf + k2)" : "1 - (k - k1) / nf", eye->narrow,
                 QUANTITY_NUMBER, RATIO_SOURCE);
}

/* What knots and grain leave, as q. */
static void note_left(const struct lumber *lumber, const struct lumber_value *value, bool push,
                      struct working *working) {
    const struct lumber_eye *eye = &lumber->eye;
    note_knot(lumber, working);
    working_given(working, "sg", "slope of grain, as you measured it", eye->slope, QUANTITY_NUMBER);
    working_cited(working, "qg",
                  push ? "share that the grain leaves under push"
                       : "share that the grain leaves in bending and pull",
                  eye->grain[push], QUANTITY_NUMBER);
    working_step(working, "q", "share of clear-wood strength that knots and grain leave",
                 "min(min(1, qg), min(qw, qn))", value->left.value, QUANTITY_NUMBER, RATIO_SOURCE);
}

double lumber_reference(const struct lumber *lumber, enum property property,
                        struct working *working) {
    const struct lumber_value *value = &lumber->values[property];
    if (!value->has)
        return NAN;
    if (!value->by_eye)
        return working_cited(working, property_symbol(property), property_words(property),
                             value->cited, QUANTITY_STRESS);
    note_left(lumber, value, property == PROPERTY_FC, working);
    working_cited(working, "F2", "the same of No.2 of this species", value->no_2, QUANTITY_STRESS);
    working_cited(working, "q2", "share that No.2 stands for", row("grade.no-2"), QUANTITY_NUMBER);
    return working_step(working, property_symbol(property), property_words(property),
                        "F2 * min(1, q / q2)", value->cited.value, QUANTITY_STRESS, RATIO_SOURCE);
}
