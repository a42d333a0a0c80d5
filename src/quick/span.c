#include "quick/span.h"

#include "check/sag.h"
#include "check/section.h"
#include "check/strength.h"
#include "lumber/lumber.h"

#include <math.h>

const char *span_governs_name(enum span_governs governs) {
    static const char *const names[] = {
        [SPAN_BEND] = "bend", [SPAN_SAG] = "sag", [SPAN_SHEAR] = "shear"};
    return names[governs];
}

/* One stick as it lies. */
struct lying {
    struct lumber lumber;
    struct conditions conditions;
    struct section section;
    double modulus, inertia; /* m3, m4 */
};

static struct lying lay(const struct span_question *question, int size) {
    struct lying stick = {
        .lumber = lumber_from_table((struct lumber_from_table){
            .species = question->species, .grade = question->grade, .size = size}),
        .conditions = {question->wet, question->repetitive, question->duration},
    };
    double b = stick.lumber.thickness, d = stick.lumber.width;
    stick.section = section_rectangle(b, d);
    stick.modulus = question->flat ? stick.section.weak : stick.section.strong;
    stick.inertia = question->flat ? d * b * b * b / 12.0 : b * d * d * d / 12.0;
    return stick;
}

static void note_stick(const struct lying *stick, bool flat, struct working *working) {
    const char *modulus = flat ? "d * b^2 / 6" : "b * d^2 / 6";
    const char *inertia = flat ? "d * b^3 / 12" : "b * d^3 / 12";
    working_given(working, "b", "smaller side of the stick", stick->lumber.thickness,
                  QUANTITY_LENGTH);
    working_given(working, "d", "larger side of the stick", stick->lumber.width, QUANTITY_LENGTH);
    working_step(working, "A", "area", "b * d", stick->section.area, QUANTITY_AREA, "");
    working_step(working, "S", "section modulus as it lies", modulus, stick->modulus,
                 QUANTITY_MODULUS, "");
    working_step(working, "I", "moment of inertia as it lies", inertia, stick->inertia,
                 QUANTITY_INERTIA, "");
}

/* N/m of stick under both loads. */
static double note_loads(const struct span_question *question, struct working *working) {
    working_given(working, "ql", "live load", question->live, QUANTITY_LOAD);
    working_given(working, "qd", "dead load", question->dead, QUANTITY_LOAD);
    working_given(working, "s", "spacing of the sticks", question->spacing, QUANTITY_LENGTH);
    return working_step(working, "w", "load along the stick", "(ql + qd) * s",
                        (question->live + question->dead) * question->spacing, QUANTITY_LINE_LOAD,
                        "");
}

/* w L^2/8 = Fb' S. */
static bool bend_span(const struct lying *stick, bool flat, double line, struct working *working,
                      double *span) {
    double limit;
    const char *formula = flat ? "sqrt(8 * Fb2' * S / w)" : "sqrt(8 * Fbs * S / w)";
    working_heading(working, "Bending");
    strength_duration(stick->conditions.duration, working);
    if (!strength_bending(&stick->lumber, &stick->conditions, working, flat ? NULL : &limit,
                          flat ? &limit : NULL))
        return false;
    *span = working_step(working, "Lb", "span that bending allows (the pressed edge is held, CL 1)",
                         formula, sqrt(8.0 * limit * stick->modulus / line), QUANTITY_LENGTH,
                         "NDS 2018 3.3");
    return true;
}

/* 1.5 (w L/2)/A = Fv'. */
static bool shear_span(const struct lying *stick, double line, struct working *working,
                       double *span) {
    double limit;
    working_heading(working, "Shear");
    if (!strength(&stick->lumber, PROPERTY_FV, &stick->conditions, working, &limit))
        return false;
    *span = working_step(working, "Lv", "span that shear allows", "4 * Fv' * A / (3 * w)",
                         4.0 * limit * stick->section.area / (3.0 * line), QUANTITY_LENGTH,
                         "NDS 2018 3.4");
    return true;
}

