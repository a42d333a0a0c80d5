/* report/brace_text.h - what `brace` says: can it fold, does it lean, where do the fewest diagonals
 * go, what else would do, which sheets count, and always the cautions last.
 *
 * Numbers in the file's units, lines at most LINE_WIDTH wide.
 */
#ifndef REPORT_BRACE_TEXT_H
#define REPORT_BRACE_TEXT_H

#include "base/text.h"
#include "result/brace_answer.h"

void brace_text(struct text *text, const struct brace_answer *answer);

#endif
