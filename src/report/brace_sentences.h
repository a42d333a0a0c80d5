/* report/brace_sentences.h - the answer of `brace` sentence by sentence, for its text and for the
 * page. */
#ifndef REPORT_BRACE_SENTENCES_H
#define REPORT_BRACE_SENTENCES_H

#include "result/brace_answer.h"

/* How it folds and leans, and whether diagonals stop that. */
const char *brace_summary(struct arena *arena, const struct brace_answer *answer);

/* In how many ways it can fold, and what its sheets stop. */
const char *brace_ways(struct arena *arena, const struct brace_answer *answer);

/* Where the k-th diagonal goes, how long it is, what it stops and carries; and about all of them.
 */
const char *brace_place(struct arena *arena, const struct brace_answer *answer, size_t k);
const char *brace_remark(struct arena *arena, const struct brace_answer *answer);

/* Whether another way is enough. */
const char *alternative_outcome(struct arena *arena, const struct alternative *other,
                                enum unit_system units);

/* Whether a sheet counts, and why clear ones are left out; "" where none is. */
const char *sheet_in_words(struct arena *arena, const struct sheet_remark *sheet);
const char *clear_sheets_in_words(const struct brace_answer *answer);

#endif
