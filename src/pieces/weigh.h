/* pieces/weigh.h - what the frame and its parts weigh, kg, from the pieces as they are cut.
 *
 * Dry at the moisture of dry service, after rain at that of wet service (tables/constants.tsv).
 * Screws and other small parts are left out.
 */
#ifndef PIECES_WEIGH_H
#define PIECES_WEIGH_H

#include "pieces/rectangles.h"
#include "pieces/sticks.h"

struct weight {
    double dry, after_rain; /* kg, without trays */
    double trays;           /* kg of wet trays that stand on it */
};

/* Everything. */
struct weight weigh_frame(struct arena *arena, const struct model *model);

/* The members and panels that `parts:` names; decks and trays of shelves whose rails all are among
 * them. */
struct weight weigh_part(struct arena *arena, const struct model *model, const struct part *part);

#endif
