/* report/cut_json.h - the answer of `cut` as JSON (SI; prices as in the file). */
#ifndef REPORT_CUT_JSON_H
#define REPORT_CUT_JSON_H

#include "report/json_write.h"
#include "result/cut_answer.h"

void cut_json(struct json *json, const struct cut_answer *answer);

#endif
