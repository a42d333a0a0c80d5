/* report/summary.h - the verdict on a frame in one sentence. */
#ifndef REPORT_SUMMARY_H
#define REPORT_SUMMARY_H

#include "base/arena.h"
#include "result/result.h"

/* Holds or not, how many checks do not, and where the worst is; folds up; could not be judged. */
const char *summary_in_words(struct arena *arena, const struct result *result);

/* It tips over, and does not fold. */
bool it_tips(const struct result *result);

#endif
