/* solve/slack.h - sticks that only pull (ties) in a mix of loads.
 *
 * A tie that would be pushed is left out: start with all, release the one that is pushed most,
 * bring back the one that would pull most, until nothing changes; where that does not come to rest,
 * every state of up to 12 ties is tried. Leaving a tie out is linear: it is the same as a pair of
 * forces along it that undo what it does, so each tie has a column of its own in the response (one
 * N of pull between its joints), and the mix gets a weight for it.
 */
#ifndef SOLVE_SLACK_H
#define SOLVE_SLACK_H

#include "solve/response.h"

/* Set the weights of the tie columns for the mix; `slack` (one per member, may be NULL) tells which
 * ties are out. False where no state of the ties holds the frame. */
bool slack_settle(struct arena *arena, const struct response *response, double *weights,
                  bool *slack);

#endif
