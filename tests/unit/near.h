/* near.h - comparing numbers in unit tests.
 *
 * NEAR(got, want, rel, abs) passes where got is finite and |got - want| is at most rel * |want| or
 * at most abs. A NaN or an infinity on either side fails. Both numbers are printed in full.
 */
#ifndef TESTS_UNIT_NEAR_H
#define TESTS_UNIT_NEAR_H

#include <criterion/criterion.h>

#include <math.h>
#include <stdbool.h>
#include <string.h>

static inline bool is_near(double got, double want, double rel, double abs) {
    if (!isfinite(got) || !isfinite(want))
        return false;
    double off = fabs(got - want);
    return off <= rel * fabs(want) || off <= abs;
}

#define NEAR(got, want, rel, abs)                                                                  \
    do {                                                                                           \
        double near_got = (got), near_want = (want), near_rel = (rel), near_abs = (abs);           \
        cr_assert(is_near(near_got, near_want, near_rel, near_abs),                                \
                  "%s: got %.17g, want %.17g, off by %.3g, may be off by %.3g of it or by %.3g",   \
                  #got, near_got, near_want, near_got - near_want, near_rel, near_abs);            \
    } while (0)

/* Relative only, and absolute only. */
#define NEAR_REL(got, want, rel) NEAR(got, want, rel, 0.0)
#define NEAR_ABS(got, want, abs) NEAR(got, want, 0.0, abs)

/* Two strings; NULL only equals NULL. */
#define SAME_TEXT(got, want)                                                                       \
    do {                                                                                           \
        const char *same_got = (got), *same_want = (want);                                         \
        cr_assert(same_got &&same_want ? strcmp(same_got, same_want) == 0 : same_got == same_want, \
                  "%s: got [%s], want [%s]", #got, same_got ? same_got : "NULL",                   \
                  same_want ? same_want : "NULL");                                                 \
    } while (0)

#endif
