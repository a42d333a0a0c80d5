/* report/cut_text.h - what `cut` prints: a shopping list, a plan for the saw, weight and cost. */
#ifndef REPORT_CUT_TEXT_H
#define REPORT_CUT_TEXT_H

#include "base/text.h"
#include "result/cut_answer.h"

void cut_text(struct text *text, const struct cut_answer *answer);

#endif
