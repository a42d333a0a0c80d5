/* report/fastener_advice.h - lead holes, distances and corrosion of a fastener, in words.
 */
#ifndef REPORT_FASTENER_ADVICE_H
#define REPORT_FASTENER_ADVICE_H

#include "base/text.h"
#include "quick/fastener.h"

void fastener_advice_text(struct text *text, const struct fastener_question *question,
                          const struct fastener_answer *answer);

/* A distance that must be kept, up to the next 1/16 in: "2-1/2 in". */
const char *distance_in_words(struct arena *arena, double si);

#endif
