/* The reader: any bytes are a frame or have problems, each with a message, in the order of lines.
 * What was read can be written out in full and reads again. */
#include "fuzz.h"

#include "frame/frame.h"
#include "report/expand_text.h"
#include "report/problem_text.h"

#include <gsl/gsl_errno.h>

static void hold_problems(const struct problems *problems) {
    for (size_t k = 0; k < problems->count; k++) {
        const struct problem *problem = &problems->items[k];
        HOLDS(problem->message && problem->message[0] && problem->key);
        HOLDS(problem->place.line >= 0 && problem->place.column >= 0);
    }
}

static void try_read(struct arena *arena, const uint8_t *bytes, size_t length) {
    if (ARENA_TRAP(arena))
        return;
    struct problems problems = problems_new(arena);
    const struct frame *frame =
        frame_read(arena, (const char *)bytes, length, (struct frame_limits){0}, &problems);
    HOLDS((frame != NULL) == (problems.count == 0));
    hold_problems(&problems);
    problems_sort(&problems);
    struct text text = text_new(arena);
    problem_text(&text, "fuzz.yaml", &problems);
    if (!frame)
        return;
    struct text whole = text_new(arena);
    expand_text(&whole, frame, (const char *)bytes, length);
    struct problems again = problems_new(arena);
    HOLDS(frame_read(arena, text_string(&whole), whole.count, (struct frame_limits){0}, &again));
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t length) {
    gsl_set_error_handler_off();
    if (length > 64 * 1024)
        return 0;
    struct arena *arena = arena_new();
    if (arena)
        try_read(arena, bytes, length);
    arena_free(arena);
    return 0;
}
