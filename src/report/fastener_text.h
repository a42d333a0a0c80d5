/* report/fastener_text.h - the answer of `fastener`.
 */
#ifndef REPORT_FASTENER_TEXT_H
#define REPORT_FASTENER_TEXT_H

#include "base/text.h"
#include "quick/fastener.h"
#include "report/json_write.h"

/* In inches and pounds: what it holds, what is to be known, the working. */
void fastener_text(struct text *text, const struct fastener_question *question,
                   const struct fastener_answer *answer);

/* {"modes": {..}, ..}, N and N/m. */
void fastener_json(struct json *json, const struct fastener_answer *answer);

#endif
