/* solve/response.h - how a frame answers to its loads: movements, forces along sticks, reactions.
 *
 * One column per load set, as it stands and (for sets of weight) leaned: its downward loads turned
 * into level ones along x or y. All columns are solved together with one factor. A combination is a
 * mix of columns; everything here is linear, so a mix of answers is the answer to the mix.
 */
#ifndef SOLVE_RESPONSE_H
#define SOLVE_RESPONSE_H

#include "loads/loads.h"
#include "solve/system.h"

enum { LEAN_NONE = -1, LEAN_X = 0, LEAN_Y = 1 };

struct column {
    int set;  /* -1 in the column of a tie or a foot */
    int lean; /* LEAN_NONE: as it stands; else the level copy along x or y, 1 N per N down */
    int tie;  /* -1; else the member: one N of pull between its joints, no set (solve/stance.h) */
    int foot; /* -1; else the support: it gives way by one metre, no set (solve/settlement.h) */
    int axis; /* of the foot: x, y or z */
};

struct response {
    const struct system *system;
    const struct loads *loads;
    struct column *columns;
    size_t column_count;
    size_t live_count; /* columns from here on are of feet, not solved and in no mix: frames have
                          many feet, few of which lift */
    bool *solvable;    /* per column: no way to fold is driven by it */
    bool *solved; /* per column: what follows is there; columns of feet are solved when asked for */
    double **slots; /* per column: movements, 3 x slots */
    double **ends;  /* per column: 12 x segments, forces of the joints on the stick's own
                       ends, local axes */
    double **own;   /* per column: 12 x segments, movements of the stick's own ends, local */
    double (**reactions)[6];                  /* per column, solved: per support */
    double backward_error, equilibrium_error; /* the largest over the columns */
    int twisted_column; /* a column that twists a stick about its own axis, which nothing
                           resists; -1 none */
    int twisted_slot;
};

/* Solve every present set. `out_of_plumb`: with the leaned copies of self weight and trays. */
struct response *response_solve(struct arena *arena, const struct system *system,
                                const struct loads *loads, bool out_of_plumb);

/* Does a set that is in every judgement (no pattern of trays) drive a way to fold? Nothing is
 * solved for the answer. */
bool response_folds(struct arena *arena, const struct system *system, const struct loads *loads,
                    bool out_of_plumb);

/* Column of a set and lean; -1 where there is none. */
int response_column(const struct response *response, int set, int lean);

/* Force and moment of a column at a joint, global directions. */
void response_joint_load(const struct response *response, size_t column, size_t joint,
                         double out[6]);

/* The loads of a column gathered at the slots (3 numbers each, added). */
void response_gather(struct arena *arena, const struct response *response, size_t column,
                     double *slots);

/* Have the forces of the sticks for all columns of a mix: those of patterns of trays are not there
 * before. */
void response_need_ends(struct arena *arena, struct response *response, const double *weights);

/* Forces of the sticks from the movements of the slots, for columns `first` to `last` - 1. */
void response_recover_ends(struct arena *arena, struct response *response, size_t first,
                           size_t last);
void response_room_for_reactions(struct arena *arena, struct response *response, size_t column);
/* Reactions of a column from K u (`sums`) and the loads, both over all slots. */
void response_recover_reactions(struct response *response, size_t column, const double *sums,
                                const double *loads);

/* One load of a column on a segment, in its local axes. Returns how many there are; `loads` may be
 * NULL. At most `room` are written. */
size_t response_loads(const struct response *response, size_t column, size_t segment,
                      struct element_load *loads, size_t room);

#endif
