/* check/stability.h - sideways buckling of beams (CL) and of posts (CP), NDS 2018 3.3.3 and 3.7.1.
 *
 * Lengths m, stresses Pa.
 */
#ifndef CHECK_STABILITY_H
#define CHECK_STABILITY_H

#include "working/working.h"

#include <stdbool.h>

/* How a beam is loaded, for its effective length. */
enum load_shape {
    LOAD_SHAPE_ANY,            /* anything else: the general row */
    LOAD_SHAPE_UNIFORM,        /* simple span, uniform */
    LOAD_SHAPE_MIDDLE,         /* simple span, one load in the middle, not held there */
    LOAD_SHAPE_MIDDLE_HELD,    /* the same, held there */
    LOAD_SHAPE_CANTILEVER,     /* overhang, uniform */
    LOAD_SHAPE_CANTILEVER_TIP, /* overhang, load at the tip */
    LOAD_SHAPE_COUNT
};

/* le of a beam of depth d whose compression edge is free over lu. */
double beam_effective_length(enum load_shape shape, double unheld, double depth,
                             struct working *working);

struct beam_stability {
    double slenderness; /* RB; 0 where held along or not deeper than thick */
    double critical;    /* FbE; INFINITY where it cannot buckle */
    double factor;      /* CL; 1 where it cannot buckle */
};
/* `fb_star`: Fb with every factor but CL. unheld = 0: held along. Notes lu, le, RB, FbE, CL; wants
 * b, d, Fbs and Emin' noted before. RB over 50 is the caller's to refuse. */
struct beam_stability beam_stability(enum load_shape shape, double unheld, double thickness,
                                     double depth, double fb_star, double least_stiffness,
                                     struct working *working);

struct column_stability {
    double slenderness[2]; /* le/d: [0] across the wide face (le1 / width), [1] le2 / thickness */
    double critical[2];    /* FcE1, FcE2; INFINITY where held */
    double factor;         /* CP of the worse plane; 1 where both are held */
};
/* `fc_star`: Fc with every factor but CP. le of a plane 0: held in it. Notes le1, le2, FcE1, FcE2,
 * CP; wants d, b, Fcs and Emin' noted before. */
struct column_stability column_stability(const double effective_length[2], double width,
                                         double thickness, double fc_star, double least_stiffness,
                                         struct working *working);

/* The bare curve CP(FcE, Fc*, c); CL has the same of FbE and Fb*. 0 at FcE = 0, towards 1 as it
 * grows. */
double column_curve(double critical, double star, double c);

#endif
