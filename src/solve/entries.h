/* solve/entries.h - a symmetric matrix by its numbers that are not zero, for products. */
#ifndef SOLVE_ENTRIES_H
#define SOLVE_ENTRIES_H

#include "solve/sparse.h"

struct entry {
    int row, column; /* row >= column */
    double value;
};

struct entries {
    size_t unknowns, count;
    struct entry *items;
};

struct entries entries_of(struct arena *arena, const struct sparse *matrix);

/* out = A x. */
void entries_multiply(const struct entries *entries, const double *x, double *out);

#endif
