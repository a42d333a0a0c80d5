/* sway/sway.h - how far a frame is from buckling: the elastic critical factor of a set of forces
 * along its sticks.
 *
 * The smallest factor f > 0 for which K + f Kg resists some movement no longer: K the elastic
 * stiffness, Kg that of the forces N along the sticks (pull positive, mean of the two ends of a
 * segment). The frame is cut finer than in solve/: a segment in compression into four pieces, and
 * the turns and slips that springs and releases leave to the end of a stick stay unknowns of their
 * own, because condensing them would not be linear in f. Forces turn no stick about its own axis.
 *
 * Found by Lanczos (1950) on the factor of K and certified by the number of negative pivots just
 * below and just above it (Sturm count); by halving an interval on that count where it cannot be.
 * Everything is deterministic and comes from the arena. SI units.
 */
#ifndef SWAY_SWAY_H
#define SWAY_SWAY_H

#include "solve/response.h"

/* Above this a factor is of no interest: NAN. */
#define SWAY_MOST 1e6

struct sway_setting { /* how the frame is taken */
    const struct model *model;
    enum stiffness stiffness; /* of the fastenings */
    bool least_stiffness;     /* sticks with Emin' for E (E where there is no Emin) */
    double creep_sticks;      /* divide E and G of the sticks; 0 counts as 1 */
    double creep_joints;      /* divide the springs of screws and such; 0 counts as 1 */
    const struct bar *bars;   /* bracing beside the sticks, as given; may be NULL */
    size_t bar_count;
    const bool *excluded;  /* per member: left out altogether (slack ties); NULL: none */
    const bool (*held)[3]; /* per slot, instead of the model's own; NULL: the model's */
};

/* Is nothing different? Then one frame serves both, whatever the forces are. */
bool sway_same_setting(const struct sway_setting *a, const struct sway_setting *b);

struct sway_frame;

struct sway_input {
    struct sway_setting setting;
    const double (*axial)[2]; /* per segment: N at its start and end, pull positive; NULL (with
                                 `cuts`): a frame for sway_count_with() alone */
    int pieces;               /* of a segment in compression; 0: four */
    const int *cuts;          /* per segment: into how many pieces; NULL: as these forces ask */
    /* A frame made ready for other forces, or NULL: lends what does not depend on them where its
     * setting is the same and the same segments are cut. Must live as long as the new one. */
    const struct sway_frame *like;
};

/* Into how many pieces the forces ask each segment to be cut. */
int *sway_cuts(struct arena *arena, const struct sway_input *input);

/* The frame made ready. Not changed by the questions asked about it; they take scratch from the
 * arena. */
struct sway_frame *sway_prepare(struct arena *arena, const struct sway_input *input);

/* True where the frame has a movement that nothing resists even without load (spins of sticks about
 * their own axis do not count). It then has no factor; see below. */
bool sway_folds(const struct sway_frame *frame);

/* The matrices that the questions are asked about: elastic, and that of the forces. */
void sway_matrices(const struct sway_frame *frame, const struct sparse **elastic,
                   const struct sparse **geometric);

/* How many critical factors lie between 0 and `factor`: 0 means that the frame stands under that
 * many times the load. One factorization: the cheap way to a verdict. A frame that folds: at
 * least 1. */
size_t sway_count_below(struct arena *arena, const struct sway_frame *frame, double factor);

/* The same with other forces than the frame was made ready for. At least 1 also where it cannot be
 * counted. */
size_t sway_count_with(struct arena *arena, const struct sway_frame *frame,
                       const double (*axial)[2], double factor);

struct sway_result {
    double factor; /* NAN: none up to SWAY_MOST; 0 where the frame folds without load */
    bool folds;
    bool certified; /* none below it and one at it, by the count of pivots */
    double *shape;  /* how the joints move when it buckles: 3 per joint, global directions, largest
                       1 (all 0 where no joint moves but sticks bow between them); NULL with no
                       factor */
    int bowing; /* member that bows the most between its joints; -1 where the joints move more */
};
struct sway_result sway_factor(struct arena *arena, const struct sway_frame *frame);

/* prepare and factor in one. */
struct sway_result sway_critical(struct arena *arena, const struct sway_input *input);

/* N at both ends of every segment for a mix of columns; for sway_input.axial. */
double (*sway_axial(struct arena *arena, const struct response *response,
                    const double *weights))[2];

#endif
