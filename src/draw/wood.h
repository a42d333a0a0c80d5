/* draw/wood.h - every stick as the piece of wood that is drawn for it.
 *
 * A frame is described by the middle lines of its sticks; a picture of those would run through one
 * another. So ends are cut as the fastening asks for: lapped sticks lie on their hosts, on the
 * outer face, and reach over them (braces on the inner face, and to the joint); other sticks end at
 * the host's face; a host that ends reaches past what is fastened to it; at a plain hinge sticks
 * reach the joint; on the ground they are cut level. Lengths m.
 */
#ifndef DRAW_WOOD_H
#define DRAW_WOOD_H

#include "model/model.h"

struct wood {
    int member;
    /* corner k: bit 0 the side along local y, bit 1 along local z, bit 2 the to-end */
    double corners[8][3];
    double lapped[3]; /* how far it lies off its middle line; 0 where it is not lapped */
};

/* One for each member of the model, in its order. */
struct wood *wood_pieces(struct arena *arena, const struct model *model);

#endif
