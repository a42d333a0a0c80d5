/* frame/shape_values.h - what a `shape:` says, read and validated; SI units.
 *
 * Indices refer to the frame's sticks and connections, which are read before the shape; -1 is
 * "none". frame/shape_build makes joints, members, supports, shelves and panels of it.
 */
#ifndef FRAME_SHAPE_VALUES_H
#define FRAME_SHAPE_VALUES_H

#include "frame/frame.h"

/* ORDER SHAPE */
enum shape_kind { SHAPE_STAND, SHAPE_LEAN_TO, SHAPE_GABLE, SHAPE_BENCH, SHAPE_COLD_FRAME };

/* ORDER FACE. `roof` of a gable is given as its two halves. */
enum shape_face {
    FACE_FRONT,
    FACE_BACK,
    FACE_LEFT,
    FACE_RIGHT,
    FACE_UPRIGHT_COUNT, /* faces that braces can be in */
    FACE_ROOF = FACE_UPRIGHT_COUNT,
    FACE_ROOF_FRONT,
    FACE_ROOF_BACK,
    FACE_LID,
    FACE_COUNT
};
extern const char *const SHAPE_FACES[FACE_COUNT]; /* their names */

/* ORDER BRACE_WAY */
enum brace_way { BRACE_NONE, BRACE_ALL, BRACE_LONG, BRACE_X, BRACE_TIE, BRACE_BAYS };

struct shape_shelf {
    const char *name;
    struct place place;
    double height; /* m, top of the shelf's rails above the ground */
};

struct shape_values {
    enum shape_kind kind;
    double wide, deep, high; /* m */
    double low;              /* m: front-high or eave-high; `high` where the kind has neither */
    bool measured_axes;      /* wide and deep go from axis to axis of the posts, not outside */
    int posts, rails, slopes, diagonals; /* sticks */
    int middle_posts;
    int frames;       /* gable: along the length, ends included; 0 where not said */
    int rails_across; /* tray-bearing rails a shelf, 2 or more */
    bool laps_inside;
    int ends;                     /* connection of every rail, -1 where not said */
    struct optional bottom_rails; /* m */
    struct optional under;        /* m, bench */
    struct optional back_rail;    /* m, bench */
    bool feet_given;
    struct support foot; /* joint -1; ground and hold-down as in `supports` */

    struct shape_shelf *shelves; /* from the ground up */
    size_t shelf_count;
    struct shelf on_each; /* deck, trays and standing of every shelf; no name, no rails */

    struct {
        bool covered;
        enum held held;
        struct place place;
    } covers[FACE_COUNT];
    int sheet; /* table_sheet index, -1 where not said */
    struct {
        enum brace_way way;
        int bays; /* BRACE_BAYS */
        struct place place;
    } braces[FACE_UPRIGHT_COUNT];

    struct {                /* cold-frame */
        int framed;         /* stick, -1 */
        bool opens;         /* yes where not said */
        double opens_angle; /* rad */
        bool stay;
        struct optional weight; /* N */
    } lid;

    struct {
        const struct node **items;
        size_t count, capacity;
    } leave_out; /* the texts that name made members */
};

#endif
