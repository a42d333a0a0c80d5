/* frame/frame_check.h - what can be wrong with a frame although every entry reads well: joints too
 * close, joints that no stick reaches, hosts elsewhere, shelves and panels of impossible shape.
 * Inside src/frame/ only. */
#ifndef FRAME_FRAME_CHECK_H
#define FRAME_FRAME_CHECK_H

#include "frame/reader.h"

/* All joint, member and stick numbers of the frame are good; a false return means that lengths
 * cannot be relied on. */
bool check_joints_apart(struct reader *reader);
void check_joints_reached(struct reader *reader);
void check_hosts(struct reader *reader);
void check_member_pairs(struct reader *reader); /* a caution for two alike between two joints */
/* A caution for sticks whose axes cross where there is no joint. */
void check_crossings(struct reader *reader);
void check_shelf(struct reader *reader, const struct shelf *shelf);
void check_panel(struct reader *reader, const struct panel *panel);

#endif
