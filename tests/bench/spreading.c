#include "spreading.h"

#include "spread/spread.h"
#include "whole.h"

#include <stdio.h>

enum { BUILDS = 300 };

bool spreading(const char *path) {
    struct arena *arena = arena_new();
    if (!arena || ARENA_TRAP(arena))
        return false;
    struct text bytes = bench_bytes(arena, path);
    struct problems problems = problems_new(arena);
    const struct spread_options options = {.builds = BUILDS, .seed = 1};
    const struct frame *frame = frame_read(arena, text_string(&bytes), bytes.count,
                                           (struct frame_limits){0}, &problems);
    if (!frame)
        return false;
    double start = bench_now();
    const struct spread_answer *answer = spread_find(arena, frame, &options);
    double ours = bench_now() - start;
    double whole = BUILDS * bench_whole_check(arena, frame);
    printf("%d builds of --spread, the stand / as many whole checks %12.0f %10.0f %9.3f %8s\n"
           "    builds a second: %.0f, each with every check (asked for: 5 000 solves)\n",
           BUILDS, 1e3 * ours, 1e3 * whole, ours / whole, "-", BUILDS / ours);
    bool judged = answer->checks.count > 0;
    arena_free(arena);
    return judged;
}
