/* fixing.h - `fix` of a frame, beside as many whole checks. */
#ifndef BENCH_FIXING_H
#define BENCH_FIXING_H

#include <stdbool.h>

/* Prints the row; false where nothing is found. */
bool fixing(const char *path);

#endif
