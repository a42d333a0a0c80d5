/* lean/lean.h - how far the joints of a frame move sideways, against what they may.
 *
 * The limit of a joint is a share of its height above the lowest support (taken as at least 12 in),
 * or a fixed length. Movements in x and y count together.
 */
#ifndef LEAN_LEAN_H
#define LEAN_LEAN_H

#include "model/model.h"

struct lean {
    int joint;       /* the worst; -1 where nothing moves */
    double movement; /* m, level */
    double limit;    /* m */
    double ratio;    /* movement / limit; NAN where it is not known */
};

/* Limit of every joint, m. */
double *lean_limits(struct arena *arena, const struct model *model);

/* The worst joint under movements of the slots (3 numbers each). */
struct lean lean_worst(const struct model *model, const double *limits, const double *slots);

#endif
