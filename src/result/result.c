#include "result/result.h"

const char *check_place(const struct check *check) {
    return check->place[0] ? check->place : check->where;
}

const char *check_words(struct arena *arena, const struct check *check) {
    const char *place = check_place(check);
    return check->governs[0] ? arena_print(arena, "%s (%s)", place, check->governs) : place;
}

const char *verdict_name(enum verdict verdict) {
    static const char *const NAMES[] = {/* ORDER VERDICT */ [VERDICT_OK] = "ok",
                                        [VERDICT_CLOSE] = "close",
                                        [VERDICT_NOT_COVERED] = "not-covered",
                                        [VERDICT_FAILS] = "fails",
                                        [VERDICT_FOLDS] = "folds",
                                        [VERDICT_FAILED] = "failed"};
    return NAMES[verdict];
}
