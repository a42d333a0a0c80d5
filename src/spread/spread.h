/* spread/spread.h - `check --spread`: the whole judgement for many builds of one frame.
 *
 * Every build is judged as `check` judges a frame, by every check, with its own boards, joints and
 * trays (spread/build.h) and one stiffness of joints in place of low, middle and high. Random
 * numbers are those of GSL's mt19937 from the seed, drawn in the order of the inputs, so that the
 * same seed gives the same answer. A build that folds, tips or cannot be trusted fails every check.
 */
#ifndef SPREAD_SPREAD_H
#define SPREAD_SPREAD_H

#include "base/arena.h"
#include "frame/frame.h"
#include "result/result.h"
#include "result/spread_answer.h"

enum { SPREAD_BUILDS_MOST = 100000 };

struct spread_options {
    size_t builds; /* 1 to SPREAD_BUILDS_MOST */
    uint32_t seed;
    bool held[SPREAD_KIND_COUNT];              /* kinds of inputs that stay as described */
    void (*progress)(void *to, size_t builds); /* after each build; NULL: nobody asks */
    void *to;
};

/* `frame` without problems. GSL's error handler must be off. */
const struct spread_answer *spread_find(struct arena *arena, const struct frame *frame,
                                        const struct spread_options *options);

#endif
