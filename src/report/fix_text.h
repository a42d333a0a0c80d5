/* report/fix_text.h - what `fix` says: each change as a sentence, what it costs and mends, how far
 * the search got, and always the cautions last.
 */
#ifndef REPORT_FIX_TEXT_H
#define REPORT_FIX_TEXT_H

#include "base/text.h"
#include "result/fix_answer.h"

/* `written`: the file that the changed description went to; NULL where it went to none. */
void fix_text(struct text *text, const struct fix_answer *answer, const char *written);

#endif
