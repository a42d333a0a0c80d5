/* cut/basis.h - the basis of the relaxation's simplex: its inverse, prices and amounts. For src/cut
 * only.
 */
#ifndef CUT_BASIS_H
#define CUT_BASIS_H

#include "cut/relaxation.h"

/* A basis: one column for each kind with a demand. Besides the known columns there are -1 - i, what
 * is cut too much of the i-th kind, and -1 - size - i, a board of the i-th kind alone. */
struct basis {
    struct arena *arena;
    const struct kinds *kinds;
    const int *demand;
    struct columns *columns;
    size_t size;
    int64_t worth;   /* of a unit of cost */
    long patience;   /* for its knapsacks */
    int *kind;       /* of a row */
    int *row;        /* of a kind; -1 without demand */
    int *alone;      /* pieces on a board of a row's kind alone */
    int *in;         /* column of a place in the basis */
    double *inverse; /* size x size, rows are places */
    double *shaken;  /* demand, a little more so that no two places tie */
    double *amount;  /* of a place */
    double *price;   /* per row */
    double *entering;
};

/* Boards of one kind each. */
struct basis basis_first(struct arena *arena, const struct kinds *kinds, const int *demand,
                         struct columns *columns);

/* What a column is, where it is no known one. */
bool basis_surplus(const struct basis *basis, int column);
int basis_alone(const struct basis *basis, int column); /* its row */
int basis_stock_alone(const struct basis *basis, int row);

/* A new known column. */
int basis_add_column(struct basis *basis, struct pattern pattern);

/* The prices of the rows. */
void basis_price(struct basis *basis);

/* How much of each place makes this demand. */
void basis_amounts(const struct basis *basis, const double *demand, double *amount);

/* The inverse anew from the columns, for it gathers rounding; false where they are dependent. */
bool basis_invert(struct basis *basis);

/* Bring in a column; the one that it uses up first goes out. False where there is none. */
bool basis_bring_in(struct basis *basis, int column);

#endif
