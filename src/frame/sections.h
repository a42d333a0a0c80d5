/* frame/sections.h - one reader for each section of a frame description.
 *
 * Each takes the section's node (never NULL) and fills the frame; problems are told through the
 * reader. Later sections refer to earlier ones, so frame_read() calls them in this order. Inside
 * src/frame/ only.
 */
#ifndef FRAME_SECTIONS_H
#define FRAME_SECTIONS_H

#include "frame/reader.h"

void read_sticks(struct reader *reader, const struct node *section);
void read_connections(struct reader *reader, const struct node *section);
/* True where a frame can be made of it. */
bool read_shape(struct reader *reader, const struct node *section);
void read_joints(struct reader *reader, const struct node *section);
void read_members(struct reader *reader, const struct node *section);
/* Hosts name members, which are read after the joints. */
void read_hosts(struct reader *reader, const struct node *joints);
void read_supports(struct reader *reader, const struct node *section);
void read_shelves(struct reader *reader, const struct node *section);
void read_panels(struct reader *reader, const struct node *section);
void read_site(struct reader *reader, const struct node *section);
void read_limits(struct reader *reader, const struct node *section);
void read_prices(struct reader *reader, const struct node *section);
void read_parts(struct reader *reader, const struct node *section);
void read_keep_open(struct reader *reader, const struct node *section);
void read_loads(struct reader *reader, const struct node *section);
void read_combine(struct reader *reader, const struct node *section);

/* ---- pieces that shapes share with the sections ---- */

/* {slats: stick, count: n} | {sheet: name} | {weight: load} | none */
void read_deck(struct reader *reader, const struct node *node, struct shelf *shelf);
/* {kind: tray, count: n} | {load: ..} | {weight: ..} | none */
void read_trays(struct reader *reader, const struct node *node, struct shelf *shelf);
void read_standing(struct reader *reader, const struct node *node, struct shelf *shelf);
/* {on: ground, hold-down: weight} */
void read_foot(struct reader *reader, const struct node *node, struct support *support);
/* yes | no | an angle */
void read_opens(struct reader *reader, const struct node *node, bool *opens, double *angle);
extern const char *const HELD_WORDS[];                         /* by enum held */
int read_held(struct reader *reader, const struct node *node); /* enum held, -1 */
int read_sheet(struct reader *reader, const struct node *node);

#endif
