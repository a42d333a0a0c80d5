#include "fixing.h"

#include "fix/fix.h"
#include "frame/merge.h"
#include "whole.h"

#include <stdio.h>

static const struct frame *mended_frame(struct arena *arena, const struct fix_answer *answer) {
    struct problems problems = problems_new(arena);
    struct node *tree = merge_edit(arena, answer->edited, answer->edited); /* a copy of its own */
    return frame_of_tree(arena, tree, (struct frame_limits){0}, &problems);
}

bool fixing(const char *path) {
    struct arena *arena = arena_new();
    if (!arena || ARENA_TRAP(arena))
        return false;
    struct text bytes = bench_bytes(arena, path);
    struct problems problems = problems_new(arena);
    const struct fix_options plain = {0};
    const struct frame *frame = frame_read(arena, text_string(&bytes), bytes.count,
                                           (struct frame_limits){0}, &problems);
    double start = bench_now();
    const struct fix_answer *answer =
        fix_find(arena, text_string(&bytes), bytes.count, frame, &plain);
    double ours = bench_now() - start;
    bool found = answer->found;
    if (found) {
        /* between the frame as it is and as it is mended */
        double whole = (bench_whole_check(arena, frame) +
                        bench_whole_check(arena, mended_frame(arena, answer))) /
                       2.0;
        printf("fix of the stand, %zu variants / as many whole checks %18.0f %10.0f %9.3f %8s\n",
               answer->tried, 1e3 * ours, 1e3 * whole * (double)answer->tried,
               ours / (whole * (double)answer->tried), "5 s");
    }
    arena_free(arena);
    return found;
}
