/* quick/span.h - how far a stick spans: the quick question without a frame.
 *
 * A simple span between bearing centres under a uniform load, compression edge held (CL = 1), shear
 * at the full end reaction. SI: m, Pa; spans are m. Bending NDS 2018 3.3, shear 3.4, sag 3.5.
 */
#ifndef QUICK_SPAN_H
#define QUICK_SPAN_H

#include "base/arena.h"
#include "tables/tables.h"
#include "working/working.h"

#include <stdbool.h>
#include <stddef.h>

struct span_question {
    int size;           /* table_size index; -1: a row for each size of the table */
    int species, grade; /* indices */
    bool flat;          /* lies on its wide face; else on edge */
    double live, dead;  /* Pa */
    double spacing;     /* m */
    double sag_divisor; /* limit = span / sag_divisor; 0: `sag_limit` */
    double sag_limit;   /* m */
    bool sag_live_only; /* live load alone, no creep, as building-code span tables do */
    bool repetitive, wet;
    enum duration duration;
};

/* ORDER SPAN GOVERNS: ties go to the first. */
enum span_governs { SPAN_BEND, SPAN_SAG, SPAN_SHEAR };
const char *span_governs_name(enum span_governs governs); /* "bend" "sag" "shear" */

struct span_row {
    const struct dressed_size *size;
    bool flat;
    double span; /* m, the least of the three */
    enum span_governs governs;
    double bend, sag, shear; /* m; INFINITY where that one sets no limit (no load) */
    const char *note;        /* "" or in words how the stick was taken (ungraded, plain board) */
    struct working *working; /* NULL unless asked for */
};
struct span_answer {
    struct span_row *rows;
    size_t count; /* 0: the grade has no values at the size asked for, or at any */
};

/* Rows in the order of the size table; sizes without values for this grade are left out. A question
 * with a number that is not finite, or not positive where it must be (spacing, live + dead, the
 * limit), gives no rows. */
struct span_answer span_answer(struct arena *arena, const struct span_question *question,
                               bool with_working);

#endif
