#include "spreading.h"

#include "solve/sparse.h"
#include "spread/spread.h"
#include "whole.h"

#include <stdio.h>

enum { BUILDS = 300, WANTED = 5000 };

/* The linker puts this in place of sparse_factor (-Wl,--wrap): each set of equations that is factored
 * and solved is counted. */
static size_t solutions;
struct pivots __real_sparse_factor(struct arena *, const struct sparse *, struct loose_pivots *);
struct pivots __wrap_sparse_factor(struct arena *, const struct sparse *, struct loose_pivots *);
struct pivots __wrap_sparse_factor(struct arena *arena, const struct sparse *sparse,
                                   struct loose_pivots *loose) {
    solutions++;
    return __real_sparse_factor(arena, sparse, loose);
}

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
    solutions = 0;
    double start = bench_now();
    const struct spread_answer *answer = spread_find(arena, frame, &options);
    double ours = bench_now() - start;
    double solved = (double)solutions / ours;
    double whole = BUILDS * bench_whole_check(arena, frame);
    printf("%d builds of --spread, the stand / as many whole checks %12.0f %10.0f %9.3f %8s\n"
           "    builds a second, each with every check %57.0f\n"
           "    equations factored and solved a second %57.0f %8d  %s\n",
           BUILDS, 1e3 * ours, 1e3 * whole, ours / whole, "-", BUILDS / ours, solved, WANTED,
           solved >= WANTED ? "met" : "missed");
    bool judged = answer->checks.count > 0;
    arena_free(arena);
    return judged;
}
