/* check/sheet.h - a sheet under weather: what presses on it, how far it may span, and the pull on
 * one of its screws.
 *
 * Pressures are square to the sheet, Pa. The span table is tables/sheet-spans.tsv: the row of the
 * next higher load holds; nothing is read between rows or past them.
 */
#ifndef CHECK_SHEET_H
#define CHECK_SHEET_H

#include "check/dowel.h"
#include "check/rating.h"

/* What acts on a panel in one combination. */
struct sheet_press {
    double weight;                            /* Pa, its own, on its face */
    double snow;                              /* Pa of the level area, the most in any way */
    double wind;                              /* Pa, velocity pressure q */
    double slope;                             /* rad, from level */
    struct cited in, out, edge;               /* net coefficients: pressed in, sucked out, sucked
                                                 out where its screws are */
    double with_weight, with_snow, with_wind; /* factors of the combination */
};

struct sheet_span_input {
    const char *sheet; /* "twin-wall-6mm" */
    double span;       /* m between the sticks that bear it */
    double height;     /* m above the ground of a roof's highest edge; 0 of a wall */
    struct sheet_press press;
};
struct rating check_sheet_span(const struct sheet_span_input *input, struct working *working);

struct sheet_screw_input {
    struct sheet_press press;
    double spacing;            /* m between screws along a stick */
    double width;              /* m of sheet that hangs on that stick */
    const struct dowel *dowel; /* its length set */
    struct dowel_layer side; /* the sheet; `steel` stands for one that has no value under a head */
    struct dowel_layer main;
    struct dowel_service service;
};
struct rating check_sheet_screw(const struct sheet_screw_input *input, struct working *working);

/* Pull on one screw, N; nothing pulls where it is not over 0. */
double sheet_screw_pull(const struct sheet_screw_input *input);

#endif
