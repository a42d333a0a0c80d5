/* report/result_json.h - everything a run found as one JSON object, keys in the order of the
 * contract, numbers SI.
 */
#ifndef REPORT_RESULT_JSON_H
#define REPORT_RESULT_JSON_H

#include "report/json_write.h"
#include "result/result.h"

/* The name of the SI unit of a quantity: "m", "N", "Pa", "N-m", "1" ... */
const char *si_unit(enum quantity quantity);

/* The whole document. With VERDICT_FOLDS and VERDICT_FAILED: no checks, and of cases and
 * combinations those that were solved. */
void result_json(struct json *json, const struct result *result);

/* {"sentence": .., "moves": {"fl3": [dx, dy, dz]}} */
void motion_json(struct json *json, const struct frame *frame, const struct motion *motion);

/* Its two large parts (report/cases_json.c). */
void cases_json(struct json *json, const struct result *result);
void combinations_json(struct json *json, const struct result *result);

#endif
