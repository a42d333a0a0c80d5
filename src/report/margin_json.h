/* report/margin_json.h - what `margin` found, as one JSON object of the contract. */
#ifndef REPORT_MARGIN_JSON_H
#define REPORT_MARGIN_JSON_H

#include "report/json_write.h"
#include "result/margin_answer.h"

void margin_json(struct json *json, const struct margin_answer *answer);

#endif
