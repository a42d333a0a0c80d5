#include "cli/write_output.h"

#include "cli/output.h"
#include "cli/unfinished.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

/* The file that --output names, NULL for standard output. */
static const char *output_path(const struct call *call) {
    const char *path = call->options.value[OPTION_OUTPUT];
    return path && strcmp(path, "-") != 0 ? path : NULL;
}

static bool refuse(const struct call *call, const char *path, const char *why) {
    struct problems problems = problems_new(call->arena);
    problem_add(&problems, (struct place){0, 0}, "--output", "%s %s", path, why);
    output_problems(call->arena, NULL, &problems, call->options.given[OPTION_JSON]);
    return false;
}

static bool refuse_existing(const struct call *call, const char *path) {
    return refuse(call, path, "is there already; --force writes over it");
}

bool output_is_free(const struct call *call) {
    const char *path = output_path(call);
    struct stat there;
    if (!path || lstat(path, &there) != 0)
        return true; /* what else is wrong with the path shows when it is written */
    if (!S_ISREG(there.st_mode))
        return refuse(call, path, "is there already and is no plain file");
    return call->options.given[OPTION_FORCE] || refuse_existing(call, path);
}

/* The whole text in a new file; 0 or an errno. */
static int write_new(const char *path, const struct text *text, mode_t mode) {
    int file = open(path, O_WRONLY | O_CREAT | O_EXCL, 0666);
    if (file < 0)
        return errno;
    int trouble = 0;
    const char *bytes = text_string(text);
    for (size_t done = 0; done < text->count && !trouble;) {
        ssize_t wrote = write(file, bytes + done, text->count - done);
        if (wrote > 0)
            done += (size_t)wrote;
        else if (wrote == 0 || errno != EINTR)
            trouble = wrote < 0 ? errno : EIO;
    }
    if (!trouble && mode && fchmod(file, mode) != 0)
        trouble = errno;
    if (close(file) != 0 && !trouble)
        trouble = errno;
    if (trouble)
        unlink(path);
    return trouble;
}

/* Put a finished file in its place; 0 or an errno, EEXIST where something came there meanwhile. */
static int put_in_place(const char *part, const char *path, bool over) {
    if (over)
        return rename(part, path) == 0 ? 0 : errno;
    if (link(part, path) == 0)
        return unlink(part) == 0 ? 0 : errno;
    struct stat there;
    if (errno == EEXIST || lstat(path, &there) == 0)
        return EEXIST;
    return rename(part, path) == 0 ? 0 : errno; /* a file system without links */
}

enum exit_status write_output(const struct call *call, const struct text *text,
                              enum exit_status status) {
    const char *path = output_path(call);
    if (!path) {
        output_text(text);
        return status;
    }
    const char *part = arena_print(call->arena, "%s.%ld.part", path, (long)getpid());
    struct stat before = {0};
    bool over = call->options.given[OPTION_FORCE] && lstat(path, &before) == 0;
    unfinished_begin(part);
    int trouble = write_new(part, text, over ? before.st_mode & 0777 : 0);
    bool written = !trouble;
    if (written) {
        trouble = put_in_place(part, path, call->options.given[OPTION_FORCE]);
        if (trouble)
            unlink(part);
    }
    unfinished_end();
    if (written && trouble == EEXIST) {
        refuse_existing(call, path);
        return EXIT_WRONG_INPUT;
    }
    if (!trouble)
        return status;
    message(call->arena, arena_print(call->arena, "cannot write %s: %s", path, strerror(trouble)));
    return EXIT_TROUBLE;
}
