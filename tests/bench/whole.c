#include "whole.h"

#include "judge/judge.h"

#include <stdio.h>
#include <time.h>

double bench_now(void) {
    struct timespec at;
    clock_gettime(CLOCK_MONOTONIC, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

struct text bench_bytes(struct arena *arena, const char *path) {
    struct text text = text_new(arena);
    char part[4096];
    FILE *file = fopen(path, "rb");
    for (size_t got; file && (got = fread(part, 1, sizeof part, file)) > 0;)
        text_bytes(&text, part, got);
    if (file)
        fclose(file);
    return text;
}

double bench_whole_check(struct arena *arena, const struct frame *frame) {
    enum { TIMES = 20 };
    static const struct judge_options plain = {0};
    double start = bench_now();
    for (int k = 0; k < TIMES; k++) {
        struct arena_mark mark = arena_mark(arena);
        struct result result = {0};
        judge_frame(arena, frame, &plain, &result);
        arena_rewind(arena, mark);
    }
    return (bench_now() - start) / TIMES;
}
