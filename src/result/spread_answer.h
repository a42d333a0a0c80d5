/* result/spread_answer.h - what `check --spread` found: how many builds of a frame pass each check.
 */
#ifndef RESULT_SPREAD_ANSWER_H
#define RESULT_SPREAD_ANSWER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum spread_kind {
    SPREAD_STIFFNESS, /* E of a stick */
    SPREAD_STRENGTH,  /* of a stick, all its strengths together */
    SPREAD_JOINTS,    /* stiffness of an entry of connections: */
    SPREAD_TRAYS,     /* weight on a shelf */
    SPREAD_KIND_COUNT
};
extern const char *const SPREAD_KIND_NAMES[SPREAD_KIND_COUNT]; /* "stiffness" ... */

struct spread_input {
    enum spread_kind kind;
    int index;      /* of the member, connection or shelf */
    const char *of; /* its name */
};

enum { SPREAD_MATTERS = 3, SPREAD_FEWEST_TO_RANK = 10 };
struct spread_matter {
    size_t input;
    double rank_correlation; /* Spearman, of the input and the ratio of the check */
};

struct spread_check {
    const char *id, *kind, *place;
    size_t failed;      /* builds in which it fails, or in which the frame does not stand */
    size_t not_covered; /* builds in which no published rule covers it */
    bool changes;       /* its ratio is not the same in all builds */
    struct spread_matter matters[SPREAD_MATTERS]; /* the strongest first */
    size_t matter_count; /* those that can be told from chance (spread/rank.h) */
    double *ratios;      /* per build; INFINITY: not covered, or does not stand; 0: not there */
};

struct spread_answer {
    size_t builds;
    uint32_t seed;
    size_t failed; /* builds in which any check fails */
    size_t fell;   /* of those: it folds, tips over, or could not be computed */
    const struct spread_input *inputs;
    size_t input_count;
    struct {
        struct spread_check *items;
        size_t count, capacity;
    } checks; /* most failures first, then by id */
};

#endif
