/* sway/second_order.h - forces and movements with the loads acting on the frame as it has moved.
 *
 * (K + Kg(N)) u = f for one mix of load columns, again and again with the forces N along the sticks
 * (mean of both ends) of the last pass, until movements change by less than 1e-8 of the largest;
 * at most 50 passes. One piece a segment: what counts is where the ends of a stick have gone. The
 * bow of a stick between its joints is left to the 1/(1 - fc/FcE) terms of its strength check.
 * SI units, memory of the arena.
 */
#ifndef SWAY_SECOND_ORDER_H
#define SWAY_SECOND_ORDER_H

#include "solve/stations.h"
#include "sway/sway.h"

/* What all mixes of one setting share: the frame cut and numbered, its elastic stiffness. */
struct second_order_frame;
struct second_order_frame *second_order_prepare(struct arena *arena,
                                                const struct sway_setting *setting);

/* Is it that of another setting too: the same sticks left out, the same held? */
bool second_order_serves(const struct second_order_frame *frame,
                         const struct sway_setting *setting);

struct second_order_input {
    struct sway_setting setting;
    const struct response
        *response;         /* whose columns the weights belong to; only its loads are used */
    const double *weights; /* one per column */
};

struct second_order {
    bool stands; /* false: it falls over by itself; then nothing below is valid */
    int passes;
    const struct response *response;
    const double *weights;
    struct sway_setting setting;
    double *joints;               /* 3 per joint: translations, global directions */
    double (*own)[ELEMENT_DOFS];  /* per segment: movements of the stick's own ends, local axes */
    double (*ends)[ELEMENT_DOFS]; /* per segment: forces of the joints on the own ends, local axes
                                     as built: what passes from stick to joint, Kg and loads on the
                                     stick included */
    double (*axial)[2];           /* per segment: N at both ends */
};

struct second_order *second_order_solve(struct arena *arena,
                                        const struct second_order_input *input);

/* The same in two steps, for many mixes on one frame: room for the answer, whose setting is that of
 * the input, and the answer. The frame is not needed afterwards. */
struct second_order *second_order_room(struct arena *arena, const struct second_order_input *input);
void second_order_fill(struct arena *arena, const struct second_order_frame *frame,
                       struct second_order *out);

/* The segment as solve/stations.h wants it. Its end forces are turned along and across the line
 * between the moved ends, so that moments along the stick hold the force along it times the
 * movement of that line, agree with both ends, and have the shear for their slope. */
struct stick_state second_order_state(struct arena *arena, const struct second_order *solved,
                                      size_t segment);

#endif
