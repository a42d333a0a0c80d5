/* timing.h - medians of several runs, s. */
#ifndef TESTS_BENCH_TIMING_H
#define TESTS_BENCH_TIMING_H

/* Median of nine calls after one to warm up. */
double median_of(void (*work)(void *), void *with);

#endif
