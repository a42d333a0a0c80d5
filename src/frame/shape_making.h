/* frame/shape_making.h - the entries that a shape stands for, while they are made.
 *
 * They are nodes, as if the file held them: what the file says itself is put beside them, then all
 * of it is read and checked by the readers of the sections. Names are as the format page says.
 * Inside src/frame/ only.
 */
#ifndef FRAME_SHAPE_MAKING_H
#define FRAME_SHAPE_MAKING_H

#include "frame/shape_layout.h"

/* ORDER MADE */
enum made { MADE_JOINTS, MADE_MEMBERS, MADE_SUPPORTS, MADE_SHELVES, MADE_PANELS, MADE_SECTIONS };
extern const char *const MADE_KEYS[MADE_SECTIONS];

/* The entries of one section. */
struct made_section {
    struct name_index names;
    struct {
        struct node **items; /* by number of the name; NULL where it is left out */
        size_t count, capacity;
    } entries;
};

struct making {
    struct reader *reader;
    struct node *root;
    const struct node *map; /* the shape's node */
    const struct shape_values *shape;
    struct layout layout;
    struct made_section sections[MADE_SECTIONS];
    struct {
        double (*items)[3]; /* m, of every joint by number */
        size_t count, capacity;
    } places;
};

void made_add(struct making *making, enum made section, struct node *entry);

/* "fl0", "f1-0": the joint at a post. */
const char *post_joint(const struct making *making, enum side side, size_t column, size_t level);
/* "rl", "r1", "rr": the joint on the ridge over a column. */
const char *ridge_joint(const struct making *making, size_t column);
/* "l2-1", "r2-1", "m1-2-1": where middle rail `rail` (2 is the first behind the front) lies on the
 * left or the right rail of a level, or on the rail between a pair of middle posts. */
const char *middle_joint(const struct making *making, size_t column, int rail, size_t level);

/* "mid-1-2" */
const char *middle_rail(const struct making *making, size_t level, int rail);
/* "front-1", "left-1" */
const char *face_rail(const struct making *making, const char *face, size_t level);

/* A member from joint to joint; its entry, for more keys. */
struct node *made_member(struct making *making, const char *name, const char *from, const char *to,
                         int stick, struct place place);

/* The steps, in this order. */
void make_joints(struct making *making);
void make_pieces(struct making *making);
void make_braces(struct making *making);
void make_feet(struct making *making);
void make_leave_out(struct making *making); /* takes members out again, and joints with them */
void make_shelves(struct making *making);
void make_panels(struct making *making);

#endif
