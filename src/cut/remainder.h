/* cut/remainder.h - what a search has left to cut, and what it may still lose. For src/cut only. */
#ifndef CUT_REMAINDER_H
#define CUT_REMAINDER_H

#include "cut/relaxation.h"

/* A worth of each kind such that no board holds more than is full: what a plan of a given cost, or
 * with given boards, may lose of it is known. */
struct measure {
    const int64_t *worth;
    double unit;         /* of worth: what a unit of cost holds */
    int64_t *full;       /* per stock */
    double *densest;     /* worth for each unit of size, of this kind and those behind it */
    int64_t *all_behind; /* worth of all that is left of this kind and those behind it */
    int64_t loss;        /* that may still be made */
};
enum { BY_WORTH, BY_SIZE, MEASURES };

/* One way to cut the next board. */
struct candidate {
    double lost; /* sum over the measures, in units of cost */
    int stock;
    size_t number; /* in the order found */
    int *take;     /* per kind */
};

struct remainder {
    struct arena *arena;
    const struct kinds *kinds;
    int *left; /* per kind, and behind them boards left per stock where those are given */
    bool given_boards;
    int64_t cost_left;
    struct measure measures[MEASURES];
};

/* `boards` per stock, or NULL: any number. */
struct remainder remainder_new(struct arena *arena, const struct kinds *kinds, const int *demand,
                               int64_t cost, const int *boards);

/* Measure by the worths of a relaxation of what is left. */
void remainder_measure(struct remainder *remainder, const struct relaxation *relaxation);

/* Cut a board (sign 1), or undo that (-1). */
void remainder_cut(struct remainder *remainder, const struct candidate *candidate, int sign);

/* Boards left per stock; NULL: any number. */
const int *remainder_boards(const struct remainder *remainder);

/* May a board of this stock still be bought? */
bool remainder_has(const struct remainder *remainder, int stock);

/* More is lost than may be, whatever follows. */
bool remainder_lost(const struct remainder *remainder);

#endif
