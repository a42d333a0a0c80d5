/* result/margin_answer.h - what `margin` found: how much of a load until the first check fails. */
#ifndef RESULT_MARGIN_ANSWER_H
#define RESULT_MARGIN_ANSWER_H

#include "result/result.h"

enum margin_load { MARGIN_TRAY, MARGIN_SNOW, MARGIN_WIND, MARGIN_COUNT };

enum margin_reach {
    REACH_NOT_ASKED, /* no such load on this frame */
    REACH_FOUND,     /* the first check is at its limit there */
    REACH_NONE,      /* fails without any of it */
    REACH_BEYOND,    /* nothing fails up to more than there is on earth */
    REACH_UNKNOWN    /* the computation could not be trusted on the way */
};

/* How the ratios of the checks nearest to their limits grow with the load, for a plot. */
struct margin_point {
    double load, ratio;
};
struct margin_curve { /* of one check */
    const char *id, *kind, *words;
    bool beyond;                       /* it ends where so much load is not published */
    const struct margin_point *points; /* each judged; ascending load; none where it has no ratio */
    size_t count;
    double limit_at; /* the load at which its ratio passes 1; NAN: nowhere in the plot */
};
enum { MARGIN_CURVES = 3 };
struct margin_plot {
    double to; /* the load at its right end */
    struct margin_curve curves[MARGIN_CURVES];
    size_t count; /* 0: no plot */
};

struct margin {
    enum margin_reach reach;
    double value;            /* TRAY: times the trays as described; SNOW: Pa on the ground, or of
                                snow as it lies where a depth was typed; WIND: m/s in the terms
                                typed; 0 for REACH_NONE, NAN where not found */
    double as_described;     /* the same of the description; NAN where it gives none */
    const char *first;       /* id of the check that fails first; "" where none */
    const char *first_words; /* "lower shelf, front-1 (sag with creep)" */
    struct margin_plot plot; /* filled by margin_curves alone */
};

struct margin_answer {
    const struct frame *frame;
    enum verdict verdict; /* of the frame as described */
    size_t not_covered;   /* checks without a published rule: left out */
    struct margin loads[MARGIN_COUNT];
    struct {
        const char **items;
        size_t count, capacity;
    } cautions;
    struct problems problems;
    const char *trouble; /* why nothing was found; NULL where something was */
};

#endif
