/* check/bearing.h - pressure across the grain where a stick sits on another (NDS 2018 3.10). */
#ifndef CHECK_BEARING_H
#define CHECK_BEARING_H

#include "check/rating.h"
#include "lumber/lumber.h"

struct bearing_input {
    const struct lumber *lumber; /* the stick pressed across its grain */
    bool wet;
    double force;  /* N */
    double across; /* m, contact across the grain */
    double along;  /* m, contact along the grain, lb */
    double to_end; /* m from the contact to the stick's nearer end; Cb only from 3 in on. 0: at
                      the end, or not known */
};
/* No duration factor: NDS gives none for pressure across the grain. */
struct rating check_bearing(const struct bearing_input *input, struct working *working);

#endif
