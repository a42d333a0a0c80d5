/* cutting.h - boards for sixty pieces: how many tasks are proved, and the slowest of them. */
#ifndef TESTS_BENCH_CUTTING_H
#define TESTS_BENCH_CUTTING_H

void cutting(void);

#endif
