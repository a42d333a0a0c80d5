/* whole.h - a file as it is, and how long one whole check of a frame takes. */
#ifndef TESTS_BENCH_WHOLE_H
#define TESTS_BENCH_WHOLE_H

#include "base/text.h"
#include "frame/frame.h"

double bench_now(void); /* s */

/* Empty where it cannot be read. */
struct text bench_bytes(struct arena *arena, const char *path);

/* One whole check, s: the mean of some. */
double bench_whole_check(struct arena *arena, const struct frame *frame);

#endif
