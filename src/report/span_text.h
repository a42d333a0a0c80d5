/* report/span_text.h - the answer of `span`.
 */
#ifndef REPORT_SPAN_TEXT_H
#define REPORT_SPAN_TEXT_H

#include "base/text.h"
#include "quick/span.h"
#include "report/json_write.h"

/* In inches and pounds: what was asked, a row for each size, and the working of those that have
 * one. The answer has at least one row. */
void span_text(struct text *text, const struct span_question *question,
               const struct span_answer *answer);

/* {"rows": [..]}, metres. */
void span_json(struct json *json, const struct span_answer *answer);

#endif
