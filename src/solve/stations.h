/* solve/stations.h - forces and movements along a segment, for one column or a mix of columns.
 *
 * Forces: N (pull positive), Vy, Vz, T, My, Mz in local axes, acting on the face of the part
 * towards the from-end: a simple 2 m beam along +x under 100 N/m down has Vz(0) = -100, Vz(2) =
 * +100, My(1) = -50. Movements: of the axis, local axes, m. Places are metres from the segment's
 * start.
 */
#ifndef SOLVE_STATIONS_H
#define SOLVE_STATIONS_H

#include "solve/response.h"

enum { FORCE_N, FORCE_VY, FORCE_VZ, FORCE_T, FORCE_MY, FORCE_MZ, FORCE_COUNT };

struct stick_state { /* one segment under one mix of columns */
    const struct model_member *member;
    double length;
    double ends[ELEMENT_DOFS]; /* forces of the joints on the own ends */
    double own[ELEMENT_DOFS];  /* movements of the own ends */
    double joints[2][3];       /* translations of the joints */
    struct element_load *loads;
    size_t load_count;
};

/* `weights` has one factor per column of the response. */
struct stick_state stick_state(struct arena *arena, const struct response *response, size_t segment,
                               const double *weights);

/* The loads of a mix on a segment, as stick_state has them. Returns how many. */
size_t stick_loads(struct arena *arena, const struct response *response, size_t segment,
                   const double *weights, struct element_load **loads);

/* Forces at x; `after`: just behind a load that stands at x. */
void stick_forces(const struct stick_state *state, double x, bool after, double out[FORCE_COUNT]);

/* Movement of the axis at x, and dout/dx in *slopes where not NULL. */
void stick_movement(const struct stick_state *state, double x, double out[3], double *slopes);

/* How far the own end has slipped from its joint: translation, local axes. */
void stick_slip(const struct stick_state *state, int end, double out[3]);

/* Places of a segment where forces are told: its ends, eight equal parts, both sides of each point
 * load of any column (such a place comes twice, before and after). Returns how many. */
struct station {
    double x;
    bool after;
};
size_t stations_of(struct arena *arena, const struct response *response, size_t segment,
                   struct station **stations);

#endif
