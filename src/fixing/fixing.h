/* fixing/fixing.h - how the end of a stick is fixed to its host: which fasteners, through what into
 * what. fixing/worst_load.h says what the forces of the joint put on them.
 *
 * Which leg of a bracket lies where, or from which side a lap was screwed, is not in a description:
 * the thinner stick has the heads, and of two ways to lie the worse counts.
 */
#ifndef FIXING_FIXING_H
#define FIXING_FIXING_H

#include "check/dowel.h"
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
    const char *remedy;  /* and what to do then */
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

/* "rail-1 on post-fl at fl1", and the same as part of an id: "fl1/rail-1". */
const char *fixing_place(struct arena *arena, const struct fixing *fixing);
const char *fixing_where(struct arena *arena, const struct fixing *fixing);

#endif
