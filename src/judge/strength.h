/* judge/strength.h - what the steps of bend and shear share: one stick in hand and where it is
 * worst.
 */
#ifndef JUDGE_STRENGTH_H
#define JUDGE_STRENGTH_H

#include "check/bend.h"
#include "check/shear.h"
#include "judge/steps.h"
#include "solve/stations.h"

/* Where a stick is worst for one kind of check. */
struct worst_place {
    bool found;
    struct rating rating;
    struct bend_input bend;
    struct shear_input shear;
    int combination;
    const char *lean;
    double at;       /* m from the from-end */
    const char *how; /* "joints at their middle stiffness" */
};

struct eccentric_laps;

struct stick_work { /* one member in hand */
    struct run *run;
    size_t member;
    const struct model_member *stick;
    struct section section;
    int strong; /* local axis of edgewise bending */
    bool held_along, repetitive;
    double net_area;                   /* m2 left at its screw holes */
    const struct eccentric_laps *laps; /* of all members */
    const char *bend_id, *shear_id;
    struct worst_place bend, shear;
    double *largest_shear; /* N, per combination: smaller ones need no look */
};

/* Stations of one segment with the forces there under one mix. */
struct segment_forces {
    size_t segment, count;
    struct station *stations;
    double (*forces)[FORCE_COUNT];
};

/* Forces at the stations of a stick under each column alone, so that a mix is a weighted sum. */
struct column_forces {
    size_t places;  /* stations of all segments together */
    double **table; /* per column: places x FORCE_COUNT */
};
struct column_forces strength_tabulate(const struct stick_work *work,
                                       const struct response *response,
                                       const struct segment_forces *at);

/* The forces of one mix into the segments' tables, which stand one behind the other. */
void strength_mix(const struct column_forces *columns, size_t column_count, const double *weights,
                  double (*out)[FORCE_COUNT]);

/* The lines of bend and shear from what was found, stick by stick, and the two that stand for all
 * sticks of the user's own material without a strength; the caution on slim sticks. */
struct missing {
    const char *kind;
    struct rating rating;
    int combination;
    size_t count;
    const char *names;
};
struct slim {
    size_t count;
    const char *names;
};
struct strength_lines {
    struct missing no_bend, no_shear;
    struct slim slim;
};
void strength_add(struct stick_work *work, struct strength_lines *lines);
void strength_finish(struct run *run, const struct strength_lines *lines);

/* What of the bending input belongs to the segment and the duration of the load, not to the station
 * (N and moments are 0). */
struct bend_input strength_bend_input(const struct stick_work *work, size_t segment,
                                      enum duration duration);

#endif
