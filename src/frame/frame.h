/* frame/frame.h - a frame as its file describes it: read, validated, names resolved, SI units.
 *
 * One struct per kind of entry, lists in file order; indices refer to those lists, -1 is "none".
 * Everything lives in the arena that frame_read() was given.
 */
#ifndef FRAME_FRAME_H
#define FRAME_FRAME_H

#include "base/arena.h"
#include "base/problem.h"
#include "frame/solver_kind.h"
#include "tables/tables.h"
#include "units/quantity.h"

#include <stdbool.h>
#include <stddef.h>

struct node;

/* A value that the file may leave out. */
struct optional {
    bool given;
    double value;
};

enum stands { STANDS_NOT_SAID, STANDS_ON_EDGE, STANDS_FLAT };
enum faces { FACES_NOT_SAID, FACES_FRONT, FACES_SIDE };

struct own_section {
    double A, Iy, Iz, J; /* m2, m4 */
    double Ay, Az;       /* shear areas, m2; 0 where not given */
};
struct own_material {
    double E;                                  /* Pa; required */
    struct optional G;                         /* Pa */
    struct optional density;                   /* kg/m3 */
    struct optional Fb, Fv, Fc, Ft, Fcp, Emin; /* Pa */
};

struct stick {
    const char *name;
    struct place place;
    int size;                /* table_size index; -1 for [t, w] or an own section */
    bool has_size;           /* thickness and width hold (dressed or actual) */
    double thickness, width; /* m, smaller and larger side */
    bool has_section;
    struct own_section section;
    bool has_material; /* own numbers; species and grade are then -1 */
    struct own_material material;
    int species, grade;
    bool stress_rated, finger_jointed, treated;
    enum stands stands;
    enum faces faces;
    struct optional turn;           /* rad */
    struct optional knots;          /* m */
    struct optional slope_of_grain; /* rise over run, 1:12 is 1/12 */
};

struct joint {
    const char *name;
    struct place place;
    double at[3]; /* m; y = 0 where given as two numbers */
    int host;     /* member, -1 where not named */
};

enum acts_as { ACTS_AS_MEMBER, ACTS_AS_BRACE, ACTS_AS_TIE };

struct member {
    const char *name;
    struct place place;
    int from, to, stick;
    int ends[2]; /* connection; -1 where none is named */
    enum acts_as acts_as;
    bool held_along, repetitive;
    enum stands stands;
    enum faces faces;
    struct optional turn;   /* rad */
    struct optional length; /* m, to cut */
};

enum connection_type {
    CONNECTION_PINNED,
    CONNECTION_RIGID,
    CONNECTION_SPRINGS,
    CONNECTION_SCREWED_LAP,
    CONNECTION_SCREWED_BUTT,
    CONNECTION_GLUED_LAP, /* face against face with glue alone */
    CONNECTION_BRACKET,   /* thin steel angle, `count` screws in each leg */
    CONNECTION_GUSSET,    /* plywood plate over both sticks, `count` screws in each stick */
    CONNECTION_CLEAT,     /* sits on a block that is screwed to the host */
    CONNECTION_NOTCHED,   /* let into the host */
    CONNECTION_HINGE      /* steel hinge, `count` screws in each leaf */
};
/* What the screws are made of, against rust. */
enum metal { METAL_NOT_SAID, METAL_PLAIN, METAL_GALVANIZED, METAL_STAINLESS };
enum fastener_kind { FASTENER_NONE, FASTENER_SCREW, FASTENER_NAIL, FASTENER_LAG, FASTENER_BOLT };

enum { CONNECTION_MOST_FASTENERS = 100 };

