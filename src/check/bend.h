/* check/bend.h - bending, alone and with a push or a pull along the stick (NDS 2018 3.3, 3.7, 3.9).
 *
 * Ratio: the largest of fb/Fb' (each axis), fc/Fc', ft/Ft' and the sums of NDS 3.9.1 (pull)
 * or 3.9.2 (push, both inequalities). Where one stress governs, demand and limit are that stress
 * and its limit (Pa); where a sum governs, the sum and 1 (QUANTITY_NUMBER). A stick past its
 * buckling stress has a finite ratio over 1. le/d over 50 fails where fc is over a quarter of Fc',
 * RB over 50 where fb1 is over a quarter of Fb1' [trade]; below that `slender` is set. A stress
 * under 1 Pa counts as none, so that dust in a solution asks for no value.
 */
#ifndef CHECK_BEND_H
#define CHECK_BEND_H

#include "check/rating.h"
#include "check/section.h"
#include "check/stability.h"
#include "lumber/lumber.h"

struct bend_input {
    const struct lumber *lumber;
    struct conditions conditions;
    struct section section;
    double N;                   /* N at the station, pull positive */
    double edgewise;            /* N-m about the strong axis (load on the narrow face) */
    double flatwise;            /* N-m about the weak axis (load on the wide face) */
    double net_area;            /* m2 left at screw holes, for the pull; 0: the whole area */
    enum load_shape shape;      /* of the edgewise load */
    double unheld;              /* m, lu of the compression edge; 0: held along */
    double effective_length[2]; /* m, le: [0] buckling along the wide face (d = width), [1] along
                                   the thickness; 0: held in that plane */
};
struct rating check_bend(const struct bend_input *input, struct working *working);

/* The same without a working for many stations of one stick: everything that does not depend on
 * the forces is made once. `input` gives it; its forces are not read. */
struct bend_limits {
    struct bend_input input;
    bool has_edgewise, has_flatwise, has_pull, has_push;
    double fb_star, fb1_limit, fb2_limit, ft_limit, fc_limit, least_stiffness; /* Pa */
    struct beam_stability beam;
    struct column_stability column;
    bool stout; /* neither too slim for a post nor for a beam */
};
struct bend_limits bend_limits_of(const struct bend_input *input);
struct rating bend_rating(const struct bend_limits *limits, double N, double edgewise,
                          double flatwise);

#endif
