/* result/cut_answer.h - what `cut` found: what to buy, how to cut it, what it weighs and costs. SI;
 * prices in whatever money the file is in.
 */
#ifndef RESULT_CUT_ANSWER_H
#define RESULT_CUT_ANSWER_H

#include "frame/frame.h"

struct cut_slant {
    double angle; /* rad off square; 0: square */
    double face;  /* m: how wide the face is on which it shows */
};
struct cut_piece {
    const char *name;              /* "rail-1", "lower/slat-3" */
    int stick;                     /* its kind, also where several are cut together */
    double length;                 /* m, along the middle */
    double needs;                  /* m, long point to long point */
    struct cut_slant slants[2][2]; /* of either end */
    bool measure;                  /* an end meets its host at under 30 degrees: measure it */
};
struct cut_board {
    double stock; /* m */
    const int *pieces;
    size_t count;
    double left;    /* m: stock less trims, less the lengths, less a kerf between two */
    double off_cut; /* m that can still be used: less slanting ends and the last cut; 0: none */
};
struct cut_sticks {   /* what is cut from the same boards */
    const char *name; /* "rail"; "post, rail" where cut together */
    const int *kinds; /* sticks of the frame */
    size_t kind_count;
    const double *stocks; /* m, that were to be had; ascending */
    size_t stock_count;
    bool stock_assumed; /* neither a price nor the user says a length */
    const struct cut_piece *pieces;
    size_t piece_count;
    const struct cut_board *boards;
    size_t board_count;
    size_t bound;      /* boards, at least */
    double least_cost; /* at least; NAN where boards were counted and not cost */
    double cost;       /* of the boards; NAN where not all are priced */
    bool proved;
    const int *too_long; /* pieces that no board holds */
    size_t too_long_count;
};

struct cut_sheet_piece {
    const char *name;      /* "roof", "lower/deck" */
    int sheet;             /* from 1; 0: larger than a sheet */
    double at[2], size[2]; /* m, as it lies: along the sheet's shorter side, along its longer */
    bool turned;
    bool holds_corners; /* the rectangle that holds a panel of another shape */
};
struct cut_sheets {
    int sheet;            /* table_sheet index */
    double width, length; /* m, the shorter side first */
    bool size_assumed;
    bool fluted;
    const struct cut_sheet_piece *pieces;
    size_t piece_count;
    int needed, bound;
    bool proved;
    size_t too_large;
    double cost; /* NAN: no price */
};

struct cut_small {
    const char *key, *words;  /* "screw-8x2in", "screws No. 8 x 2 in" */
    int count, in_box, boxes; /* in_box 0: no box is priced */
    double cost;              /* NAN: no price */
};

struct cut_weight {
    const char *name;                   /* of the part; "" for the whole */
    double dry, after_rain, with_trays; /* kg; with_trays: after rain, full */
    double as_judged;                   /* dry or after rain, as the frame stands */
};

struct cut_cost_line {
    const char *what; /* "rail", "twin-wall-6mm", "screws No. 8 x 2 in" */
    const char *each; /* "8 ft", "4 ft x 8 ft", "box of 100", "" */
    size_t count;
    double price, cost;
};

struct cut_answer {
    const struct frame *frame;
    struct problems problems;
    double kerf, trim;
    const struct cut_sticks *sticks;
    size_t stick_count;
    const struct cut_sheets *sheets;
    size_t sheet_count;
    const struct cut_small *smalls;
    size_t small_count;
    struct cut_weight whole;
    const struct cut_weight *parts;
    size_t part_count;
    struct {
        struct cut_cost_line *items;
        size_t count, capacity;
    } costs;
    double cost; /* of all lines; NAN where nothing is priced */
    struct {     /* texts */
        const char **items;
        size_t count, capacity;
    } unpriced, notes;
};

#endif
