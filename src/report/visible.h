/* report/visible.h - text of other people, made safe to show on a terminal.
 */
#ifndef REPORT_VISIBLE_H
#define REPORT_VISIBLE_H

#include "base/arena.h"

#include <stddef.h>

/* `string` with everything that could steer a terminal or turn the reading direction written out:
 * control characters and bytes that are no UTF-8 as \x1b, what changes its neighbours as \u202e. */
const char *visible(struct arena *arena, const char *string);

/* Columns that `string` takes: one for each character. */
size_t text_width(const char *string);

#endif