/* The first two connections of every frame are the built-in `pinned` and `rigid`. */
enum { CONNECTION_INDEX_PINNED = 0, CONNECTION_INDEX_RIGID = 1 };
struct connection {
    const char *name;
    struct place place;
    enum connection_type type;
    struct optional rotation; /* N-m/rad, springs */
    struct optional slip;     /* N/m, springs; rigid where not given */
    enum fastener_kind fastener;
    const char *size_name;  /* as typed: "8", "10d", "1/4 in" */
    double diameter;        /* m: nominal screw, nail, lag or bolt diameter; 0 where no fastener */
    struct optional length; /* m */
    int count;
    bool count_given;
    struct optional spacing; /* m between neighbours of the line */
    enum metal metal;
    double steel, wide; /* m: thickness and width of a bracket */
    int sheet, plates;  /* of a gusset: table_sheet index; on one side or on both */
    double block;       /* m: thickness of a cleat's block */
    double depth;       /* m that a notched stick is let in */
};

struct support {
    struct place place;
    int joint;
    bool held[6];              /* x y z rx ry rz, both ways where it is not a foot */
    bool foot;                 /* rests on the ground: pushes, does not pull */
    int ground;                /* table_ground index, -1 where not said */
    struct optional hold_down; /* N */
    struct optional in_ground; /* m */
};

/* A foot that leaves the ground when it is pulled: one without a hold-down, which holds both ways
 * (whether it is strong enough is a check). */
static inline bool support_lifts(const struct support *support) {
    return support->foot && !(support->hold_down.given && support->hold_down.value > 0.0);
}

enum deck_type { DECK_NONE, DECK_SLATS, DECK_SHEET, DECK_WEIGHT };
enum tray_type { TRAYS_NONE, TRAYS_KIND, TRAYS_LOAD, TRAYS_WEIGHT };
struct shelf {
    const char *name;
    struct place place;
    int *rails;
    size_t rail_count;
    enum deck_type deck;
    int slat; /* stick, DECK_SLATS */
    int slat_count;
    int sheet;          /* table_sheet index, DECK_SHEET */
    double deck_weight; /* Pa, DECK_WEIGHT */
    enum tray_type trays;
    int tray; /* table_tray index, TRAYS_KIND */
    int tray_count;
    double tray_load; /* Pa (TRAYS_LOAD) or N (TRAYS_WEIGHT) */
    bool short_standing;
};

enum held {
    HELD_SCREWED,
    HELD_STAPLED,
    HELD_CLIPPED,
    HELD_TAPED,
    HELD_HINGED,
    HELD_SLIDING,
    HELD_LOOSE
};
struct panel {
    const char *name;
    struct place place;
    int corners[4];
    int sheet; /* table_sheet index */
    enum held held;
    double screw_diameter;   /* m, 0 where none */
    struct optional spacing; /* m */
    bool runs_across;
    double overhang; /* m */
    int hinge[2];    /* joints, -1 where none */
    bool opens;
    double opens_angle; /* rad; 60 deg for `yes` */
    bool stay;
    int framed;             /* stick, -1 */
    struct optional weight; /* N */
    bool braces;
};

enum site_place { PLACE_NOT_SAID, PLACE_OUTDOORS, PLACE_GLAZED, PLACE_SHED, PLACE_INDOORS };
struct site {
    bool given;
    struct place position;
    enum site_place place;
    struct optional ground_snow; /* Pa */
    struct optional snow_depth;  /* m */
    int snow_kind;               /* table_snow index, -1 */
    struct optional wind;        /* m/s, map speed */
    struct optional gust;        /* m/s, real */
    int wind_word;               /* table_wind_word index, -1 */
    char exposure;               /* 'B' 'C' 'D', 0 where not given */
    bool wet_service_given, wet_service;
    bool heated_given, heated;
    int risk; /* 1 to 4, 0 where not given */
    enum edition edition;
    bool beside_given, beside_house;
    double eave, depth, roof_slope; /* m, m, rad of the house */
    struct optional push;           /* N */
};

/* A limit as a share of a length (divisor > 0) or a fixed length. */
struct limit {
    bool given;
    double divisor;
    double length; /* m, where divisor is 0 */
};
struct limits {
    struct limit shelf_sag, roof_sag, lean; /* defaults span/240, span/180, height/100 filled in */
};

