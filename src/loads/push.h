/* loads/push.h - somebody leans on the frame: a level force shared by the tops of its uprights. */
#ifndef LOADS_PUSH_H
#define LOADS_PUSH_H

#include "loads/loads.h"

/* The larger of 20 lb (or what the file says) and 2 % of all weight with full shelves, N. */
double push_force(const struct loads *loads);

/* Joints that share it: where an upright (steeper than 45 degrees) ends or passes, within 25 mm of
 * the highest such joint. Returns how many. */
size_t push_joints(struct arena *arena, const struct model *model, int **joints);

#endif
