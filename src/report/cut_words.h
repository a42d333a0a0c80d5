/* report/cut_words.h - what the answer of `cut` says in words, for its text and its pictures. */
#ifndef REPORT_CUT_WORDS_H
#define REPORT_CUT_WORDS_H

#include "base/text.h"
#include "result/cut_answer.h"

/* "16.00": hundredths, always two. */
const char *money_in_words(struct arena *arena, double amount);

/* "1x2 spruce-pine-fir, ungraded"; own sizes "20 x 90 mm". */
const char *wood_in_words(struct arena *arena, const struct cut_answer *answer, int stick);

/* What is on a board, the longest first: "2 ft 3 in front-1, 3 x 1 ft lower/slat". */
const char *board_in_words(struct arena *arena, const struct cut_answer *answer,
                           const struct cut_sticks *sticks, const struct cut_board *board);

/* The name of a piece; of slats, which are all alike, without their number. */
const char *piece_label(struct arena *arena, const struct cut_piece *piece);

/* How its ends are cut: "both ends at 18.4 deg on the 1-1/2 in face"; "" where both are square. */
const char *ends_in_words(struct arena *arena, const struct cut_answer *answer,
                          const struct cut_piece *piece);

/* "no fewer will do", "at least 4 are needed" */
const char *boards_proof(struct arena *arena, const struct cut_sticks *sticks);
const char *sheets_proof(struct arena *arena, const struct cut_sheets *sheets);

#endif
