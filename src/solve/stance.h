/* solve/stance.h - how a frame stands in a mix of loads: which feet press, which ties pull.
 *
 * Feet push and do not pull; a foot that presses is held in x, y and z, one that has lifted is
 * free. Ties pull and are not pushed. One active set: start with all holding, let go all feet that
 * are pulled and bring back every one that sinks below ground, settling the ties in each state;
 * where that does not come to rest, foot by foot, the worst first; then every state of the feet,
 * those with the fewest lifted first. There may be none: a foot that pulls where it is held and
 * sinks where it is free stands so lightly that the ground holds it in z alone; then feet that sink
 * come back so. (Of 7 to 12 feet every state is tried after that, of more none.) Ties settle one by
 * one, the worst first; where they do not, and the feet hold, every state of up to 12 ties is
 * tried.
 */
#ifndef SOLVE_STANCE_H
#define SOLVE_STANCE_H

#include "solve/response.h"

enum feet { FEET_HOLD, FEET_PUSH }; /* both ways; push only */

struct stance {
    bool *slack;      /* per member: a tie that hangs loose; NULL in a frame without ties */
    size_t let_go;    /* feet off the ground, or held in z alone */
    bool *lifted;     /* per support: a foot off the ground; NULL, as `freed`, where none let go */
    bool (*freed)[3]; /* per support: directions in which a foot is free to move; one that nothing
                         resists and nothing acts on counts as held */
};

/* Set the weights of the columns of ties and feet for a mix of the columns of load sets. False
 * where no state was found that holds the frame; the weights are then not changed. `stance` may be
 * NULL. Not to be called where memory taken from the arena is given back later, unless the feet
 * hold. */
bool stance_settle(struct arena *arena, struct response *response, enum feet feet, double *weights,
                   struct stance *stance);

#endif
