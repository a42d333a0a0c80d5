/* check/dowel_parts.h - the parts that dowel_values() puts together. For src/check/dowel*.c only.
 *
 * Every part notes its steps in joint->working and fills its fields of the values.
 */
#ifndef CHECK_DOWEL_PARTS_H
#define CHECK_DOWEL_PARTS_H

#include "check/dowel.h"

struct dowel_joint {
    const struct dowel *dowel;
    const struct dowel_layer *side, *main;
    const struct dowel_service *service;
    struct working *working;
};

/* How it lies in the two members, and how hard they press on it. */
struct dowel_bearing {
    double tip_in;      /* how much of the point lies in the main member, m */
    double side, main;  /* ls, lm, m */
    double Fes, Fem;    /* Pa */
    double grain_angle; /* the larger, rad, 0 to pi/2 */
    bool large;         /* from 1/4 in on: the grain counts */
};

/* Depth (penetration ... out_by of `out`) and bearing. */
struct dowel_bearing dowel_bearing(const struct dowel_joint *joint, struct dowel_values *out);

/* modes, governs, lateral_reference. */
void dowel_yield(const struct dowel_joint *joint, const struct dowel_bearing *bearing,
                 struct dowel_values *out);

/* lateral, lateral_factor, lateral_missing, of lateral_reference. */
void dowel_lateral(const struct dowel_joint *joint, struct dowel_values *out);

/* Everything about withdrawal; tip_in as in the bearing. */
void dowel_withdrawal(const struct dowel_joint *joint, double tip_in, struct dowel_values *out);

/* pull_through, pull_factor, pull_missing. */
void dowel_pull_through(const struct dowel_joint *joint, struct dowel_values *out);

/* ---- adjustment factors; each notes what it gives ---- */

double dowel_duration_factor(const struct dowel_joint *joint); /* CD */
double dowel_heat_factor(const struct dowel_joint *joint);     /* Ct, always 1 */

/* The factor of a row of fastener-factors where it applies, 1 with `otherwise` in words where not.
 */
double dowel_factor(const struct dowel_joint *joint, const char *symbol, bool applies,
                    const char *row, const char *words, const char *otherwise);

/* True where the specific gravity is within the published values. */
bool dowel_gravity_known(double gravity);

/* The specific gravity, noted with its source, or as the user's own number. */
void dowel_note_gravity(struct working *working, const char *symbol, const char *words,
                        const struct cited *gravity);

#endif
