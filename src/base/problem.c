#include "base/problem.h"

#include "base/text.h"

#include <stdlib.h>
#include <string.h>

struct problems problems_new(struct arena *arena) {
    return (struct problems){.arena = arena};
}

void problem_add(struct problems *problems, struct place place, const char *key, const char *format,
                 ...) {
    struct text message = text_new(problems->arena);
    va_list arguments;
    va_start(arguments, format);
    text_print_list(&message, format, arguments);
    va_end(arguments);
    ARRAY_PUSH(problems->arena, problems,
               (struct problem){.place = place,
                                .key = arena_copy(problems->arena, key, strlen(key)),
                                .message = text_string(&message)});
}

static bool comes_before(const struct problem *a, const struct problem *b) {
    if (a->place.line != b->place.line)
        return a->place.line < b->place.line;
    return a->place.column < b->place.column;
}

/* Merge sort: stable, and linear where the problems already stand in order. */
void problems_sort(struct problems *problems) {
    size_t count = problems->count;
    struct problem *from = problems->items;
    struct problem *to = ARENA_ARRAY(problems->arena, struct problem, count);
    for (size_t width = 1; width < count; width *= 2) {
        for (size_t start = 0; start < count; start += 2 * width) {
            size_t middle = start + width < count ? start + width : count;
            size_t end = start + 2 * width < count ? start + 2 * width : count;
            size_t left = start, right = middle;
            for (size_t k = start; k < end; k++)
                to[k] = right < end && (left >= middle || comes_before(&from[right], &from[left]))
                            ? from[right++]
                            : from[left++];
        }
        struct problem *swap = from;
        from = to;
        to = swap;
    }
    problems->items = from;
}
