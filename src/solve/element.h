/* solve/element.h - one segment between two joints: stiffness, springs at its ends, loads on it.
 *
 * Twelve unknowns in local axes, end by end: u v w about-x about-y about-z (m, rad).
 * Euler-Bernoulli, with Timoshenko terms where a shear area is given. Springs between the ends and
 * the joints are condensed out exactly, stiffness and fixed-end forces both:
 *
 *   own ends      x = T u + x0,  x0 of the loads
 *   joint forces  K u + T' f,    K = T' k T + (I - T)' S (I - T)
 *
 * with u the joints' movements in local axes, k and f the element's own stiffness and fixed-end
 * forces, S the springs. Forces are those of the joint on the stick.
 */
#ifndef SOLVE_ELEMENT_H
#define SOLVE_ELEMENT_H

#include "model/model.h"

enum { ELEMENT_DOFS = 12 };

struct element {
    double length;           /* m */
    double EA, EIy, EIz, GJ; /* N, N-m2 */
    double phi_y, phi_z;     /* shear terms 12 EIz/(G Ay L2) (bending in xy), 12 EIy/(G Az L2) */
    double axes[3][3];       /* rows: local axes */
    double k[ELEMENT_DOFS][ELEMENT_DOFS]; /* own stiffness, local */
    bool sprung;                          /* false: T is the unit matrix */
    int sprung_count;                     /* ends with a spring or a release */
    int sprung_dofs[ELEMENT_DOFS];
    double T[ELEMENT_DOFS][ELEMENT_DOFS];
    double flexibility[ELEMENT_DOFS][ELEMENT_DOFS]; /* of the sprung ends: x0 = -flexibility f */
    double S[ELEMENT_DOFS];                         /* finite springs; 0 for the rigidly tied */
};

struct element element_of(const struct model *model, const struct segment *segment,
                          enum stiffness stiffness);

/* Add the own stiffness of bending in one plane: transverse unknowns dof[0], dof[2] and turns
 * dof[1], dof[3]. `sign` is +1 in xy (v, about z) and -1 in xz (w, about y), where a turn about +y
 * slopes w downwards. */
void element_bending(double (*k)[ELEMENT_DOFS], const int dof[4], double EI, double phi, double L,
                     double sign);

/* K in global directions, 12 x 12, joint by joint. */
void element_global_stiffness(const struct element *element, double K[ELEMENT_DOFS][ELEMENT_DOFS]);

/* A load on the stick between two of its places: `force` per metre in local axes from a to b, or,
 * where a equals b, a force at a. */
struct element_load {
    double a, b;     /* m from the start of the segment */
    double force[3]; /* N/m, or N */
};

/* Add the fixed-end forces of a load (forces of the joint on the stick, local) to f. */
void element_fixed_end(const struct element *element, const struct element_load *load,
                       double f[ELEMENT_DOFS]);

/* Joint forces of own fixed-end forces f: T' f. */
void element_to_joints(const struct element *element, const double f[ELEMENT_DOFS],
                       double out[ELEMENT_DOFS]);

/* Own end movements from the joints' (local) and the fixed-end forces of the loads. */
void element_own_ends(const struct element *element, const double u[ELEMENT_DOFS],
                      const double f[ELEMENT_DOFS], double x[ELEMENT_DOFS]);

/* Turn a vector of four triples (joint by joint) from global to local axes and back. */
void element_to_local(const struct element *element, const double global[ELEMENT_DOFS],
                      double local[ELEMENT_DOFS]);
void element_to_global(const struct element *element, const double local[ELEMENT_DOFS],
                       double global[ELEMENT_DOFS]);

#endif
