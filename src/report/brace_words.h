/* report/brace_words.h - what the answer of `brace` says in words, for its text and its JSON.
 */
#ifndef REPORT_BRACE_WORDS_H
#define REPORT_BRACE_WORDS_H

#include "base/text.h"
#include "result/brace_answer.h"

#include <stdbool.h>

/* ORDER STIFFNESS: of the movements in a lean row. */
enum { LEAN_LOW, LEAN_MIDDLE, LEAN_HIGH };

/* A way to fold or a soft direction is left, with the wood sheets that brace in place. */
bool something_to_brace(const struct brace_answer *answer);

/* As fastened it folds under a push, and no wood sheet stops that. */
bool folds_when_pushed(const struct brace_answer *answer);

/* With it no way to fold is left, and no direction leans more than it may. */
bool alternative_is_enough(const struct alternative *other);

const char *direction_words(int axis); /* "left-right", "front-back" */

/* The soft directions: "left-right and front-back"; "" where there are none. */
const char *soft_in_words(struct arena *arena, const struct brace_answer *answer);

/* "1 way", "3 ways" */
const char *counted(struct arena *arena, size_t count, const char *one);

/* "0.3 in"; "next to nothing" where it rounds away, "over 3 ft" where the number means nothing any
 * more, "folds up" where it is none. */
const char *movement_in_words(struct arena *arena, double move, enum unit_system units);

/* "about 34 lb": rounded up to a whole unit. */
const char *force_in_words(struct arena *arena, double force, enum unit_system units);

/* The same of what may be carried: rounded down. */
const char *strength_in_words(struct arena *arena, double force, enum unit_system units);

/* The table of movements, row by row, for text and page; columns without a number are left out.
 * (report/lean_text.c) */
enum { LEAN_COLUMNS = 5 };
struct lean_cells {
    const char *cells[LEAN_COLUMNS];
    size_t widths[LEAN_COLUMNS]; /* characters; 0: not wrapped */
    size_t count;
};
const char *lean_introduction(const struct brace_answer *answer);
struct lean_cells lean_heading(const struct brace_answer *answer);
struct lean_cells lean_moves(struct arena *arena, const struct brace_answer *answer,
                             const struct lean_row *row);
/* From stiff screws to soft ones. */
struct lean_cells lean_ranges(struct arena *arena, const struct brace_answer *answer,
                              const struct lean_row *row);
/* What the table alone does not say of one direction; "" where nothing. */
const char *lean_remark(struct arena *arena, const struct brace_answer *answer,
                        const struct lean_row *row);

/* "Does it lean?": movements in a table, and what to say about them. (report/lean_text.c) */
void lean_section(struct text *text, const struct brace_answer *answer);

/* Movements differ between the low and the high stiffness of the screws: one direction, any. */
bool lean_varies(const struct lean_row *row);
bool some_lean_varies(const struct brace_answer *answer);

/* What the answer does not know, added to result->cautions. */
void brace_cautions(struct arena *arena, const struct brace_answer *answer, struct result *result);

#endif
