/* judged.h - a frame given as text, judged with all working; its checks by id. */
#ifndef TESTS_UNIT_JUDGED_H
#define TESTS_UNIT_JUDGED_H

#include "in_arena.h"
#include "judge/judge.h"
#include "near.h"
#include "second_frame.h"

static inline struct result judged_text(const char *text) {
    struct result result;
    const struct judge_options options = {.all_working = true};
    judge_frame(arena, frame_of_text(arena, text), &options, &result);
    return result;
}

/* NULL where there is none. */
static inline const struct check *check_if_any(const struct result *result, const char *id) {
    for (size_t k = 0; k < result->checks.count; k++)
        if (strcmp(result->checks.items[k].id, id) == 0)
            return &result->checks.items[k];
    return NULL;
}

static inline const struct check *check_of(const struct result *result, const char *id) {
    const struct check *check = check_if_any(result, id);
    cr_assert(check, "no check %s", id);
    return check;
}

static inline bool cautioned(const struct result *result, const char *words) {
    for (size_t k = 0; k < result->cautions.count; k++)
        if (strstr(result->cautions.items[k], words))
            return true;
    return false;
}

#endif
