/* cli/exit_status.h - what the exit status says.
 */
#ifndef CLI_EXIT_STATUS_H
#define CLI_EXIT_STATUS_H

#include "result/result.h"

#include <stdbool.h>

enum exit_status {
    EXIT_HOLDS = 0,         /* every check passes; a command that judges nothing did its work */
    EXIT_DOES_NOT_HOLD = 1, /* a check fails, or no published rule covers it */
    EXIT_WRONG_INPUT = 2,   /* the description or the command line; nothing was checked */
    EXIT_FOLDS = 3,         /* the frame folds as described */
    EXIT_TROUBLE = 4        /* not to be trusted, out of memory, cannot write */
};

enum exit_status exit_status_of(enum verdict verdict, bool allow_not_covered);

#endif
