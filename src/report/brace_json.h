/* report/brace_json.h - the answer of `brace` as one JSON object, numbers SI.
 *
 * The keys of the contract in its order, then what the text says besides. `stops` counts the
 * motions from 0 and is null where a brace stiffens a soft direction; `fewest` is null where no set
 * of diagonals does it. Lean: movement at the joint that is worst, joints at their middle stiffness
 * ("low" and "high": at the others), null where the frame folds.
 */
#ifndef REPORT_BRACE_JSON_H
#define REPORT_BRACE_JSON_H

#include "report/json_write.h"
#include "result/brace_answer.h"

void brace_json(struct json *json, const struct brace_answer *answer);

#endif
