#include "fixing.h"

#include "base/text.h"
#include "fix/fix.h"
#include "frame/merge.h"
#include "judge/judge.h"

#include <stdio.h>
#include <time.h>

static double now(void) {
    struct timespec at;
    clock_gettime(CLOCK_MONOTONIC, &at);
    return (double)at.tv_sec + 1e-9 * (double)at.tv_nsec;
}

static struct text bytes_of(struct arena *arena, const char *path) {
    struct text text = text_new(arena);
    char part[4096];
    FILE *file = fopen(path, "rb");
    for (size_t got; file && (got = fread(part, 1, sizeof part, file)) > 0;)
        text_bytes(&text, part, got);
    if (file)
        fclose(file);
    return text;
}

/* One whole check, s: the mean of some. */
static double whole_check_of(struct arena *arena, const struct frame *frame) {
    enum { TIMES = 20 };
    static const struct judge_options plain = {0};
    double start = now();
    for (int k = 0; k < TIMES; k++) {
        struct arena_mark mark = arena_mark(arena);
        struct result result = {0};
        judge_frame(arena, frame, &plain, &result);
        arena_rewind(arena, mark);
    }
    return (now() - start) / TIMES;
}

static const struct frame *mended_frame(struct arena *arena, const struct fix_answer *answer) {
    struct problems problems = problems_new(arena);
    struct node *tree = merge_edit(arena, answer->edited, answer->edited); /* a copy of its own */
    return frame_of_tree(arena, tree, (struct frame_limits){0}, &problems);
}

bool fixing(const char *path) {
    struct arena *arena = arena_new();
    if (!arena || ARENA_TRAP(arena))
        return false;
    struct text bytes = bytes_of(arena, path);
    struct problems problems = problems_new(arena);
    const struct fix_options plain = {0};
    const struct frame *frame = frame_read(arena, text_string(&bytes), bytes.count,
                                           (struct frame_limits){0}, &problems);
    double start = now();
    const struct fix_answer *answer =
        fix_find(arena, text_string(&bytes), bytes.count, frame, &plain);
    double ours = now() - start;
    bool found = answer->found;
    if (found) {
        /* between the frame as it is and as it is mended */
        double whole = (whole_check_of(arena, frame) +
                        whole_check_of(arena, mended_frame(arena, answer))) /
                       2.0;
        printf("fix of the stand, %zu variants / as many whole checks %18.0f %10.0f %9.3f %8s\n",
               answer->tried, 1e3 * ours, 1e3 * whole * (double)answer->tried,
               ours / (whole * (double)answer->tried), "5 s");
    }
    arena_free(arena);
    return found;
}
