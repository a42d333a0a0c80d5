#include "check/rating.h"

#include <math.h>

struct rating rating_of(double demand, double limit, enum quantity quantity, const char *source,
                        const char *governs) {
    return (struct rating){.covered = true,
                           .missing = "",
                           .demand = demand,
                           .limit = limit,
                           .ratio = demand / limit,
                           .quantity = quantity,
                           .source = source,
                           .governs = governs};
}

struct rating rating_missing(const char *what, const char *source) {
    return (struct rating){.covered = false,
                           .missing = what,
                           .demand = NAN,
                           .limit = NAN,
                           .ratio = NAN,
                           .quantity = QUANTITY_NUMBER,
                           .source = source,
                           .governs = ""};
}

static const double EQUAL = 1.0 + 1e-9; /* see ratio_worse() */

double not_below_zero(double force) {
    return force < 0.0 ? 0.0 : force;
}

bool ratio_worse(double now, double so_far) {
    return !isnan(so_far) && !(now <= so_far * EQUAL);
}

/* 3 cannot be told, 2 fails, 1 is not covered, 0 passes. */
static int rank(const struct rating *rating) {
    if (!rating->covered)
        return 1;
    if (isnan(rating->ratio))
        return 3;
    return rating->ratio <= 1.0 ? 0 : 2;
}

bool rating_is_worse(const struct rating *now, const struct rating *so_far) {
    int first = rank(so_far), second = rank(now);
    return second > first || (second == first && now->ratio > so_far->ratio * EQUAL);
}

struct rating rating_worse(struct rating one, struct rating other) {
    struct rating worse = rating_is_worse(&other, &one) ? other : one;
    worse.slender = one.slender || other.slender;
    return worse;
}
