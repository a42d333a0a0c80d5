/* report/problem_text.h - what is wrong with a description or a command line, for people and as
 * JSON.
 */
#ifndef REPORT_PROBLEM_TEXT_H
#define REPORT_PROBLEM_TEXT_H

#include "base/problem.h"
#include "base/text.h"
#include "report/json_write.h"

enum { PROBLEMS_SHOWN = 50 };

/* A line for each, "bench.yaml:12:5: members.rail-1.from: ...", at most PROBLEMS_SHOWN, then how
 * many more; without a place only "bench.yaml: ...". What other people wrote is made safe to show.
 */
void problem_text(struct text *text, const char *file_name, const struct problems *problems);

/* {"batten": .., "errors": [..]}; line and column null where there is no place; as many
 * as in the text, and then "more" says how many more. */
void problem_json(struct json *json, const struct problems *problems);

#endif
