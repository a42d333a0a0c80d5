/* judge/holding.h - where a stick is held: by supports, by its host, by the sticks it meets.
 *
 * Sideways, in a local direction y or z: a joint holds it there if a support does, or if another
 * stick (no tie) meets it within 60 degrees of that direction. For sag: a joint holds a rail if it
 * has a support, a stick steeper than 45 degrees, or a stick that is the rail's host there.
 */
#ifndef JUDGE_HOLDING_H
#define JUDGE_HOLDING_H

#include "model/hosts.h"
#include "model/model.h"

/* The stretch of a stick between the joints that hold it in one direction. */
struct stretch {
    double from, to; /* m along the member */
    int joints[2];   /* at from, at to */
    bool held[2];    /* at from, at to; an end of the stick may be free */
    bool sways;      /* its ends move against each other this way when the frame folds or leans */
};

struct holding {
    struct meetings meetings;
    struct stretch (*sideways)[2]; /* per segment: local y, local z */
};

struct holding *holding_build(struct arena *arena, const struct model *model);

/* Does joint `joint` hold the rail against sag? */
bool holding_rail(const struct model *model, const struct holding *holding, int member, int joint);

/* Mark the stretches whose ends go apart sideways under a movement of the joints (a way to fold, or
 * the lean of a soft direction), by more than a tenth of its largest. Only uprights (steeper than
 * 45 degrees) carry the load that such a movement lets fall. */
void holding_mark_sway(const struct model *model, struct holding *holding,
                       const double (*moves)[3]);

/* Length for buckling of a stretch, NDS 3.7.1: Ke = 1 between two holding joints, the cantilever
 * value of NDS Table G1 where an end is free, at least 2 where the frame sways that way. */
double stretch_column_length(const struct stretch *stretch);

#endif
