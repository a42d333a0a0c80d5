/* report/why_text.h - the working of a check, to be redone with a pocket calculator.
 *
 * Every step is its words, then symbol = formula = the same with numbers = result with its unit,
 * and its source. Numbers in units that fit together: in, lb, psi or mm, N, MPa.
 */
#ifndef REPORT_WHY_TEXT_H
#define REPORT_WHY_TEXT_H

#include "base/text.h"
#include "report/json_write.h"
#include "result/result.h"
#include "working/working.h"

#include <stdbool.h>

/* A step in words, for text and page: symbol = parts[0] = parts[1] = ..., the last with its unit.
 */
struct told_step {
    bool heading; /* only words */
    const char *words, *symbol, *parts[3], *source;
    size_t part_count;
};
struct told_step *working_told(struct arena *arena, const struct working *working,
                               enum unit_system units); /* working->count of them */
const char *mark_in_words(enum mark mark);

/* The steps alone, and then what their marks mean. */
void working_text(struct text *text, const struct working *working, enum unit_system units);

/* What `why` says: the check in a sentence, its working, the cautions. check->working is set. */
void why_text(struct text *text, const struct result *result, const struct check *check);

/* A list of steps, values SI, and the whole object of `why --json`. */
void working_json(struct json *json, const struct working *working);
void why_json(struct json *json, const struct check *check);

#endif
