/* cut/search.h - a plan of at most a given cost, looked for board by board.
 *
 * The longest piece left must lie on some board: every pattern that holds it, is not dominated
 * and loses no more than may still be lost is tried, the tightest first, and the rest of the pieces
 * in the same way. What may be lost is counted in length and in the worths of the relaxation. For
 * src/cut only.
 */
#ifndef CUT_SEARCH_H
#define CUT_SEARCH_H

#include "cut/relaxation.h"

struct search_limits {
    size_t width; /* patterns tried for one board, the tightest; 0: all */
    long steps;   /* pieces laid on boards, in all */
    long relaxed; /* what is left is relaxed anew: squares of its kinds, in all */
};

/* What is asked for. */
struct search_task {
    const int *demand;                   /* may be lower than that of the kinds */
    const struct relaxation *relaxation; /* of that demand */
    int64_t cost;                        /* at most */
    const int *boards;                   /* at most, of each stock; NULL: any number */
    const struct columns *columns;       /* to relax with; NULL: none */
};

enum search_outcome {
    SEARCH_FOUND,
    SEARCH_NONE,      /* every plan was ruled out */
    SEARCH_UNDECIDED, /* stopped by a limit */
};

enum search_outcome search_layout(struct arena *arena, const struct kinds *kinds,
                                  const struct search_task *task,
                                  const struct search_limits *limits, struct layout *layout);

#endif
