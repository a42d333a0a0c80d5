/* solving.h - order, factor and ten load cases of a frame's equations, against CHOLMOD. */
#ifndef TESTS_BENCH_SOLVING_H
#define TESTS_BENCH_SOLVING_H

#include "model/model.h"

struct solving {
    size_t unknowns;
    double ours, gsl, theirs; /* s, medians; gsl: the same with GSL's band (NAN: not asked for) */
    double memory;            /* of the factor: ours / theirs, bytes */
    double apart;             /* largest difference of the answers, over the largest of them */
};

/* Both get the same matrix and the same ten right-hand sides. CHOLMOD gets it as the joints stand in
 * the file, with its own defaults. */
struct solving solving(struct arena *arena, const struct model *model, bool with_gsl);

#endif
