/* loads/loads.h - what pulls and pushes on the frame: load sets, cases and combinations.
 *
 * A set holds loads that always act together (self weight, the long-standing trays, ...). A case is
 * a sum of sets under the name that the file and the outputs use; a combination is a sum of cases
 * with factors and one load duration. SI units, global directions.
 */
#ifndef LOADS_LOADS_H
#define LOADS_LOADS_H

#include "model/model.h"

struct segment_load {
    int segment;
    double a, b;     /* m from the segment's start; a = b: one force at a */
    double force[3]; /* N/m, or N */
};

struct load_set {
    bool present;
    bool leans;          /* weight that a frame out of plumb carries along */
    double (*joints)[6]; /* per joint: N and N-m */
    struct {
        struct segment_load *items;
        size_t count, capacity;
    } on_segments;  /* by segment, then by place */
    size_t *first;  /* of segment s: items[first[s]] ... items[first[s + 1] - 1] */
    double largest; /* N: largest single load, for what counts as small */
};

/* ORDER SETS: the trays that stand long and the others are apart, because only the first creep. */
enum { SET_SELF, SET_TRAY_LONG, SET_TRAY_SHORT, SET_PUSH_X, SET_PUSH_Y, SET_FIRST_OTHER };

struct load_case {
    const char *name;
    const char *variant; /* "out" of wind-left/out; "" for the first of its name */
    int frame_case;
    int sets[2];
    int set_count;
};

struct combination_term {
    int load_case; /* index into cases */
    double factor;
};

struct load_combination {
    const char *name;
    struct combination_term *terms;
    size_t term_count;
    enum duration duration;
    double short_trays; /* share of the trays that stand shortly: 0.75 beside snow or wind */
    bool out_of_plumb;  /* carries 1.5 % of its vertical loads sideways, in the worst direction */
};

/* Shelves that are not all full (loads/patterns.h): what it replaces are the trays. */
struct load_pattern {
    const char *words; /* "trays on the upper shelf alone" */
    int sets[2];       /* long-standing trays, the others; -1 none */
};

/* One shelf as loaded. */
struct shelf_loading {
    double start, end;   /* m along the first rail's axis: the length common to all rails */
    double direction[3]; /* along the rails */
    double width;        /* m over the outer faces of the outer rails: the slats' length */
    double *gaps;        /* m between neighbouring rail axes, rail_count - 1 */
    double *shares;      /* of the shelf's load, per rail; sum 1 */
    double deck;         /* N: slats, sheet or weight of the deck */
    double trays;        /* N */
};

struct weather;

struct loads {
    const struct model *model;
    struct load_set *sets;
    size_t set_count;
    struct load_case *cases;
    size_t case_count;
    struct load_combination *combinations;
    size_t combination_count;
    struct shelf_loading *shelves; /* per frame shelf */
    const struct weather *weather; /* loads/weather.h */
    struct load_pattern *patterns;
    size_t pattern_count;
    int first_pattern_set; /* sets from here on belong to patterns, and to no case */
    struct {
        const char **items;
        size_t count, capacity;
    } cautions;
};

struct loads *loads_build(struct arena *arena, const struct model *model);

/* Downward load of a set, N. */
double loads_weight(const struct loads *loads, int set);

/* Sum of the factors with which a combination takes a case of the frame (CASE_TRAY ...). */
double loads_case_factor(const struct loads *loads, int combination, int frame_case);

/* Factor of the trays of a shelf by how long they stand, and of a set beside that of its case. */
double loads_tray_factor(const struct loads *loads, int combination, bool short_standing);
double loads_set_share(const struct load_combination *in, int set);

/* The most snow on a shelf in any way to lie, N, as the combination takes snow. */
double loads_shelf_snow(const struct loads *loads, int combination, size_t shelf);

/* Add a load of the file to a set. */
void loads_explicit(struct arena *arena, const struct model *model, struct load_set *set,
                    const struct load *load);

/* Add one load on a member, `from` to `to` metres along it (equal: one force), cut at the joints.
 */
void loads_on_member(struct arena *arena, const struct model *model, struct load_set *set,
                     int member, double from, double to, const double force[3]);

#endif
