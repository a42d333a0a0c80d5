/* report/spread_json.h - the object `spread` at the end of the JSON of `check --spread`.
 */
#ifndef REPORT_SPREAD_JSON_H
#define REPORT_SPREAD_JSON_H

#include "report/json_write.h"
#include "result/spread_answer.h"

/* The key `spread` with its object: {builds, seed, failed, fell, caution, inputs: [{input, of}],
 * checks:
 * [{id, failed, not_covered, changes, matters: [{input, of, rank_correlation}]}]}; numbers of
 * builds. */
void spread_json(struct json *json, const struct spread_answer *answer);

#endif
