#include "cli/waiting.h"

#include "cli/output.h"

struct waiting waiting_from_now(struct arena *arena) {
    struct waiting waiting = {.arena = arena};
    clock_gettime(CLOCK_MONOTONIC, &waiting.started);
    return waiting;
}

static double seconds_since(const struct timespec *from) {
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)(now.tv_sec - from->tv_sec) + 1e-9 * (double)(now.tv_nsec - from->tv_nsec);
}

void waiting_tell(struct waiting *waiting, size_t count, const char *what) {
    double passed = seconds_since(&waiting->started);
    if (passed < waiting->said + 1.0)
        return;
    waiting->said = passed;
    struct arena_mark mark = arena_mark(waiting->arena);
    message(waiting->arena, arena_print(waiting->arena, "%zu %s", count, what));
    arena_rewind(waiting->arena, mark);
}
