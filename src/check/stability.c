#include "check/stability.h"

#include "tables/tables.h"

#include <math.h>

/* Rows of the table "beam-lengths" (NDS 2018 Table 3.3.3): le = short x lu below lu/d = 7, else
 * long x lu + 3 d; the general row turns to far x lu above lu/d = 14.3. */
struct length_rows {
    const char *short_row, *long_row, *far_row; /* NULL: the same as before it */
    bool adds_depths;
};
static const struct length_rows LENGTH_ROWS[LOAD_SHAPE_COUNT] = {
    [LOAD_SHAPE_ANY] = {"other.short", "other.middle", "other.long", true},
    [LOAD_SHAPE_UNIFORM] = {"uniform.short", "uniform.long", NULL, true},
    [LOAD_SHAPE_MIDDLE] = {"middle-load.short", "middle-load.long", NULL, true},
    [LOAD_SHAPE_MIDDLE_HELD] = {"middle-load-braced", NULL, NULL, false},
    [LOAD_SHAPE_CANTILEVER] = {"cantilever-uniform.short", "cantilever-uniform.long", NULL, true},
    [LOAD_SHAPE_CANTILEVER_TIP] = {"cantilever-tip.short", "cantilever-tip.long", NULL, true},
};
#define LENGTHS_SOURCE "NDS 2018 Table 3.3.3"
#define BEAM_SOURCE "NDS 2018 3.3.3"
#define COLUMN_SOURCE "NDS 2018 3.7.1"

/* A row that is not there has no value, and NAN passes nothing. */
static struct cited length_row(const char *row) {
    struct cited cited = {NAN, LENGTHS_SOURCE, MARK_MEMORY};
    table_value("beam-lengths", row, &cited);
    return cited;
}

double beam_effective_length(enum load_shape shape, double unheld, double depth,
                             struct working *working) {
    const struct length_rows *rows = &LENGTH_ROWS[shape];
    const char *row = rows->short_row;
    bool adds = false;
    double slimness = unheld / depth;
    if (rows->far_row && slimness > length_row("other.long.from").value) {
        row = rows->far_row;
    } else if (rows->long_row && !(slimness < length_row("long.from").value)) {
        row = rows->long_row;
        adds = rows->adds_depths;
    }
    double times = working_cited(working, "k1", "length factor for how it is loaded",
                                 length_row(row), QUANTITY_NUMBER);
    double depths = 0.0;
    if (adds)
        depths = working_cited(working, "k2", "depths added to it", length_row("long.depths"),
                               QUANTITY_NUMBER);
    return working_step(working, "le", "length that counts for turning over sideways",
                        adds ? "k1 * lu + k2 * d" : "k1 * lu", times * unheld + depths * depth,
                        QUANTITY_LENGTH, LENGTHS_SOURCE);
}

/* (1 + a)/(2 c) - sqrt(((1 + a)/(2 c))^2 - a/c), without the loss of digits of the difference. */
static double curve(double a, double c) {
    if (isinf(a))
        return 1.0;
    double half = (1.0 + a) / (2.0 * c), under = half * half - a / c;
    return (a / c) / (half + sqrt(under < 0.0 ? 0.0 : under));
}

double column_curve(double critical, double star, double c) {
    return curve(critical / star, c);
}

struct beam_stability beam_stability(enum load_shape shape, double unheld, double thickness,
                                     double depth, double fb_star, double least_stiffness,
                                     struct working *working) {
    struct beam_stability beam = {0.0, INFINITY, 1.0};
    if (unheld == 0.0 || depth <= thickness) {
        working_given(working, "CL",
                      unheld == 0.0 ? "turning over sideways: held along"
                                    : "turning over sideways: not deeper than thick",
                      1.0, QUANTITY_NUMBER);
        return beam;
    }
    working_given(working, "lu", "length of the pressed edge that nothing holds", unheld,
                  QUANTITY_LENGTH);
    double le = beam_effective_length(shape, unheld, depth, working);
    beam.slenderness =
        working_step(working, "RB", "slimness of the beam", "sqrt(le * d / b^2)",
                     sqrt(le * depth / (thickness * thickness)), QUANTITY_NUMBER, BEAM_SOURCE);
    double euler = working_cited(working, "kb", "constant of the beam formula",
                                 table_constant("euler-beam"), QUANTITY_NUMBER);
    beam.critical =
        working_step(working, "FbE", "stress at which it turns over", "kb * Emin' / RB^2",
                     euler * least_stiffness / (beam.slenderness * beam.slenderness),
                     QUANTITY_STRESS, BEAM_SOURCE);
    struct cited c = table_constant("beam-c");
    working_step(working, "ab", "that, as a share of Fbs", "FbE / Fbs", beam.critical / fb_star,
                 QUANTITY_NUMBER, BEAM_SOURCE);
    working_cited(working, "cb", "constant of the curve", c, QUANTITY_NUMBER);
    beam.factor =
        working_step(working, "CL", "turning over sideways",
                     "(1 + ab) / (2 * cb) - sqrt(((1 + ab) / (2 * cb))^2 - ab / cb)",
                     curve(beam.critical / fb_star, c.value), QUANTITY_NUMBER, BEAM_SOURCE);
    return beam;
}

