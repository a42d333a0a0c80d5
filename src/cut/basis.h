/* cut/basis.h - the basis of the relaxation's simplex: its inverse, prices and amounts. For src/cut
 * only.
 */
#ifndef CUT_BASIS_H
#define CUT_BASIS_H

#include "cut/relaxation.h"

/* A basis: one column for each row, which is a kind with a demand. Besides the known columns there
 * are -1 - i, what is too much in the i-th row, and -1 - size - i, a board of the i-th kind alone.
 *
 * Where boards are given, each stock has a row too: those boards, all a share of a time, less those
 * that patterns use. -1 - 2 size is that share; a piece alone then takes no board and costs as much
 * as all of them, boards by themselves cost nothing. */
struct basis {
    struct arena *arena;
    const struct kinds *kinds;
    const int *demand;
    const int *boards; /* per stock; NULL: any number */
    struct columns *columns;
    size_t size;
    size_t kind_rows;    /* those of stocks come behind them */
    int64_t boards_cost; /* of the given boards */
    int64_t worth;       /* of a unit of cost */
    long patience;       /* for its knapsacks */
    int *kind;           /* of a row */
    int *row;            /* of a kind; -1 without demand */
    int *alone;          /* pieces on a board of a row's kind alone */
    int *in;             /* column of a place in the basis */
    double *inverse;     /* size x size, rows are places */
    double *shaken;      /* demand, a little more so that no two places tie */
    double *amount;      /* of a place */
    double *price;       /* per row */
    double *entering;
};

/* Boards of one kind each. */
struct basis basis_first(struct arena *arena, const struct kinds *kinds, const int *demand,
                         const int *boards, struct columns *columns);

/* What a column is, where it is no known one. */
bool basis_surplus(const struct basis *basis, int column);
int basis_share(const struct basis *basis);             /* the column of the share of the boards */
int basis_alone(const struct basis *basis, int column); /* its row */
int basis_stock_alone(const struct basis *basis, int row);

/* A new known column. */
int basis_add_column(struct basis *basis, struct pattern pattern);

/* The prices of the rows. */
void basis_price(struct basis *basis);

/* What a column costs beyond what its rows are worth at these prices. */
double basis_beyond(const struct basis *basis, int column);

/* What a board of a stock costs. */
double basis_board_price(const struct basis *basis, size_t stock);

/* How much of each place makes this demand. */
void basis_amounts(const struct basis *basis, const double *demand, double *amount);

/* The inverse anew from the columns, for it gathers rounding; false where they are dependent. */
bool basis_invert(struct basis *basis);

/* Bring in a column; the one that it uses up first goes out. False where there is none. */
bool basis_bring_in(struct basis *basis, int column);

#endif
