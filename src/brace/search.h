/* brace/search.h - the fewest braces that leave no way to fold and no soft direction.
 *
 * A diagonal stops at most one way to fold, so the search starts at that number. Sets that leave a
 * way are dropped by rank: with g the elongations that the ways give to a candidate, a set holds
 * when its g span all ways. The others are tried for lean; the order is by number, then by lean,
 * then by file order.
 */
#ifndef BRACE_SEARCH_H
#define BRACE_SEARCH_H

#include "brace/trial.h"

#define SEARCH_MOST 20000 /* sets tried for lean at the most */

struct search_input {
    const struct trial *trial; /* its candidates are those of the search */
    size_t ways;
    const double *elongations; /* candidates x ways: of each candidate in each way */
    const bool *allowed;       /* per candidate */
};

struct search_result {
    bool found;
    int *set;
    size_t number;
    struct trial_result lean;
    bool proved;   /* everything smaller, and every set of this number, was looked at */
    size_t solved; /* sets tried for lean */
    bool holds;    /* some set leaves no way to fold, soft or not */
};

struct search_result search_fewest(struct arena *arena, const struct search_input *input);

#endif
