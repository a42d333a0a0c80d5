/* sway/pieces.h - a frame cut into pieces, with unknowns of their own for what springs and releases
 * leave free at the end of a stick.
 *
 * Unknowns: the free parts of the model's slots (global directions), the sprung parts of stick ends
 * (local axes of the stick; parts that are rigidly tied are the joint's), and the nodes between the
 * pieces of a segment (local axes; global ones in a plane frame, where only what stays in the plane
 * is free). They are numbered node by node in the order in which little fills in. Turning about its
 * own axis is left out of a segment that one of its ends does not hold against it: it bears
 * nothing.
 */
#ifndef SWAY_PIECES_H
#define SWAY_PIECES_H

#include "sway/sway.h"

struct reach { /* a movement as the sum of unknowns times shares; held parts are left out */
    int count;
    int unknown[3];
    double share[3];
};

enum { PLANE_XY, PLANE_XZ, PLANE_COUNT };

struct piece {
    int segment;
    double start, length;            /* m from the segment's start */
    bool alone;                      /* the segment is not cut */
    double EA, GJ;                   /* N, N-m2 */
    double EI[PLANE_COUNT];          /* N-m2 */
    double phi[PLANE_COUNT];         /* shear terms 12 EI/(G As L2) */
    bool straight[PLANE_COUNT];      /* decking or boards keep the segment from bowing this way */
    struct reach ends[ELEMENT_DOFS]; /* movements of its two ends, local axes */
};

struct spring { /* stretch = sum of unknowns times shares; between a stick's end and its joint, or a
                   bracing bar */
    double stiffness;
    int count;
    int unknown[6];
    double share[6];
};

struct pieces {
    const struct sway_setting *setting;
    struct piece *items;
    size_t count;
    size_t *first; /* of segment s: items[first[s]] ... items[first[s + 1] - 1]; none if excluded */
    struct spring *springs;
    size_t spring_count;
    int *slot_unknown; /* 3 x slots, -1 held */
    size_t unknowns;
    const struct blocks *blocks; /* of its matrices */
    bool *turning;               /* per unknown */
};

/* `cuts`: into how many pieces each segment is cut; segments that cannot bend are not cut. */
struct pieces *pieces_cut(struct arena *arena, const struct sway_setting *setting, const int *cuts);

/* E for a stick as the setting has it, creep included. */
double pieces_stiffness(const struct sway_setting *setting, const struct model_member *member);

/* The least I that lets a stick bow (in a plane frame: within the plane), m4. */
double pieces_least_inertia(const struct model *model, const struct model_member *member);

double reach_movement(const struct reach *reach, const double *x);

#endif
