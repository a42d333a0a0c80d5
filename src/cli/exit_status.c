#include "cli/exit_status.h"

enum exit_status exit_status_of(enum verdict verdict, bool allow_not_covered) {
    switch (verdict) {
    case VERDICT_OK:
    case VERDICT_CLOSE:
        return EXIT_HOLDS;
    case VERDICT_NOT_COVERED:
        return allow_not_covered ? EXIT_HOLDS : EXIT_DOES_NOT_HOLD;
    case VERDICT_FAILS:
        return EXIT_DOES_NOT_HOLD;
    case VERDICT_FOLDS:
        return EXIT_FOLDS;
    case VERDICT_FAILED:
        break;
    }
    return EXIT_TROUBLE;
}
