/* check/glue.h - shear in a glue line between two long-grain faces, dry. No standard gives a design
 * value for glue spread at home: the limit is practice [trade], and none where it gets wet.
 */
#ifndef CHECK_GLUE_H
#define CHECK_GLUE_H

#include "check/rating.h"

struct glue_input {
    double along, across; /* m, sides of the glued patch */
    double force[2];      /* N, along and across */
    double moment;        /* N-m about the patch's normal */
    double pull;          /* N, across the glue line */
    bool wet;
};

/* The corner of the patch with most shear, the patch turning as one about its middle. */
struct rating check_glue(const struct glue_input *input, struct working *working);

/* The largest moment that it carries alone, N-m. */
double glue_moment(const struct glue_input *input);

#endif
