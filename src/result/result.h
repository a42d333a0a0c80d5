/* result/result.h - everything a run found, for the reporters: numbers in SI, words without
 * numbers.
 *
 * The judge fills it, the reporters only read it. Not known is NAN for numbers (printed as null)
 * and VERDICT_NOT_COVERED for a check.
 */
#ifndef RESULT_RESULT_H
#define RESULT_RESULT_H

#include "frame/frame.h"
#include "working/working.h"

#include <stdbool.h>
#include <stddef.h>

/* ORDER VERDICT: from good to bad, so that the worst is the largest. */
enum verdict {
    VERDICT_OK,
    VERDICT_CLOSE,
    VERDICT_NOT_COVERED,
    VERDICT_FAILS,
    VERDICT_FOLDS, /* of the whole frame only */
    VERDICT_FAILED /* the computation could not be trusted */
};
const char *verdict_name(enum verdict verdict); /* "ok" "close" "not-covered" "fails" ... */

struct check {
    const char *id;          /* "sag/lower/rail-1", stable */
    const char *kind;        /* "sag" */
    const char *where;       /* "lower/rail-1" */
    const char *combination; /* "D+T"; "" where none */
    double demand, limit;    /* SI, of `quantity`; NAN where there is none */
    enum quantity quantity;
    double ratio; /* demand / limit; NAN where not covered */
    enum verdict verdict;
    bool beyond;         /* not covered because so much load is not published */
    const char *source;  /* "NDS 2018 3.9.2" */
    const char *place;   /* in words: "lower shelf, rail-1" */
    const char *governs; /* which part of the check: "bending with compression"; "" */
    const char *advice;  /* what to do when it is not ok; "" */
    /* a number worth saying beside it (slip of the joints beside sag); words "" where none */
    struct {
        const char *words;
        double value;
        enum quantity kind;
    } beside;
    struct working *working; /* NULL unless asked for */
};

/* Where it is, in words: "lower shelf, rail-1"; and the same with what governs: "... (sag with
 * creep)". */
const char *check_place(const struct check *check);
const char *check_words(struct arena *arena, const struct check *check);

struct stations { /* forces along one member; SI, signs as in the contract */
    size_t count;
    double *at; /* m from the from-end */
    double *N, *Vy, *Vz, *T, *My, *Mz;
};

struct case_result {
    const char *name;
    bool solved;
    double (*joints)[6];      /* per frame joint: ux uy uz rx ry rz */
    double (*reactions)[6];   /* per frame support, in file order */
    struct stations *members; /* per frame member */
};

struct combination_part {
    const char *name; /* of the case */
    double factor;
};
struct combination_result {
    const char *name;
    const struct combination_part *parts;
    size_t part_count;
    double duration_factor;
    bool solved;
    double buckling_factor, buckling_factor_crept; /* NAN: none, or not computed */
};

struct joint_move {
    int joint;
    double by[3];
};
struct motion { /* one way to fold */
    const char *sentence;
    const struct joint_move *moves;
    size_t move_count;
    bool tightens; /* of first order only: the sticks stiffen it as soon as it moves */
    bool tips;     /* no way to fold: it falls off its feet */
};
struct folding {
    bool known;
    int ways, ways_with_panels;
    bool self_stress_known;
    int self_stress;
    const struct motion *motions;
    size_t motion_count;
};

struct bent_stick { /* how the axis of one member has moved: first order, middle stiffness */
    size_t count;
    double *at;      /* m from the from-end, ascending */
    double (*by)[3]; /* m, global directions */
};
struct bent {                /* the frame under one combination, upright */
    const char *combination; /* NULL: not asked for, or it could not be solved */
    const struct bent_stick *members;
    double largest; /* m: largest movement of any station */
};

struct spread_answer;

struct result {
    const struct frame *frame; /* NULL where the description had problems */
    enum verdict verdict;
    int stopped_at; /* 0: all was judged; else the stage that failed (judge/judge.h) */
    const char *basis;
    struct {
        struct check *items;
        size_t count, capacity;
    } checks; /* sorted as in the contract */
    struct {
        struct case_result *items;
        size_t count, capacity;
    } cases;
    struct {
        struct combination_result *items;
        size_t count, capacity;
    } combinations;
    struct folding folding;
    struct bent bent;
    double backward_error, equilibrium_error; /* NAN before anything was solved */
    struct problems problems; /* of the description, found only when it was solved: status 2 */
    const struct spread_answer *spread; /* NULL: not asked for */
    const char *trouble;                /* VERDICT_FAILED: why it could not be trusted; else NULL */
    struct {
        const char **items;
        size_t count, capacity;
    } cautions;
};

#endif
