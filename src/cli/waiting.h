/* cli/waiting.h - somebody who waits longer than a second is told that it goes on.
 */
#ifndef CLI_WAITING_H
#define CLI_WAITING_H

#include "base/arena.h"

#include <time.h>

struct waiting {
    struct arena *arena;
    struct timespec started;
    double said; /* s */
};
struct waiting waiting_from_now(struct arena *arena);

/* "120 variants tried" on standard error, at most once a second. */
void waiting_tell(struct waiting *waiting, size_t count, const char *what);

#endif