/* 5 k w L^4/(384 E' I) = the limit; k the creep factor on both loads, or 1 on the live load. */
static double sag_span(const struct span_question *question, const struct lying *stick,
                       struct working *working) {
    double line = (question->live + question->dead) * question->spacing, k = 1.0;
    working_heading(working, "Sag");
    double stiffness = lumber_stiffness(&stick->lumber, question->wet, working);
    if (question->sag_live_only) {
        line = question->live * question->spacing;
        working_step(working, "wy", "load that counts for sag: live alone", "ql * s", line,
                     QUANTITY_LINE_LOAD, "");
        working_given(working, "Kcr", "creep: left out with live load alone", k, QUANTITY_NUMBER);
    } else {
        k = working_cited(working, "Kcr", "creep, on both loads", creep_factor(question->wet),
                          QUANTITY_NUMBER);
        working_step(working, "wy", "load that counts for sag: both", "w", line, QUANTITY_LINE_LOAD,
                     "");
    }
    if (line == 0.0)
        return INFINITY;
    double rigidity = 384.0 * stiffness * stick->inertia;
    if (question->sag_divisor > 0.0) {
        working_given(working, "n", "share of the span that it may sag: one in",
                      question->sag_divisor, QUANTITY_NUMBER);
        return working_step(working, "Ly", "span that sag allows",
                            "(384 * E' * I / (5 * Kcr * wy * n))^(1 / 3)",
                            cbrt(rigidity / (5.0 * k * line * question->sag_divisor)),
                            QUANTITY_LENGTH, "NDS 2018 3.5");
    }
    working_given(working, "ya", "most it may sag", question->sag_limit, QUANTITY_LENGTH);
    return working_step(working, "Ly", "span that sag allows",
                        "(384 * E' * I * ya / (5 * Kcr * wy))^(1 / 4)",
                        pow(rigidity * question->sag_limit / (5.0 * k * line), 0.25),
                        QUANTITY_LENGTH, "NDS 2018 3.5");
}

static void least(struct span_row *row, struct working *working) {
    row->span = row->bend;
    row->governs = SPAN_BEND;
    if (row->sag < row->span) {
        row->span = row->sag;
        row->governs = SPAN_SAG;
    }
    if (row->shear < row->span) {
        row->span = row->shear;
        row->governs = SPAN_SHEAR;
    }
    working_heading(working, "Together");
    working_step(working, "L", "the least of the three",
                 isinf(row->sag) ? "min(Lb, Lv)" : "min(Lb, min(Ly, Lv))", row->span,
                 QUANTITY_LENGTH, "");
}

/* False where the grade has no values at this size. */
static bool fill_row(const struct span_question *question, int size, struct span_row *row,
                     struct working *working) {
    struct lying stick = lay(question, size);
    row->size = table_size(size);
    row->flat = question->flat;
    row->note = lumber_basis_words(stick.lumber.basis);
    row->working = working;
    note_stick(&stick, question->flat, working);
    double line = note_loads(question, working);
    if (!bend_span(&stick, question->flat, line, working, &row->bend))
        return false;
    row->sag = sag_span(question, &stick, working);
    if (!shear_span(&stick, line, working, &row->shear))
        return false;
    least(row, working);
    return isfinite(row->span) && row->span > 0.0;
}

static bool sensible(const struct span_question *question) {
    double limit = question->sag_divisor > 0.0 ? question->sag_divisor : question->sag_limit;
    return question->live >= 0.0 && question->dead >= 0.0 &&
           question->live + question->dead > 0.0 && question->spacing > 0.0 && limit > 0.0 &&
           isfinite(question->live + question->dead) && isfinite(question->spacing) &&
           isfinite(limit);
}

struct span_answer span_answer(struct arena *arena, const struct span_question *question,
                               bool with_working) {
    int first = question->size >= 0 ? question->size : 0;
    int end = question->size >= 0 ? question->size + 1 : table_size_count();
    struct span_answer answer = {.rows =
                                     ARENA_ARRAY(arena, struct span_row, (size_t)(end - first))};
    if (!sensible(question))
        return answer;
    for (int size = first; size < end; size++) {
        struct working *working = NULL;
        if (with_working) {
            working = ARENA_NEW(arena, struct working);
            working->arena = arena;
        }
        if (fill_row(question, size, &answer.rows[answer.count], working))
            answer.count++;
    }
    return answer;
}
