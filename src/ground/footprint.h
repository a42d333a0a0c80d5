/* ground/footprint.h - the footprint of a frame: the edges over which it can tip as one piece.
 *
 * Seen from above, the smallest outline around all supports that hold upwards (feet, and what holds
 * z both ways). The frame tips over an edge of it by turning about the line through the two
 * supports there; feet on one line also let it tip over their ends. A support that holds both ways
 * stops every turn that would move what it holds: it then cannot tip over that edge at all. SI
 * units, moments about the edge: positive overturns.
 */
#ifndef GROUND_FOOTPRINT_H
#define GROUND_FOOTPRINT_H

#include "solve/resultant.h"

enum side { SIDE_LEFT, SIDE_RIGHT, SIDE_FRONT, SIDE_BACK, SIDE_COUNT };
const char *side_name(enum side side); /* "left" ... */
enum side side_across(enum side side); /* the other side */

struct tip_edge {
    enum side side; /* to which it tips; of a slanting edge the nearer, of two left or right */
    double at[3];   /* a point of the axis */
    double axis[3]; /* unit; a right-handed turn about it tips */
    bool held;      /* what holds both ways stops it */
    bool held_down; /* so do feet with a hold-down, as long as that is strong enough */
};

struct footprint {
    const struct model *model;
    size_t feet; /* supports that rest on the ground */
    struct tip_edge *edges;
    size_t edge_count;
};

struct footprint *footprint_of(struct arena *arena, const struct model *model);

/* How fast a point rises or goes along one direction when the frame tips, m per rad. */
void edge_movement(const struct tip_edge *edge, const double at[3], double movement[3]);

/* Moment of the loads about the edge, N-m; `about` is the point that their moment was taken at. */
double edge_moment(const struct tip_edge *edge, const struct resultant *loads,
                   const double about[3]);

/* "over its front feet" */
const char *footprint_over(struct arena *arena, const struct footprint *footprint,
                           const struct tip_edge *edge);

/* m from the edge, level, to a support that tipping lifts; 0 for one on the edge. */
double edge_arm(const struct footprint *footprint, const struct tip_edge *edge, size_t support);

#endif
