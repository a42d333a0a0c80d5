/* spreading.h - how fast `check --spread` judges builds, beside checking as many frames from the file. */
#ifndef TESTS_BENCH_SPREADING_H
#define TESTS_BENCH_SPREADING_H

#include <stdbool.h>

bool spreading(const char *path);

#endif
