/* Disturbs what a program writes into files that it opens itself; put in front of it by LD_PRELOAD.
 *
 *   WRITE_AFTER=N     after N bytes ...
 *   WRITE_SIGNAL=S    ... the signal S comes
 *   WRITE_ERRNO=E     ... write() fails with E (28 ENOSPC, 5 EIO, 122 EDQUOT)
 *   WRITE_PIECES=1    each write() takes seven bytes at most, and every other one is interrupted
 *   CLOSE_ERRNO=E     close() of a file that was written to fails with E
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <signal.h>
#include <stdbool.h>
#include <stdlib.h>
#include <unistd.h>

static long number_of(const char *name) {
    const char *value = getenv(name);
    return value ? strtol(value, NULL, 10) : 0;
}

static ssize_t (*real_write)(int file, const void *bytes, size_t count);
static int (*real_close)(int file);
static long done;
static int written = -1;

ssize_t write(int file, const void *bytes, size_t count) {
    static bool turn;
    if (!real_write)
        *(void **)&real_write = dlsym(RTLD_NEXT, "write");
    if (file <= STDERR_FILENO)
        return real_write(file, bytes, count);
    written = file;
    if (number_of("WRITE_PIECES")) {
        if ((turn = !turn)) {
            errno = EINTR;
            return -1;
        }
        return real_write(file, bytes, count < 7 ? count : 7);
    }
    long room = number_of("WRITE_AFTER") - done;
    bool disturbed = number_of("WRITE_SIGNAL") || number_of("WRITE_ERRNO");
    if (!disturbed || (long)count <= room) {
        done += (long)count;
        return real_write(file, bytes, count);
    }
    if (room > 0) {
        done += room;
        return real_write(file, bytes, (size_t)room);
    }
    if (number_of("WRITE_SIGNAL"))
        raise((int)number_of("WRITE_SIGNAL"));
    errno = (int)number_of("WRITE_ERRNO");
    return errno ? -1 : real_write(file, bytes, count);
}

int close(int file) {
    if (!real_close)
        *(void **)&real_close = dlsym(RTLD_NEXT, "close");
    int status = real_close(file);
    if (file == written && number_of("CLOSE_ERRNO")) {
        errno = (int)number_of("CLOSE_ERRNO");
        return -1;
    }
    return status;
}
