/* report/expand_text.h - the full description that a `shape:` stands for.
 */
#ifndef REPORT_EXPAND_TEXT_H
#define REPORT_EXPAND_TEXT_H

#include "base/text.h"
#include "frame/frame.h"

/* `bytes` are the file that `frame` was read from. What the shape makes stands where the shape was,
 * with the file's own joints, members, supports, shelves and panels among it; all other lines stay
 * as they are, comments too, where the file is laid out line by line. A file without a shape stays
 * as it is. */
void expand_text(struct text *text, const struct frame *frame, const char *bytes, size_t length);

#endif
