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

/* 3 cannot be told, 2 fails, 1 is not covered, 0 passes. */
static int rank(const struct rating *rating) {
    if (!rating->covered)
        return 1;
    if (isnan(rating->ratio))
        return 3;
    return rating->ratio <= 1.0 ? 0 : 2;
}

struct rating rating_worse(struct rating one, struct rating other) {
    int first = rank(&one), second = rank(&other);
    bool slender = one.slender || other.slender;
    struct rating worse = one;
    if (second > first || (second == first && other.ratio > one.ratio))
        worse = other;
    worse.slender = slender;
    return worse;
}
