#include "base/vector.h"
#include "brace/brace.h"
#include "fix/effort.h"

#include <string.h>

static int stick_named(const struct frame *frame, const char *name) {
    for (size_t k = 0; k < frame->sticks.count; k++)
        if (strcmp(frame->sticks.items[k].name, name) == 0)
            return (int)k;
    return -1;
}

static double apart(const struct frame *frame, int a, int b) {
    double between[3];
    return vector_between(frame->joints.items[a].at, frame->joints.items[b].at, between);
}

/* Each diagonal that `brace` proposes, by itself. */
void catalogue_braces(struct work *work) {
    const struct frame *frame = work->frame;
    struct arena *arena = work->arena;
    const struct brace_answer *found = brace_find(arena, frame);
    int stick = found->brace_count ? stick_named(frame, found->brace_stick) : -1;
    for (size_t k = 0; k < found->brace_count && stick >= 0; k++) {
        const struct brace_choice *brace = &found->braces[k];
        const char *lap = lap_entry(work);
        const char *from = frame->joints.items[brace->from].name;
        const char *to = frame->joints.items[brace->to].name;
        const char *name = name_unused(work, arena_print(arena, "brace-%zu", k + 1));
        choice_add(work, choice_new(work, CHANGE_BRACE, stick, -1),
                   arena_print(arena, "put in a diagonal from %s to %s (%s), of stick %s", from, to,
                               brace->where, found->brace_stick),
                   arena_print(arena,
                               "%smembers: {\"%s\": {from: \"%s\", to: \"%s\", "
                               "stick: \"%s\", ends: \"%s\", acts-as: brace}}",
                               lap, name, from, to, found->brace_stick, work->lap),
                   effort_of("fix-change") +
                       piece_effort(work, stick, apart(frame, brace->from, brace->to)) +
                       4.0 * effort_of("fix-screw"),
                   0);
    }
}
