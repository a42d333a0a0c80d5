/* report/words.h - the sentences about checks: which of a builder's questions each one answers, and
 * its two numbers and its ratio in words.
 */
#ifndef REPORT_WORDS_H
#define REPORT_WORDS_H

#include "base/arena.h"
#include "result/result.h"

#include <stdbool.h>
#include <stddef.h>

/* The questions in the order in which they are answered; the last one takes every other kind. */
int question_count(void);
const char *question_words(int question); /* "Do the shelves hold?" */
int question_of(const char *kind);        /* 0 to question_count() - 1 */

/* "sags 0.21 in, may sag 0.15 in"; without a limit the demand alone; without numbers what governs.
 * In the file's units. */
const char *numbers_in_words(struct arena *arena, const struct check *check,
                             enum unit_system units);

/* Whether a quantity as printed ("0 in") has rounded away: no digit but 0. */
bool prints_as_nothing(const char *printed);

/* Up to the limit a share of it, "62 %"; over it "1.39 times"; "" where not covered. */
const char *ratio_in_words(struct arena *arena, const struct check *check);

/* The same in a sentence: "62 % of its limit", "1.39 times its limit". Not for not covered. */
const char *share_of_limit(struct arena *arena, const struct check *check);

/* What is checked, without numbers: "bending with compression", "sag". */
const char *subject_in_words(const struct check *check);

const char *verdict_in_words(enum verdict verdict); /* "ok" "close" "no rule" "fails" */

/* What the letters in the names of the built-in combinations mean. */
#define COMBINATION_LETTERS                                                                        \
    "D is its own weight, T the trays, S snow, W wind, push somebody leaning on it"

/* Said at the end of every help text and of every answer that is not about a whole frame. */
extern const char SAFETY_LINE[];

#endif