/* What a price is for: a stick, a sheet, a fastener by its size, or a thing by its name. */
struct price_entry {
    const char *name;
    struct place place;
    struct price price;
    int stick, sheet;             /* -1 where it is not one */
    enum fastener_kind fastener;  /* "screw-8x2in"; FASTENER_NONE where it is none */
    const char *fastener_size;    /* as the tables call it */
    struct optional screw_length; /* m; not given: of any length */
};

struct part {
    const char *name;
    struct place place;
    int *members;
    size_t member_count;
    int *panels;
    size_t panel_count;
};

enum load_type { LOAD_JOINT, LOAD_LINE, LOAD_POINT };
struct load {
    struct place place;
    int load_case; /* frame_case index */
    enum load_type type;
    int joint, member; /* -1 where not of that type */
    double force[3];   /* N, or N/m for LOAD_LINE; global directions */
    double moment[3];  /* N-m, LOAD_JOINT */
    double at;         /* m from the from-end, LOAD_POINT */
};

/* Load cases: the built-in names first, in this order, then the user's own in file order. */
enum {
    CASE_SELF,
    CASE_TRAY,
    CASE_SNOW,
    CASE_WIND_LEFT,
    CASE_WIND_RIGHT,
    CASE_WIND_FRONT,
    CASE_WIND_BACK,
    CASE_PUSH_X,
    CASE_PUSH_Y,
    CASE_BUILT_IN
};

struct combine_part {
    int load_case;
    double factor;
};
struct combination_entry {
    const char *name;
    struct place place;
    struct combine_part *parts;
    size_t part_count;
    enum duration duration;
};

/* `shape:` as read; what it stands for is among the joints, members and so on. */
struct shape {
    bool given;
    struct place place;
    struct shape_values *values;
};

struct frame {
    struct arena *arena;
    const char *title; /* "" where none */
    enum unit_system units;
    bool self_weight;
    bool plane;              /* every joint given as two numbers */
    double tray_share;       /* 1; of the trays as described, for questions such as `margin` */
    enum solver_kind solver; /* of its equations, as asked for */

    struct {
        struct stick *items;
        size_t count, capacity;
    } sticks;
    struct {
        struct joint *items;
        size_t count, capacity;
    } joints;
    struct {
        struct member *items;
        size_t count, capacity;
    } members;
    struct {
        struct connection *items;
        size_t count, capacity;
    } connections;
    int default_connection; /* -1 where none */
    struct {
        struct support *items;
        size_t count, capacity;
    } supports;
    struct {
        struct shelf *items;
        size_t count, capacity;
    } shelves;
    struct {
        struct panel *items;
        size_t count, capacity;
    } panels;
    struct site site;
    struct limits limits;
    struct {
        struct price_entry *items;
        size_t count, capacity;
    } prices;
    struct {
        struct part *items;
        size_t count, capacity;
    } parts;
    struct {
        const char **items;
        size_t count, capacity;
    } keep_open;
    struct {
        struct load *items;
        size_t count, capacity;
    } loads;
    struct {
        const char **items;
        size_t count, capacity;
    } cases; /* names; see CASE_SELF ... */
    bool has_combine;
    struct {
        struct combination_entry *items;
        size_t count, capacity;
    } combinations;
    struct shape shape;
    const struct node *tree; /* the file as read, with what a shape stands for in its place */

    /* Remarks of the reader that belong among the cautions (a count of screws not said ...). */
    struct {
        const char **items;
        size_t count, capacity;
    } cautions;
};

struct frame_limits {
    bool large; /* 200 000 joints and members instead of 5 000 */
    enum solver_kind solver;
};

/* Read and validate `length` bytes. A frame where `problems` stays empty, else NULL. Geometry that
 * needs no solution is validated too: joints too close, members of no length, shelves whose rails
 * are not parallel, joints that no stick reaches. Never prints, never exits. */
struct frame *frame_read(struct arena *arena, const char *bytes, size_t length,
                         struct frame_limits limits, struct problems *problems);

/* The same from a tree (frame/tree, frame/merge), which becomes the frame's own: what a shape
 * stands for is put into it. */
struct frame *frame_of_tree(struct arena *arena, struct node *root, struct frame_limits limits,
                            struct problems *problems);

#endif
