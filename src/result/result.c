#include "result/result.h"

const char *verdict_name(enum verdict verdict) {
    static const char *const NAMES[] = {/* ORDER VERDICT */ [VERDICT_OK] = "ok",
                                        [VERDICT_CLOSE] = "close",
                                        [VERDICT_NOT_COVERED] = "not-covered",
                                        [VERDICT_FAILS] = "fails",
                                        [VERDICT_FOLDS] = "folds",
                                        [VERDICT_FAILED] = "failed"};
    return NAMES[verdict];
}
