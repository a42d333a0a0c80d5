/* judge/sway_frames.h - the frame of a run as sway/ takes it, and combinations that are shown at
 * once to lie above a critical factor.
 */
#ifndef JUDGE_SWAY_FRAMES_H
#define JUDGE_SWAY_FRAMES_H

#include "judge/run.h"
#include "sway/sway.h"

/* Least E, with creep or without. */
struct sway_setting sway_frames_setting(const struct run *run, enum stiffness stiffness,
                                        bool crept);

/* With the forces of a mix: only ties that pull count, and a lifted foot holds nothing. */
struct sway_input sway_frames_input(const struct run *run, enum stiffness stiffness,
                                    const struct mix *mix, bool crept);

/* A frame cut as finely as any of its mixes asks, in which they are only counted. */
struct sway_wide {
    bool crept;
    int *cuts;                      /* per segment */
    const struct mix *like;         /* on whose feet and ties it stands */
    const struct sway_frame *frame; /* lends its elastic part */
};

/* Do two mixes stand on the same ties, and on all feet? */
bool sway_frames_alike(const struct run *run, const struct mix *one, const struct mix *other);

/* For these mixes; NULL where there are less than two. Those that stand on other feet than the
 * first of them or with other ties are left out. */
struct sway_wide *sway_frames_wide(struct run *run, const struct mix *const *mixes, size_t count,
                                   bool crept);

/* Is none of these mixes below the factor? One question for all of them, on the safe side: every
 * stick with the largest push that any of them has in it. False says nothing. */
bool sway_frames_above(const struct run *run, const struct sway_wide *wide,
                       const struct mix *const *mixes, size_t count, double factor);

#endif
