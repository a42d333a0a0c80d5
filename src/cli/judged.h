/* cli/judged.h - from a file's name to its verdict, for every command that judges a frame.
 */
#ifndef CLI_JUDGED_H
#define CLI_JUDGED_H

#include "cli/command.h"
#include "judge/judge.h"
#include "result/result.h"

/* Read the frame that the first word names. NULL where its description is wrong: the problems are
 * then written. */
const struct frame *read_frame(const struct call *call);

/* The same, and the file's own text into `bytes`. */
const struct frame *read_frame_of(const struct call *call, struct text *bytes);

/* Read and judge the frame that the first word names. False where its description is wrong: the
 * problems are then written. Says on standard error that a frame folds, or why a
 * result is VERDICT_FAILED. */
bool judged(const struct call *call, const struct judge_options *options, struct result *result);

/* The same for a frame that is read already. */
bool judged_frame(const struct call *call, const struct frame *frame,
                  const struct judge_options *options, struct result *result);

#endif
