/* cut/relaxation.h - the linear relaxation of the cutting problem: patterns may be cut a fraction
 * of a time.
 *
 * Gilmore and Gomory (1961, 1963): a revised simplex that takes a new pattern from a knapsack
 * problem whenever one is worth more than its board costs. Only patterns that the demand allows are
 * taken ("proper" ones), which makes the bound sharper. The bound does not trust the floating
 * numbers: the worths are rounded to whole numbers, the knapsacks solved exactly with them, and no
 * set of boards can then cost less than their sum says.
 *
 * Where boards are given, so many of each stock, what is least is the share of all of them that
 * does. Worths come of that too, and what boards of each stock hold of them: where the pieces are
 * worth more than the given boards hold, these are too few. For src/cut only.
 */
#ifndef CUT_RELAXATION_H
#define CUT_RELAXATION_H

#include "cut/kinds.h"

enum { RELAXED_KINDS_MOST = 250 }; /* more kinds with a demand take too long */

/* Patterns found so far; later relaxations of parts of the demand start with them. */
struct columns {
    struct pattern *items;
    size_t count, capacity;
};

struct relaxation {
    bool solved;
    size_t count; /* columns in use */
    int *column;  /* into the columns */
    double *times;
    int64_t *worth;      /* per kind; 0 without demand */
    int64_t scale;       /* worth of a board for each unit of its cost: none holds more */
    int64_t bound;       /* of the cost */
    const int64_t *most; /* of worth on a board, per stock; 0 where none is given */
    bool too_few;        /* boards were given, and do not do */
};

/* `boards` per stock, or NULL: any number. Not solved where there are too many kinds; `bound` is
 * then 0. */
struct relaxation relax(struct arena *arena, const struct kinds *kinds, const int *demand,
                        const int *boards, struct columns *columns);

#endif
