#include "cli/unfinished.h"

#include <signal.h>
#include <stddef.h>
#include <unistd.h>

static const int ENDING[] = {SIGHUP, SIGINT, SIGTERM};
enum { ENDING_COUNT = sizeof ENDING / sizeof *ENDING };

static const char *volatile unfinished;

static void remove_and_end(int number) {
    const char *path = unfinished;
    if (path)
        unlink(path);
    signal(number, SIG_DFL);
    raise(number); /* held back until this returns */
}

void unfinished_start(void) {
    signal(SIGPIPE, SIG_IGN);
    signal(SIGXFSZ, SIG_IGN);
}

void unfinished_begin(const char *path) {
    unfinished = path;
    for (size_t k = 0; k < ENDING_COUNT; k++) {
        struct sigaction now;
        if (sigaction(ENDING[k], NULL, &now) != 0 || now.sa_handler == SIG_IGN)
            continue;
        struct sigaction ours = {.sa_handler = remove_and_end};
        sigemptyset(&ours.sa_mask);
        for (size_t other = 0; other < ENDING_COUNT; other++)
            sigaddset(&ours.sa_mask, ENDING[other]);
        sigaction(ENDING[k], &ours, NULL);
    }
}

void unfinished_end(void) {
    unfinished = NULL;
}
