/* fixing/fixing.h - how the end of a stick is fixed to its host: which fasteners, through what into
 * what, and what the forces of the joint put on the worst of them.
 *
 * Which leg of a bracket lies where, or from which side a lap was screwed, is not in a description:
 * the thinner stick has the heads, and of two ways to lie the worse counts.
 */
#ifndef FIXING_FIXING_H
#define FIXING_FIXING_H

#include "check/glue.h"
#include "check/screw.h"
#include "model/fastening.h"

enum fixing_part { PART_ENDING, PART_HOST, PART_PLATE }; /* what a layer is of */

struct fixing_group {  /* fasteners that share one load */
    const char *words; /* "in the post": which of the groups; "" where there is one */
    enum fixing_part side_part, main_part;
    struct dowel_layer side, main;
};

struct fixing {
    const struct model *model;
    size_t member;
    int end, joint;
    size_t host;
    const struct connection *connection;
    struct fastening fastening;
    struct lap_plane plane;
    bool own_material;   /* no specific gravity: nothing is known of its fasteners */
    const char *missing; /* why nothing can be said of the fasteners; "" where it can */
    struct dowel dowel;
    int count; /* in each group */
    struct fixing_group groups[2];
    int group_count;
    double line;      /* m between the outer fasteners of a group; 0: on one spot */
    double slopes[2]; /* directions in which the line may lie: from local x to the plane's other
                         axis */
    bool by_angle;    /* 1/4 in and thicker: the angle to the grain counts */
};

/* False where the stick is host, or its connection says nothing of what holds it (pinned, rigid,
 * springs). A glued lap has no groups. */
bool fixing_of(const struct model *model, size_t member, int end, struct fixing *fixing);

/* The same of a stick that is only thought of: model, member, host and joint are left empty. */
bool fixing_between(const struct fastening *fastening, struct fixing *fixing);

/* The force along the stick that its screws hold sideways, N; NAN where nothing is published. */
double fixing_holds_along(const struct fixing *fixing, enum duration duration);

/* The load on the worst fastener of a group, from the forces of the joint on the stick's end (local
 * axes). Where more than one load could be worst, each is given. */
enum { FIXING_LOADS = 4 };
struct fixing_load {
    double shear, pull;              /* N */
    double angle_ending, angle_host; /* rad, between the load sideways and the grain */
};
int fixing_loads(const struct fixing *fixing, int group, const double ends[6],
                 struct fixing_load loads[FIXING_LOADS]);

/* "rail-1 on post-fl at fl1", and the same as part of an id: "fl1/rail-1". */
const char *fixing_place(struct arena *arena, const struct fixing *fixing);
const char *fixing_where(struct arena *arena, const struct fixing *fixing);

/* The glued patch and the forces on it, of a glued lap. */
struct glue_input fixing_glue(const struct fixing *fixing, const double ends[6]);

/* The moment that the fastening passes on: in the plane of a lap, else about both axes. N-m. */
double fixing_moment(const struct fixing *fixing, const double ends[6]);

/* The input of check_screw for a load of a group. */
struct screw_input fixing_input(const struct fixing *fixing, int group,
                                const struct fixing_load *load, enum duration duration);

#endif
