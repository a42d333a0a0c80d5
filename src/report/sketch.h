/* report/sketch.h - a small front view of a frame in plain characters, for a terminal.
 *
 * At most SKETCH_COLUMNS wide and SKETCH_ROWS high, a character counted as twice as high as wide.
 * Sticks are lines of - | / \, joints +, feet =; what lies behind shows through. Then its size.
 */
#ifndef REPORT_SKETCH_H
#define REPORT_SKETCH_H

#include "base/text.h"
#include "frame/frame.h"

enum { SKETCH_COLUMNS = 64, SKETCH_ROWS = 22 };

/* Nothing for a frame without sticks. */
void sketch_text(struct text *text, const struct frame *frame);

#endif
