/* batten.h - check a light wood frame from another program.
 *
 * One call reads a description (YAML, as README.md tells) and judges it; the rest asks for what was
 * found. Every number is SI: m, N, N-m, Pa, rad, kg. Texts are UTF-8, end with 0, and belong to the
 * answer: they live until batten_free(). Nothing is printed, no file is touched and no setting of
 * the process stays changed: the error handler of the GNU Scientific Library is set aside during
 * batten_check() and put back, so that no other thread may set it meanwhile. Answers do not share
 * anything with each other.
 *
 * What it says is a sanity check for sound wood and careful work, not an engineer's approval: show
 * the cautions with whatever you show.
 *
 * To build:  cc example.c $(pkg-config --cflags --libs batten)
 */
#ifndef BATTEN_H
#define BATTEN_H

#include <stdbool.h>
#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

/* The same numbers as the exit status of the program. */
enum batten_outcome {
    BATTEN_HOLDS = 0,         /* every check passes */
    BATTEN_DOES_NOT_HOLD = 1, /* a check fails, or no published rule covers it */
    BATTEN_WRONG_INPUT = 2,   /* the description is wrong: see the problems; nothing was checked */
    BATTEN_FOLDS = 3,         /* the frame folds or tips over as described */
    BATTEN_TROUBLE = 4        /* the numbers could not be trusted */
};

/* The answer about one frame. */
struct batten;

/* Read and judge `length` bytes. NULL where memory ran out. The bytes are not needed afterwards. */
struct batten *batten_check(const char *description, size_t length);

/* Give it back with all its texts. NULL is fine. */
void batten_free(struct batten *answer);

enum batten_outcome batten_outcome_of(const struct batten *answer);

/* "ok", "close", "not-covered", "fails", "folds", "failed"; "" for a wrong description. */
const char *batten_verdict(const struct batten *answer);

/* What `batten check` prints, and the same with --json (for a wrong description its errors). */
const char *batten_text(const struct batten *answer);
const char *batten_json(const struct batten *answer);

/* What each check found, worst first. */
struct batten_finding {
    const char *id;          /* "sag/lower/rail-1"; stays the same from version to version */
    const char *kind;        /* "sag" */
    const char *where;       /* "lower/rail-1" */
    const char *combination; /* of loads, "D+T"; "" where none */
    const char *unit;        /* of demand and limit: m N N-m Pa rad kg 1 */
    const char *verdict;     /* "ok", "close", "not-covered", "fails" */
    const char *advice;      /* what to do where it is not ok; "" */
    const char *source;      /* "NDS 2018 3.9.2" */
    double demand, limit;    /* NaN where there is none */
    double ratio;            /* demand / limit; NaN where no published rule covers it */
};
size_t batten_finding_count(const struct batten *answer);
/* False past the last one: `finding` is then left alone. */
bool batten_finding_at(const struct batten *answer, size_t index, struct batten_finding *finding);

/* What was assumed and what was not checked. NULL past the last one. */
size_t batten_caution_count(const struct batten *answer);
const char *batten_caution_at(const struct batten *answer, size_t index);

/* What is wrong with the description, in the order of its lines. */
struct batten_problem {
    int line, column;    /* from 1; 0 where there is no place */
    const char *key;     /* "members.rail-1.from"; "" */
    const char *message; /* what was found, what was expected, what was perhaps meant */
};
size_t batten_problem_count(const struct batten *answer);
bool batten_problem_at(const struct batten *answer, size_t index, struct batten_problem *problem);

/* "0.1.0" */
const char *batten_version(void);

#ifdef __cplusplus
}
#endif

#endif
