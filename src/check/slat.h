/* check/slat.h - one slat from rail to rail: a simple beam of its own.
 *
 * The worst of: bending under its own weight and its share, sag under the same with creep, bending
 * under a full watering can in the middle (ten minutes, with the slat's own weight).
 */
#ifndef CHECK_SLAT_H
#define CHECK_SLAT_H

#include "check/rating.h"
#include "check/section.h"
#include "lumber/lumber.h"

struct slat_input {
    const struct lumber *lumber;
    struct conditions conditions; /* duration of the uniform share */
    struct section section;
    bool on_edge;       /* false: lies flat */
    double span;        /* m between rails */
    double own_weight;  /* N/m */
    double standing;    /* N/m, long-standing share beside its own weight */
    double brief;       /* N/m, share that does not stand long */
    double can;         /* N, set down in the middle */
    double sag_divisor; /* limit = span / sag_divisor */
};
struct rating check_slat(const struct slat_input *input, struct working *working);

#endif
