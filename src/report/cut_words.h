/* report/cut_words.h - what the answer of `cut` says in words, for its text and its pictures. */
#ifndef REPORT_CUT_WORDS_H
#define REPORT_CUT_WORDS_H

#include "base/text.h"
#include "result/cut_answer.h"

/* "16.00": hundredths, always two. */
const char *money_in_words(struct arena *arena, double amount);

/* "2 ft 3-1/2 in"; "4 ft x 8 ft" */
const char *cut_length_words(struct arena *arena, const struct cut_answer *answer, double length);
const char *cut_size_words(struct arena *arena, const struct cut_answer *answer, double a,
                           double b);

/* "1/8 in": thirty-seconds and sixty-fourths too; other widths in decimals. */
const char *kerf_in_words(struct arena *arena, const struct cut_answer *answer);

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

/* "at least 4: no fewer will do", "at least 3: not proved to be the fewest" */
const char *boards_proof(struct arena *arena, const struct cut_sticks *sticks);
const char *sheets_proof(struct arena *arena, const struct cut_sheets *sheets);

/* ---- its sentences, for text and page (report/cut_plan_text.c) ---- */

/* "lengths to the nearest mm; a saw cut takes 3.2 mm" */
const char *cut_measured_words(struct arena *arena, const struct cut_answer *answer);

/* "rail: 3 boards, at least 3: no fewer will do"; of boards from `from` on `count` read alike. */
const char *cut_sticks_heading(struct arena *arena, const struct cut_sticks *sticks);
const char *cut_board_sentence(struct arena *arena, const struct cut_answer *answer,
                               const struct cut_sticks *sticks, size_t from, size_t *count);
const char *cut_too_long_sentence(struct arena *arena, const struct cut_answer *answer,
                                  const struct cut_sticks *sticks, size_t number);

const char *cut_sheets_heading(struct arena *arena, const struct cut_sheets *sheets);
const char *cut_sheets_remark(const struct cut_sheets *sheets); /* "" none */
const char *cut_sheet_sentence(struct arena *arena, const struct cut_answer *answer,
                               const struct cut_sheets *sheets,
                               const struct cut_sheet_piece *piece);

/* "4 x 2 ft: left-1, right-1", the longest first. */
#define CUT_ORDER "Set a stop and cut all of one length together, the longest first"
const char **cut_batches(struct arena *arena, const struct cut_answer *answer,
                         const struct cut_sticks *sticks, size_t *batch_count);

/* Off-cuts worth keeping, a line for each kind of stick or sheet that leaves some: "rail: 2 x 3 ft,
 * 1 ft 4 in". Of a sheet the larger strip over its whole width or length. (report/cut_left.c) */
const char *cut_left_heading(struct arena *arena, const struct cut_answer *answer);
const char **cut_left_lines(struct arena *arena, const struct cut_answer *answer, size_t *count);

/* What is on every board and sheet, and all of one length together (report/cut_plan_text.c); what
 * is left over. */
void cut_plan_section(struct text *text, const struct cut_answer *answer);
void cut_order_section(struct text *text, const struct cut_answer *answer);
void cut_left_section(struct text *text, const struct cut_answer *answer);

#endif
