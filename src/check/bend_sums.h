/* check/bend_sums.h - from stresses and their limits to the ratio of a stick that bends, is pushed
 * or pulled: single stresses, the sums of NDS 2018 3.9, slimness. Stresses Pa. */
#ifndef CHECK_BEND_SUMS_H
#define CHECK_BEND_SUMS_H

#include "check/rating.h"
#include "check/stability.h"

struct stresses {
    double fb1, fb2, ft, fc;                    /* on edge, flatwise, pull, push; 0: none */
    double fb_star, fb1_limit, fb2_limit;       /* Fb*, Fb1', Fb2'; set where the stress is */
    double ft_limit, fc_limit, least_stiffness; /* Ft', Fc', Emin' */
    struct beam_stability beam;
    struct column_stability column;
    bool stout; /* known not to be too slim: not looked at */
};

/* Does the slenderness of neither reach its limit? */
bool stresses_stout(const struct column_stability *column, const struct beam_stability *beam);

/* Wants the symbols of bend.c noted before. */
struct rating worst_of_stresses(const struct stresses *stress, struct working *working);

#endif
