/* working/working.h - the working of a check: steps that a person redoes with a pocket calculator.
 *
 * A step is a symbol, what it is in words, a formula over earlier symbols (NULL for a given value),
 * the value in SI and its kind, and its source. The reporter prints the formula and then the same
 * formula with each earlier symbol replaced by its number, so the words and the arithmetic cannot
 * drift apart: a formula may use any symbol noted before it, numbers, + - * / ^ ( ) , sqrt min max,
 * sin cos (of degrees), and the constants it needs. Formulas are written for units that fit
 * together (in, lb, psi or mm, N, MPa).
 */
#ifndef WORKING_WORKING_H
#define WORKING_WORKING_H

#include "base/arena.h"
#include "tables/tables.h"
#include "units/quantity.h"

struct step {
    const char *symbol;  /* "Fb'", "CL", "RB" */
    const char *words;   /* "bending strength after all factors" */
    const char *formula; /* "Fb * CD * CM * CL"; NULL where the value is given */
    double value;        /* SI */
    enum quantity kind;
    const char *source; /* "NDS 2018 3.3.3"; "" where it is plain arithmetic */
    enum mark mark;     /* of the source */
    bool has_mark;      /* false: arithmetic or the user's own number */
};

struct working {
    struct arena *arena;
    struct step *items;
    size_t count, capacity;
};

/* All take a NULL working (nothing is noted, for speed) and return the value. Strings are kept, not
 * copied: literals or arena text. */
double working_given(struct working *working, const char *symbol, const char *words, double value,
                     enum quantity kind); /* the user's, or a result of the solution */
double working_cited(struct working *working, const char *symbol, const char *words,
                     struct cited cited, enum quantity kind);
double working_step(struct working *working, const char *symbol, const char *words,
                    const char *formula, double value, enum quantity kind, const char *source);
/* A heading line between steps. */
void working_heading(struct working *working, const char *words);

#endif
