/* fixing/worst_load.h - what the forces of a joint put on the worst fastener of a fixing. Where a
 * description leaves open how the fasteners stand, each load that could be worst is given.
 */
#ifndef FIXING_WORST_LOAD_H
#define FIXING_WORST_LOAD_H

#include "check/glue.h"
#include "fixing/fixing.h"

/* The load on the worst fastener of a group, from the forces of the joint on the stick's end (local
 * axes). Where more than one load could be worst, each is given: of fasteners to which the grain
 * matters, that on every one. */
enum { FIXING_LOADS = 2 * CONNECTION_MOST_FASTENERS };
struct fixing_load {
    double shear, pull;              /* N */
    double angle_ending, angle_host; /* rad, between the load sideways and the grain */
    struct {                         /* of a line of fasteners: where the shear comes from */
        double force[2], moment;     /* on the group, along the stick and across it */
        double at[2], sum_r2;        /* of this one, from the middle, m; of all, m2 */
    } line;
};
int fixing_loads(const struct fixing *fixing, int group, const double ends[6],
                 struct fixing_load loads[FIXING_LOADS]);

/* How the shear of a load comes about, for the working. Nothing where the fasteners share evenly.
 */
void fixing_note_load(const struct fixing *fixing, const struct fixing_load *load,
                      struct working *working);

/* The glued patch and the forces on it, of a glued lap. */
struct glue_input fixing_glue(const struct fixing *fixing, const double ends[6]);

/* The moment that the fastening passes on: in the plane of a lap, else about both axes. N-m. */
double fixing_moment(const struct fixing *fixing, const double ends[6]);

/* A load across the grain of both, which no other holds less against. */
struct fixing_load fixing_across(double shear, double pull);

/* Angle between a direction in the plane (along the stick, across it) and the grain of the host,
 * rad. */
double fixing_angle_to_host(const struct fixing *fixing, double along, double across);

#endif
