/* judge/judge.h - one frame from its description to the verdict.
 *
 * Makes the model, the loads and the combinations, solves them, looks for ways to fold, runs every
 * check and fills `result`, sorted as the reporters need it. All numbers SI. Everything lives in
 * the arena; `frame` must stay as long as `result`. There are no errors: what could not be judged
 * is VERDICT_FOLDS or VERDICT_FAILED with what is known.
 */
#ifndef JUDGE_JUDGE_H
#define JUDGE_JUDGE_H

#include "base/arena.h"
#include "frame/frame.h"
#include "result/result.h"

#include <stdbool.h>

struct model;

enum { JUDGE_STAGES = 3 }; /* of options.first_failure, before all the rest */

struct judge_options {
    const char *why_id; /* this check gets its working; NULL: none */
    /* That check is shown for this combination (its numbers, verdict and working) and not for its
     * worst; NULL: the worst. The verdict of the whole frame stays the worst of everything. */
    const char *why_combination;
    bool all_working; /* every check gets its working */
    /* How the frame bends under this combination; "": the one of the worst check that has one;
     * NULL: is not asked. */
    const char *bent_under;
    /* Stop after the first stage in which a check fails or is not covered: slats, sag and lean;
     * bending, shear and pressure; screws and the ground; then all the rest. What is in the result
     * is a part of the checks then, of first order, and none of them gets better in the whole. For
     * whoever asks of many frames which of them pass. */
    bool first_failure;
    /* Changes the model before it is solved: other wood, other joints (spread/build.h). NULL: as
     * described. */
    void (*vary)(const void *with, struct model *model);
    const void *with;
    bool every_factor; /* the critical factor of every combination, not only of the lowest */
};

void judge_frame(struct arena *arena, const struct frame *frame,
                 const struct judge_options *options, struct result *result);

#endif
