/* report/cut_rows.h - what `cut` found as rows of cells, for its text and for the page.
 */
#ifndef REPORT_CUT_ROWS_H
#define REPORT_CUT_ROWS_H

#include "base/arena.h"
#include "result/cut_answer.h"

enum { CUT_COLUMNS = 5 };
struct cut_row {
    const char *cells[CUT_COLUMNS];
};
struct cut_rows {
    int columns;
    struct cut_row *items;
    size_t count, capacity;
};

/* "4 boards and 1 sheet, 77.60; weighs 90 lb."; and whether pieces come out of nothing, or "". */
const char *cut_summary(struct arena *arena, const struct cut_answer *answer);
const char *cut_left_out(struct arena *arena, const struct cut_answer *answer);

/* How many, of which length, what, price of each, cost; the total last where there is one. */
struct cut_rows cut_buying(struct arena *arena, const struct cut_answer *answer);
const char *cut_buying_remark(const struct cut_answer *answer); /* "" none */

/* What, dry, after rain, full of trays; the first row says so. */
struct cut_rows cut_weights(struct arena *arena, const struct cut_answer *answer);
const char *cut_weights_remark(const struct cut_answer *answer);

#endif
