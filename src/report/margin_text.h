/* report/margin_text.h - what `margin` found, in a builder's words. */
#ifndef REPORT_MARGIN_TEXT_H
#define REPORT_MARGIN_TEXT_H

#include "base/text.h"
#include "result/margin_answer.h"

void margin_text(struct text *text, const struct margin_answer *answer);

#endif
