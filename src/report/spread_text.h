/* report/spread_text.h - what `check --spread` adds below the answer of `check`.
 */
#ifndef REPORT_SPREAD_TEXT_H
#define REPORT_SPREAD_TEXT_H

#include "base/text.h"
#include "result/spread_answer.h"
#include "units/quantity.h"

#include <stdbool.h>

/* `all`: also the checks that fail in no build. */
void spread_text(struct text *text, const struct spread_answer *answer, enum unit_system units,
                 bool all);

/* "in 3 of 100 builds"; over 100 builds rounded to that. */
const char *share_in_words(struct arena *arena, size_t failed, size_t builds);

#endif
