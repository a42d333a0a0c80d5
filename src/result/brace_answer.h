/* result/brace_answer.h - what `brace` found, for the reporters: numbers in SI. */
#ifndef RESULT_BRACE_ANSWER_H
#define RESULT_BRACE_ANSWER_H

#include "result/result.h"

struct soft_direction {
    int axis;           /* 0 x (left-right), 1 y (front-back) */
    double lean, limit; /* m, at the joint that leans most for its limit */
};

struct brace_choice {
    int from, to;       /* joints */
    const char *where;  /* "front, lower bay" */
    int stops;          /* the motion that it stops; -1: it stiffens a soft direction */
    double force;       /* N, the larger pull or push in it under the pushes */
    double screws_hold; /* N, of it that the screws at its worse end hold; NAN: not published */
};

struct lean_row {
    int axis;
    double limit; /* m, at the joint that governs without panels */
    /* movement at the joint that is worst, m: joints at low, middle and high stiffness; NAN where
     * the frame folds */
    double without_panels[3], with_panels[3];
    double with_braces;                        /* middle; NAN where there are none */
    bool over_without, over_with, over_braced; /* at the middle */
};

struct alternative { /* another way than diagonals, tried out */
    const char *words;
    int ways;       /* left */
    double lean[2]; /* m for x, y at middle stiffness; NAN: folds, or no push that way */
    bool over[2];
};

struct sheet_remark {
    int panel;
    bool counts;
    const char *reason; /* why it does not brace; "" where it does */
    bool clear;         /* a clear sheet: never counted for the verdict */
};

struct brace_answer {
    const struct frame *frame;
    int ways, ways_with_panels;
    struct motion *motions; /* of the frame without clear sheets */
    size_t motion_count;
    struct soft_direction soft[2];
    size_t soft_count;
    int fewest; /* -1: no set of braces found */
    bool proved;
    struct brace_choice *braces;
    size_t brace_count;
    const char *brace_stick; /* kind of stick the braces are taken from */
    struct lean_row lean[2];
    size_t lean_count;
    struct alternative *alternatives;
    size_t alternative_count;
    struct sheet_remark *sheets;
    size_t sheet_count;
    struct {
        const char **items;
        size_t count, capacity;
    } notes;
    struct problems problems; /* of the description: status 2 */
};

#endif
