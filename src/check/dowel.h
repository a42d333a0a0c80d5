/* check/dowel.h - what one screw, nail, lag or bolt holds in one shear plane (NDS 2018 chapters 11
 * and 12): sideways (yield limit equations), pulled out, pulled through, and both at once.
 *
 * `side` is the member under the head, `main` the one that takes the point. Lengths m, forces N,
 * stresses Pa, angles rad. Allowable stress design: values are what may act, not what breaks.
 * Nothing here is extrapolated: what has no published value is NAN, and `..._missing` says why.
 *
 *   Z' = Z CD CM Ct Ceg Ctn       Z: the least of the six modes
 *   W' = W CD CM Ct Ceg Ctn       times the thread (nail: the length) in the main member
 *   WH' = WH CD CM Ct
 *
 * Cg and Cdelta are 1: one fastener, distances as dowel_spacing() asks for. Ct is 1: no input names
 * heat.
 */
#ifndef CHECK_DOWEL_H
#define CHECK_DOWEL_H

#include "tables/fasteners.h"
#include "working/working.h"

struct dowel {
    enum dowel_kind kind;
    enum nail_kind nail;
    const char *size;  /* "8", "10d", "1/4" */
    struct cited D;    /* nominal diameter */
    struct cited root; /* of the thread; = D for nails and bolts: goes into the yield equations */
    struct cited head; /* diameter; value NAN where the tables have none */
    struct cited Fyb;  /* bending yield strength, by D */
    double length;     /* with the point; 0: not set */
    double thread;     /* from the point; the whole length for nails */
    double tip;        /* E, the tapered point; 0 for bolts */
};
/* Sizes as in tables/fasteners.h. Nails come with their length; the others take theirs from
 * dowel_set_length, which also sets the thread. False where the tables do not know the size. */
bool dowel_find(enum dowel_kind kind, enum nail_kind nail, const char *size, struct dowel *out);
/* By nominal diameter. Of nails of one thickness (10d, 12d) the shorter. */
bool dowel_of_diameter(enum dowel_kind kind, enum nail_kind nail, double diameter,
                       struct dowel *out);
void dowel_set_length(struct dowel *dowel, double length);

struct dowel_layer {
    double thickness;     /* along the fastener; INFINITY allowed for the main member */
    struct cited gravity; /* specific gravity; source "" where it is the user's own number */
    double angle;         /* between load and grain; counts from 1/4 in of diameter on */
    bool end_grain;       /* main: the fastener runs along the grain; not read of the side */
    bool steel;           /* side: a steel plate; gravity is not read then */
};

struct dowel_service {
    bool wet;               /* over 19 % moisture in service; smooth nails count as wetting and
                               drying in turn */
    enum duration duration; /* of the shortest load in the combination */
    bool toe_nailed;        /* driven at a slant; lengths are then the caller's */
};

/* ORDER YIELD MODE */
enum yield_mode {
    YIELD_IM,
    YIELD_IS,
    YIELD_II,
    YIELD_IIIM,
    YIELD_IIIS,
    YIELD_IV,
    YIELD_MODE_COUNT
};
const char *yield_mode_name(enum yield_mode mode);  /* "Im" "Is" "II" "IIIm" "IIIs" "IV" */
const char *yield_mode_words(enum yield_mode mode); /* "it bends twice" */

struct dowel_values {
    double modes[YIELD_MODE_COUNT]; /* reference, N; NAN where there are none */
    int governs;                    /* enum yield_mode; -1 where there is none */
    double penetration;             /* in the main member, with the point */
    double penetration_counted;     /* of it, against the next: lags leave the point out */
    double penetration_needed; /* 6D screws and nails, 4D lags; bolts: all of the main member */
    bool penetrates;
    double out_by;            /* how far the point comes out of the main member; 0 else. Bolts: what
                                 is left for washers and nut */
    double lateral_reference; /* Z, for the bearing lengths as they are; also where it does not
                                 reach deep enough */
    double lateral;           /* Z'; NAN where it does not reach deep enough */
    double withdrawal_per_length; /* W, N/m, reference; 0 in end grain (lags: side-grain value) */
    double withdrawal_length;     /* thread (nails: length) in the main member */
    double withdrawal;            /* W' x length; 0 in end grain for screws and nails; NAN: bolts */
    double pull_through;          /* WH'; INFINITY through steel */
    double axial; /* the lesser of the two; 0 where withdrawal is; NAN where either is not known */
    double lateral_factor, withdrawal_factor, pull_factor; /* products of the adjustment factors */
    /* Why there is none; "" where there is. Strings of the program. */
    const char *lateral_missing, *withdrawal_missing, *pull_missing;
};

/* All of it; `working` may be NULL. The dowel has its length set. */
void dowel_values(const struct dowel *dowel, const struct dowel_layer *side,
                  const struct dowel_layer *main, const struct dowel_service *service,
                  struct working *working, struct dowel_values *out);

/* What may act at `angle` between the wood's surface (0: all sideways) and the load (pi/2: all
 * pull), NDS 2018 12.4: screws and lags by Hankinson, nails by the straight form. An axial value of
 * 0 leaves 0 wherever there is any pull; INFINITY is no limit. NAN for bolts under any pull. */
double dowel_combined(enum dowel_kind kind, double axial, double lateral, double angle);

/* ---- advice ---- */

/* Lead holes by the specific gravity of the wood. 0: none needed. Nails: the most that may be
 * bored. Bolts: the hole. */
struct dowel_hole {
    double shank;                     /* where the smooth part lies */
    double thread_least, thread_most; /* where the thread lies; equal where one number is given */
    struct cited source;              /* of the shares; its value is not used */
};
struct dowel_hole dowel_lead_hole_withdrawal(const struct dowel *dowel, double gravity);
struct dowel_hole dowel_lead_hole_lateral(const struct dowel *dowel, double gravity);

/* Distances that keep wood from splitting (under 1/4 in: recommended; from there on: what the full
 * value asks for). */
struct dowel_spacing {              /* ORDER SPACING */
    double edge, edge_loaded;       /* loaded: the edge that the load pushes towards */
    double end_pull, end_push;      /* to the end that the load pulls towards, away from */
    double row_along, row_across;   /* in a row along, across the grain */
    double between_rows, staggered; /* rows beside each other */
    struct cited source;            /* its value is not used */
};
struct dowel_spacing dowel_spacing(const struct dowel *dowel, bool prebored);

#endif