/* The symbols of the two planes. */
struct plane_names {
    const char *length, *words, *held, *slenderness, *slenderness_formula, *critical, *formula;
};
static const struct plane_names PLANES[2] = {
    {"le1", "length free to buckle along the wide face", "buckling along the wide face: held", "s1",
     "le1 / dc", "FcE1", "kc * Emin' / s1^2"},
    {"le2", "length free to buckle along the thickness", "buckling along the thickness: held", "s2",
     "le2 / bc", "FcE2", "kc * Emin' / s2^2"},
};

static void buckling_plane(struct column_stability *column, int plane, double length, double side,
                           double stiffness, double euler, struct working *working) {
    const struct plane_names *names = &PLANES[plane];
    column->slenderness[plane] = 0.0;
    column->critical[plane] = INFINITY;
    if (length == 0.0) {
        working_given(working, names->length, names->held, 0.0, QUANTITY_LENGTH);
        return;
    }
    working_given(working, names->length, names->words, length, QUANTITY_LENGTH);
    double slenderness =
        working_step(working, names->slenderness, "slimness in that plane",
                     names->slenderness_formula, length / side, QUANTITY_NUMBER, COLUMN_SOURCE);
    column->slenderness[plane] = slenderness;
    column->critical[plane] = working_step(
        working, names->critical, "stress at which it buckles in that plane", names->formula,
        euler * stiffness / (slenderness * slenderness), QUANTITY_STRESS, COLUMN_SOURCE);
}

struct column_stability column_stability(const double effective_length[2], double width,
                                         double thickness, double fc_star, double least_stiffness,
                                         struct working *working) {
    struct column_stability column;
    working_given(working, "dc", "side along the wide face", width, QUANTITY_LENGTH);
    working_given(working, "bc", "side along the thickness", thickness, QUANTITY_LENGTH);
    double euler = working_cited(working, "kc", "constant of the buckling formula",
                                 table_constant("euler-column"), QUANTITY_NUMBER);
    buckling_plane(&column, 0, effective_length[0], width, least_stiffness, euler, working);
    buckling_plane(&column, 1, effective_length[1], thickness, least_stiffness, euler, working);
    double first = column.critical[0], second = column.critical[1];
    if (isinf(first) && isinf(second)) {
        column.factor =
            working_given(working, "CP", "buckling: held in both planes", 1.0, QUANTITY_NUMBER);
        return column;
    }
    /* NAN in either plane stays NAN */
    double critical = first <= second ? first : isnan(first) ? first : second;
    struct cited c = table_constant("column-c");
    working_step(working, "ac", "the lower buckling stress, as a share of Fcs",
                 isinf(first)    ? "FcE2 / Fcs"
                 : isinf(second) ? "FcE1 / Fcs"
                                 : "min(FcE1, FcE2) / Fcs",
                 critical / fc_star, QUANTITY_NUMBER, COLUMN_SOURCE);
    working_cited(working, "c", "constant for sawn lumber", c, QUANTITY_NUMBER);
    column.factor = working_step(
        working, "CP", "buckling", "(1 + ac) / (2 * c) - sqrt(((1 + ac) / (2 * c))^2 - ac / c)",
        column_curve(critical, fc_star, c.value), QUANTITY_NUMBER, COLUMN_SOURCE);
    return column;
}
