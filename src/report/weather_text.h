/* report/weather_text.h - the answer of `weather`.
 */
#ifndef REPORT_WEATHER_TEXT_H
#define REPORT_WEATHER_TEXT_H

#include "base/text.h"
#include "quick/weather.h"
#include "report/json_write.h"

/* In psf and mph: what was taken, the pressures, and the working. */
void weather_text(struct text *text, const struct weather_question *question,
                  const struct weather_answer *answer);

/* {"snow": {..}, "wind": {..}}, Pa; null for what was not asked. */
void weather_json(struct json *json, const struct weather_question *question,
                  const struct weather_answer *answer);

#endif
