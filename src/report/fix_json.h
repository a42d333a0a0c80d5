/* report/fix_json.h - the answer of `fix` as JSON. */
#ifndef REPORT_FIX_JSON_H
#define REPORT_FIX_JSON_H

#include "report/json_write.h"
#include "result/fix_answer.h"

void fix_json(struct json *json, const struct fix_answer *answer);

#endif
