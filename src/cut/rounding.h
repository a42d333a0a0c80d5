/* cut/rounding.h - a plan from the relaxation: its whole times are cut, and what is left is relaxed
 * again. For src/cut only.
 */
#ifndef CUT_ROUNDING_H
#define CUT_ROUNDING_H

#include "cut/relaxation.h"

/* Cut the whole times of a relaxation: patterns into `layout`, what is left of the demand into
 * `left`. False where there is no whole time. */
bool cut_whole_times(struct arena *arena, const struct kinds *kinds, const struct columns *columns,
                     const struct relaxation *relaxation, int *left, struct layout *layout);

/* A plan for the demand; `known` is its relaxation. */
struct layout round_down(struct arena *arena, const struct kinds *kinds, const int *demand,
                         struct columns *columns, const struct relaxation *known);

/* A plan from given boards: the column nearest to a whole time is cut and the rest relaxed again,
 * then the next ones, until so many squares of kinds were relaxed. False where none was found. */
bool round_to_boards(struct arena *arena, const struct kinds *kinds, const int *boards,
                     struct columns *columns, const struct relaxation *known, long relaxed_most,
                     struct layout *layout);

#endif
