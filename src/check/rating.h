/* check/rating.h - the answer of every check: demand against limit.
 *
 * Checks are pure functions: numbers in, a rating out, and every factor noted in the working where
 * one is given. Where a value that is needed has none, the rating is not covered and says what is
 * missing. A number that is not finite going in comes out as a ratio of NAN, which passes nothing:
 * test `ratio <= 1`, never `!(ratio > 1)`.
 */
#ifndef CHECK_RATING_H
#define CHECK_RATING_H

#include "tables/tables.h"
#include "units/quantity.h"
#include "working/working.h"

#include <stdbool.h>

struct rating {
    bool covered;
    const char *missing;  /* what has no value: "bending strength Fb"; "" where covered */
    double demand, limit; /* SI, of `quantity`; a sum of shares has limit 1; NAN: not covered */
    double ratio;         /* demand / limit; NAN where not covered */
    enum quantity quantity;
    const char *source;  /* "NDS 2018 3.9.2" */
    const char *governs; /* short words: "bending with compression" */
    bool beyond;         /* not covered because a load lies past the end of what is published */
    bool slender;        /* slimmer than a post or beam may be, at a load too small to matter:
                            a caution */
};

/* What surrounds a stick. */
struct conditions {
    bool wet;               /* in service over 19 % moisture */
    bool repetitive;        /* three or more share the load; ignored for ungraded and own numbers */
    enum duration duration; /* of the shortest load in the combination */
};

struct rating rating_of(double demand, double limit, enum quantity quantity, const char *source,
                        const char *governs);
struct rating rating_missing(const char *what, const char *source);

/* Is a number worse than the worst so far? A NAN is the worst there is, and stays. Less than 1e-9
 * more counts as equal, so that of equal places the first is told on every machine. */
bool ratio_worse(double now, double so_far);

/* What of a force pulls or presses: 0 where it is below 0; a NAN stays one, unlike with fmax(). */
double not_below_zero(double force);

/* ratio_worse() of two ratings, in the order of rating_worse(). */
bool rating_is_worse(const struct rating *now, const struct rating *so_far);

/* The worse of two: what fails before what is not covered before what passes, then the larger
 * ratio; NAN is the worst. `slender` of either is kept. */
struct rating rating_worse(struct rating one, struct rating other);

#endif
