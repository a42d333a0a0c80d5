/* model/model.h - a frame as members, segments and unknowns, ready to be solved.
 *
 * A member is a straight stick with its section, material and local axes. It is cut into segments
 * at every joint on it. What moves is kept in slots of three: the translation of a joint, the
 * turning of a joint (with its host), and one more turning for each stick that runs through a joint
 * without being its host. A joint that is a plain hinge has no turning slot. SI units; local axes
 * and signs as in the frame format.
 */
#ifndef MODEL_MODEL_H
#define MODEL_MODEL_H

#include "frame/along.h"
#include "frame/frame.h"
#include "lumber/lumber.h"

#include <stdbool.h>
#include <stddef.h>

/* How stiff the fastenings are taken: estimates have a range. */
enum stiffness { STIFFNESS_LOW, STIFFNESS_MIDDLE, STIFFNESS_HIGH, STIFFNESS_COUNT };

/* Six springs between the end of a stick and its joint, in the stick's local axes: along x y z
 * (N/m), about x y z (N-m/rad). INFINITY is rigidly tied, 0 is free. */
struct end_springs {
    double k[6];
};

struct member_end {
    int joint;
    bool host;      /* the stick is the joint's host here: rigidly tied */
    bool released;  /* host at a plain hinge: turning free */
    int connection; /* frame connection in force; -1 for a host */
    struct end_springs springs[STIFFNESS_COUNT];
};

struct model_member {
    double from[3], to[3], length;
    double axes[3][3];           /* rows: local x, y, z in global directions */
    double A, Iy, Iz, J, Ay, Az; /* m2, m4; Ay = Az = 0: no shear flexibility */
    double size_y, size_z;       /* m, outside sizes along local y and z; of equal inertia where
                                    only a section is given */
    double E, G;                 /* Pa, as used in every case (wet service included) */
    double weight;               /* N/m */
    struct lumber lumber;
    struct member_end ends[2];
    size_t first_segment, segment_count;
};

struct segment {
    int member;
    int joints[2];
    double start, length; /* m along the member */
    int move[2];          /* translation slot at either end */
    int turn[2];          /* turning slot at either end; -1: none (the end is released) */
    int sprung[2];        /* 1 where the member's own end springs sit at that end of the segment */
};

struct slot {
    int joint;
    int member; /* the through-running stick whose own turning it is; -1: the joint's */
    bool turning;
    bool held[3]; /* per global direction */
};

struct model {
    const struct frame *frame;
    bool wet;                     /* wet service factors in force */
    struct model_member *members; /* as in the frame */
    size_t member_count;
    struct segment *segments; /* member by member, from end to end */
    size_t segment_count;
    struct slot *slots;
    size_t slot_count;
    int *move_slot, *turn_slot; /* per joint; turn_slot -1 at a plain hinge */
    int *host;                  /* per joint: member */
    struct along along;
    bool has_screws;  /* some stiffness is an estimate with a range */
    double size;      /* m: diagonal of the box around all joints */
    double middle[3]; /* of that box */
    struct {
        const char **items;
        size_t count, capacity;
    } cautions;
};

/* Outside size of a stick along a direction (a unit vector), m. */
double member_extent(const struct model_member *member, const double direction[3]);

/* Steeper than 45 degrees. */
bool member_steep(const struct model_member *member);

/* Build it. `problems` receives what only shows here (none in a frame that the reader accepted
 * but for sticks without a value of E); returns NULL then. */
struct model *model_build(struct arena *arena, const struct frame *frame,
                          struct problems *problems);

#endif
