/* report/check_text.h - what `check` says: holds or not, the checks by the builder's questions, the
 * ways to fold, and always the cautions last.
 *
 * Numbers in the file's units, lines at most LINE_WIDTH wide.
 */
#ifndef REPORT_CHECK_TEXT_H
#define REPORT_CHECK_TEXT_H

#include "base/text.h"
#include "result/result.h"

#include <stdbool.h>

struct check_text_options {
    bool all;               /* every check; else of those that hold the worst of each kind */
    const char *frame_name; /* as typed, for the hint about `why` */
};

void check_text(struct text *text, const struct result *result,
                const struct check_text_options *options);

/* Its parts, for other answers about a frame. */
const char *title_in_words(struct arena *arena, const struct result *result); /* "This frame" */
/* Why it does not stand, beside its motions, and what would stop it; for VERDICT_FOLDS. */
const char *fold_reason_in_words(struct arena *arena, const struct result *result);
const char *fold_remedy_in_words(const struct result *result);

void fold_text(struct text *text, const struct result *result);
void cautions_text(struct text *text, const struct result *result);

#endif
