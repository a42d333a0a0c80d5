/* report/fastener_advice.h - lead holes, distances and corrosion of a fastener, in words.
 */
#ifndef REPORT_FASTENER_ADVICE_H
#define REPORT_FASTENER_ADVICE_H

#include "base/text.h"
#include "quick/fastener.h"

void fastener_advice_text(struct text *text, const struct fastener_question *question,
                          const struct fastener_answer *answer);

#endif
