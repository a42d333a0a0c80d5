/* check/sag.h - sag of a rail with creep (NDS 2018 3.5.2): Kcr x long-standing part + the rest.
 *
 * Lengths m. Kcr 1.5 dry, 2.0 wet. The absolute value counts, upwards as well as downwards.
 */
#ifndef CHECK_SAG_H
#define CHECK_SAG_H

#include "check/rating.h"
#include "lumber/lumber.h"

struct sag_input {
    const struct lumber *lumber; /* for the working: E and its factors */
    bool wet;
    double standing; /* m, at once, under what stands for long */
    double brief;    /* m, under the rest */
    double span;     /* m; read where divisor is positive */
    /* formulas for the working over symbols noted before it and E'; NULL: from the solution */
    const char *standing_formula, *brief_formula;
    double divisor; /* limit = span / divisor; 0: `limit` is used */
    double limit;   /* m */
};
struct rating check_sag(const struct sag_input *input, struct working *working);

/* Kcr. */
struct cited creep_factor(bool wet);

#endif
