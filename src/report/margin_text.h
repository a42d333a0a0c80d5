/* report/margin_text.h - what `margin` found, in a builder's words. */
#ifndef REPORT_MARGIN_TEXT_H
#define REPORT_MARGIN_TEXT_H

#include "base/text.h"
#include "result/margin_answer.h"

void margin_text(struct text *text, const struct margin_answer *answer);

/* "stands 1.8 times the trays as described; then ...", of one load, and its name. */
const char *margin_sentence(struct arena *arena, const struct margin_answer *answer,
                            enum margin_load load);
/* A load alone, that of trays never rounded up: "1.8 times", "55 psf", "90 mph". */
const char *margin_amount(struct arena *arena, const struct margin_answer *answer,
                          enum margin_load load, double value);
extern const char *const MARGIN_NAMES[MARGIN_COUNT];

#endif
