/* second_solver.h - a second solver, for the tests: the frame page read anew, dense matrices.
 *
 * Shares nothing with src/model, src/loads or src/solve. Every stick end that is not rigidly tied
 * keeps its own unknowns (nothing is condensed), stiffnesses come from flexibilities of a
 * cantilever, and the equations are solved by a pivoted dense Cholesky factorization. SI units.
 */
#ifndef TESTS_UNIT_SECOND_SOLVER_H
#define TESTS_UNIT_SECOND_SOLVER_H

#include "base/arena.h"
#include "frame/frame.h"

#include <stdbool.h>
#include <stddef.h>

enum { SECOND_LOW, SECOND_MIDDLE, SECOND_HIGH };

struct second_dof { /* one own movement of a segment's end: a sum of unknowns */
    int count;
    int unknowns[3];
    double factors[3];
};

struct second_segment {
    int member, joints[2];
    double start, length;
    bool on_joint[2]; /* moments of that end go to the joint's turning */
    struct second_dof dofs[12];
    double k[12][12]; /* own stiffness, local */
};

struct second_stick {
    double axes[3][3], length, weight; /* N/m */
    double A, Iy, Iz, J, Ay, Az, E, G, size_y, size_z, slip_density;
    size_t first, count; /* segments */
};

struct second {
    struct arena *arena;
    const struct frame *frame;
    int range;
    struct second_stick *sticks;
    struct second_segment *segments;
    size_t segment_count;
    int *host;
    bool *hinge;
    int (*move)[3], (*turn)[3]; /* unknowns per joint, -1 held (or a hinge) */
    size_t count;               /* unknowns */
    double *K;                  /* count x count */
    double *scale;
    double *factor; /* of the scaled, pivoted matrix */
    int *pivots;    /* from 1 */
    size_t rank;
    size_t free_count; /* movements that strain nothing */
    double **free;     /* each: count */
    bool folds;        /* one of them moves a joint */
    struct {
        int unknown;
        struct second_dof dof;
        double k;
    } * springs;
    size_t spring_count;
};

/* NULL is never returned; `folds` tells of a frame that is loose. */
struct second *second_build(struct arena *arena, const struct frame *frame, int range);

struct second_answer {
    bool driven; /* the load works on a movement that strains nothing */
    double (*joints)[6];
    double (*reactions)[6]; /* per support */
    double (*ends)[12];     /* per segment: forces of the joint on the own ends, local */
    double off;             /* what the refinement still changed, relative */
};

struct second_answer second_solve(const struct second *second, int load_case);

/* N Vy Vz T My Mz at x from the segment's start. */
void second_forces(const struct second *second, const struct second_answer *answer, int load_case,
                   size_t segment, double x, bool after, double out[6]);

/* Turnings of the joints (3 each) may differ by spins, which the frame page leaves open: takes the
 * part out that is a spin. */
void second_leave_out_spins(const struct second *second, double *turnings);

#endif
