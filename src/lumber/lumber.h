/* lumber/lumber.h - what a stick of wood is worth: its published values, stiffness and weight.
 *
 * A lumber holds, for each property, the reference value (ASD, normal duration, dry), the table row
 * that it came from (the row's own factors go with it) and where it is published. All is SI except
 * nominal sizes, which are inches because the factor tables are keyed on them. A plain value: no
 * memory, copy it freely. Functions take a NULL working where nothing is to be noted.
 *
 * How it is decided:
 * - a graded stick has the values of its row;
 * - `ungraded`: for each property the lower of the species' No.3 and Northern Species No.3 [trade];
 * - an ungraded stick whose owner measured both its largest knot and its slope of grain may rise by
 *   the strength ratio of ASTM D245 (see by_eye.h), never above No.2 of its species;
 * - a nominal 1-inch (to under 2-inch) board with a grade that is not stress-rated counts as
 *   ungraded (NDS Supplement Table 1B: board grades carry no design values);
 * - a grade at a width that it is not written for, or a post thicker than nominal 4, has no
 *   strengths (`has` false); its stiffness is then that of an ungraded stick, so that the frame can
 *   still be solved;
 * - own material: what is given. No Emin: E stands for it. No G: E/16.
 */
#ifndef LUMBER_LUMBER_H
#define LUMBER_LUMBER_H

#include "tables/tables.h"
#include "working/working.h"

#include <stdbool.h>

enum lumber_basis {
    LUMBER_GRADED,
    LUMBER_UNGRADED,    /* no grade: an assumption, to be said */
    LUMBER_BY_EYE,      /* no grade, raised by the user's own look at it: to be said */
    LUMBER_PLAIN_BOARD, /* a grade without values on a 1-inch board: as ungraded, to be said */
    LUMBER_NO_VALUES,   /* the grade or size has no published strengths: to be said */
    LUMBER_OWN          /* the user's own numbers */
};

struct lumber_value {
    bool has;
    struct cited cited; /* Pa, before any factor */
    int species, grade; /* the row whose factors apply; -1 for own numbers */
    bool by_eye;        /* `cited` comes of the two below: no_2 x min(1, left / left in No.2) */
    struct cited no_2;  /* Pa, the No.2 value of the species */
    struct cited left;  /* share of clear-wood strength that knots and grain leave */
};

/* What the owner of an ungraded stick measured, and what it leaves of clear wood; see by_eye.h. */
struct lumber_eye {
    double knot, slope;    /* m, rise over run */
    double wide, narrow;   /* shares left by the knot on the edge of either face */
    struct cited grain[2]; /* shares left by the grain: in bending and pull, under push */
};

struct lumber {
    enum lumber_basis basis;
    int species, grade; /* as named by the user; -1 for own numbers */
    bool finger_jointed;
    struct lumber_eye eye; /* LUMBER_BY_EYE */
    bool worse_than_taken; /* knots or grain as measured leave less than an ungraded stick has: then
                              there is no Fb, Ft, Fc; to be said */
    double thickness, width;                 /* m, smaller and larger side; 0 where not known */
    double nominal_thickness, nominal_width; /* in; 0 for own numbers */
    struct lumber_value values[PROPERTY_COUNT];
    bool emin_is_e; /* own material without Emin: E is used, to be said */
    bool has_gravity;
    struct cited gravity;   /* oven-dry specific gravity, of the species also where ungraded */
    bool has_density;       /* own material */
    double density;         /* kg/m3 */
    bool has_shear_modulus; /* own material */
    double shear_modulus;   /* Pa */
};

/* A stick of table lumber. `size` is a table_size index, or -1 for a stick of `thickness` by
 * `width` (m, in either order; only read then). */
struct lumber_from_table {
    int species, grade, size;
    double thickness, width;
    bool stress_rated, finger_jointed;
    bool measured;                /* the two below were given, both */
    double knots, slope_of_grain; /* m, largest knot; rise over run */
};
struct lumber lumber_from_table(struct lumber_from_table stick);

/* A stick of the user's own material: SI, NAN for what is not given (E must be). thickness and
 * width 0 where not known (a section given by area and inertia only). */
struct lumber_from_numbers {
    double thickness, width;
    double values[PROPERTY_COUNT];
    double shear_modulus, density;
    bool finger_jointed;
};
struct lumber lumber_from_numbers(struct lumber_from_numbers stick);

/* "bending strength Fb" and so on; the short symbol "Fb". */
const char *property_words(enum property property);
const char *property_symbol(enum property property);

/* The reference value, Pa, noted with where it comes from; NAN where there is none. */
double lumber_reference(const struct lumber *lumber, enum property property,
                        struct working *working);

/* E' = E x CM and Emin' = Emin x CM (own numbers as given), Pa; notes E, CME, E' or Emin, CME,
 * Emin'. NAN where there is none. */
double lumber_stiffness(const struct lumber *lumber, bool wet, struct working *working);
double lumber_least_stiffness(const struct lumber *lumber, bool wet, struct working *working);
/* G, Pa, for turning: E'/16, or the user's own. */
double lumber_shear_modulus(const struct lumber *lumber, bool wet);

/* kg/m3 for weight, at 15 % moisture dry and 25 % wet; own material as given. False where neither
 * specific gravity nor density is known. */
bool lumber_density(const struct lumber *lumber, bool wet, double *density);
/* kg/m3 at 12 % moisture, for the slip of screws; own material as given. */
bool lumber_slip_density(const struct lumber *lumber, double *density);

/* Torsion constant of a rectangle, m4 (either order of sides):
 * b t^3 (1/3 - 0.21 (t/b)(1 - t^4/(12 b^4))), b the larger. */
double rectangle_torsion(double thickness, double width);

/* True where a finger-jointed stick carries what its joints have no value for: long-standing
 * bending, or any tension. */
bool lumber_unfit_finger_joints(const struct lumber *lumber, bool standing_bending, bool tension);

/* Words for people on how the values were taken ("no grade: taken as the lower of ..."); "" for a
 * graded stick. */
const char *lumber_basis_words(enum lumber_basis basis);

#endif
