/* frame/shape_layout.h - where the posts and rails of a shape stand; m, as joints are given.
 *
 * Only numbers: names and entries are made of them elsewhere. Inside src/frame/ only.
 */
#ifndef FRAME_SHAPE_LAYOUT_H
#define FRAME_SHAPE_LAYOUT_H

#include "frame/reader.h"
#include "frame/shape_values.h"

/* A height at which the file asks for rails. */
struct ring {
    const char *what;        /* in a message: "shelf 'lower'" */
    const char *shelf;       /* the shelf that lies on it, NULL for bottom rails */
    double height;           /* of the rails' tops above the ground */
    const struct node *node; /* where the file says so */
};

/* Bottom rails, a bench's lower shelf and all shelves, from the ground up; how many. `map` is the
 * shape's node. */
size_t shape_rings(struct reader *reader, const struct node *map, const struct shape_values *shape,
                   struct ring **rings);

/* True where the top rails carry that shelf: it is as high as they are, and they are level. */
bool on_top_rails(const struct shape_values *shape, const struct ring *ring);

enum side { SIDE_FRONT, SIDE_BACK, SIDES };

/* A front post and a back post. */
struct column {
    double x;
    bool sloped; /* gable: roof sticks go up from it; the first and the last of the others too */
};

/* Where rails meet the posts. The first level is the ground, without rails. */
struct level {
    double z[SIDES];
    bool rail[SIDES]; /* front and back rail */
    bool ends;        /* left and right rail */
    const char *shelf;
    struct place place;
};

struct layout {
    struct column *columns; /* from the left */
    size_t column_count;
    double y[SIDES];
    struct level *levels; /* from the ground up */
    size_t level_count;
    size_t top;    /* the level of the top rails; above it only the upstand of a bench */
    size_t bottom; /* the level that covers start from: the bottom rails, else the ground */
    double ridge_y, ridge_z; /* gable */
};

/* `shape` has passed check_shape(). False, and told, where posts stand in each other. */
bool shape_lay_out(struct reader *reader, const struct node *map, const struct shape_values *shape,
                   struct layout *layout);

#endif
