/* fix/climb.h - from a set of changes upwards, at each step the change that mends most for its
 * effort, until it passes or no single change mends anything. For src/fix only.
 */
#ifndef FIX_CLIMB_H
#define FIX_CLIMB_H

#include "fix/work.h"

/* What an option was worth when it was last tried: score mended for its effort. */
struct worth {
    size_t slot;
    unsigned char level;
    double rate;
};
struct worths {
    struct worth *items;
    size_t count;
    size_t *stamps; /* per item: the round in which it was tried */
};
struct climber {
    struct work *work;
    struct worths worths;
    size_t rounds;
};
struct climber climber_new(struct work *work);

/* In the slots that are open, without the levels of `closed` (NULL: none is closed). `thrift`: the
 * power of the effort by which a step is divided; 0 looks at what it mends alone. True where the
 * set passes in the end. */
bool climb(struct climber *climber, struct set *set, double thrift, uint64_t open,
           const struct set *closed);

/* The best set made cheaper, again and again, until the tries are used up or nothing is left that
 * this knows to try. (fix/improve.c) */
void improve(struct climber *climber);

#endif
