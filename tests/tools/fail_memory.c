/* Makes every allocation of a program fail, one at a time, in a single run of it.
 *
 *   LD_PRELOAD=fail_memory.so FAIL_REPORT=report.txt FAIL_SCRATCH=folder [FAIL_ON=1] PROGRAM ...
 *
 * At each allocation (the program's own and those of its libraries) the process forks. In the child
 * this one allocation fails (with FAIL_ON=1 also all later ones) and the child runs to its end; the
 * parent waits, looks at what the child did, and goes on with an allocation that works. So a run
 * with n allocations tries n failures and takes about as long as n ends of the program.
 *
 * A child must end with status 4, say "out of memory" and nothing else on standard error, give back
 * all memory, and leave the working folder as it was. A child that went on (glibc does without a
 * buffer, for one) must end as the whole run does: its standard output is kept as
 * FAIL_SCRATCH/went-on-N for the caller to compare, with a line `went on N, status S`. What is
 * wrong is a line in the report; its last line is `N failures tried, M wrong`.
 *
 * With FAIL_AT=K instead of FAIL_REPORT nothing forks: the K-th allocation fails. For runs that
 * write a file, whose name parent and child would share. FAIL_COUNT=file writes how many there
 * were. Linux with glibc.
 */
#define _GNU_SOURCE
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

extern void *__libc_malloc(size_t size);
extern void *__libc_calloc(size_t count, size_t size);
extern void *__libc_realloc(void *block, size_t size);
extern void *__libc_memalign(size_t alignment, size_t size);
extern void __libc_free(void *block);

enum { CHILD_SECONDS = 60, STATUS_OUT_OF_MEMORY = 4, LEFT_BEHIND = 97 };

static bool watching, in_child, fails_on;
static long tried, wrong, live, fail_at;
static const char *count_path, *scratch;
static int report = -1;
static char stdout_path[512], stderr_path[512];
static long entries_before; /* in the working folder */

static void say(const char *format, ...) __attribute__((format(printf, 1, 2)));
static void say(const char *format, ...) {
    char line[1024];
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(line, sizeof line, format, arguments);
    va_end(arguments);
    if (length > 0 && write(report, line, (size_t)length) != length)
        _exit(99);
}

/* Names and sizes of the working folder as one number. */
static long folder_entries(void) {
    long sum = 0;
    DIR *folder = opendir(".");
    if (!folder)
        return -1;
    for (const struct dirent *entry; (entry = readdir(folder)) != NULL;)
        for (const char *each = entry->d_name; *each; each++)
            sum = sum * 31 + *each;
    closedir(folder);
    return sum;
}

static int fresh_file(const char *path) {
    return open(path, O_RDWR | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
}

static void become_child(void) {
    in_child = true;
    int out = fresh_file(stdout_path), err = fresh_file(stderr_path);
    if (out < 0 || err < 0 || dup2(out, STDOUT_FILENO) < 0 || dup2(err, STDERR_FILENO) < 0)
        _exit(98);
    alarm(CHILD_SECONDS);
}

/* A child that reads on moves the place in the files that it shares with its parent. */
enum { FILES_WATCHED = 16 };
static off_t places[FILES_WATCHED];
static void keep_places(void) {
    for (int k = 0; k < FILES_WATCHED; k++)
        places[k] = lseek(k, 0, SEEK_CUR);
}
static void restore_places(void) {
    for (int k = 0; k < FILES_WATCHED; k++)
        if (places[k] >= 0)
            lseek(k, places[k], SEEK_SET);
}

static void went_on(int status) {
    char kept[600];
    snprintf(kept, sizeof kept, "%s/went-on-%ld", scratch, tried);
    if (rename(stdout_path, kept) != 0)
        wrong++;
    say("went on %ld, status %d\n", tried, status);
}

static void look_at_child(int status) {
    static const char WANTED[] = "batten: out of memory\n";
    char said[256] = "";
    int err = open(stderr_path, O_RDONLY | O_CLOEXEC);
    ssize_t length = err < 0 ? -1 : read(err, said, sizeof said - 1);
    close(err);
    said[length < 0 ? 0 : length] = '\0';
    long before = wrong;
    if (WIFSIGNALED(status))
        wrong++, say("allocation %ld: ended by signal %d\n", tried, WTERMSIG(status));
    else if (WEXITSTATUS(status) == LEFT_BEHIND)
        wrong++, say("allocation %ld: memory was not given back\n", tried);
    else if (WEXITSTATUS(status) != STATUS_OUT_OF_MEMORY)
        went_on(WEXITSTATUS(status));
    else if (strcmp(said, WANTED) != 0)
        wrong++, say("allocation %ld: said: %s\n", tried, said);
    if (folder_entries() != entries_before)
        wrong += wrong == before, say("allocation %ld: the folder has changed\n", tried);
}

/* True in a child, whose allocation is to fail. */
static bool fails_now(void) {
    if (in_child)
        return fails_on;
    if (fail_at && watching)
        return ++tried == fail_at;
    if (count_path && watching)
        return tried++, false;
    if (!watching)
        return false;
    watching = false; /* what this does must not be watched */
    tried++;
    int kept = errno;
    keep_places();
    pid_t child = fork();
    if (child == 0) {
        become_child();
        return true;
    }
    int status = 0;
    if (child < 0 || waitpid(child, &status, 0) != child)
        wrong++, say("allocation %ld: cannot fork\n", tried);
    else
        look_at_child(status);
    restore_places();
    errno = kept;
    watching = true;
    return false;
}

static void *none(void) {
    errno = ENOMEM;
    return NULL;
}
static void *counted(void *block) {
    live += block != NULL;
    return block;
}

void *malloc(size_t size) {
    return fails_now() ? none() : counted(__libc_malloc(size));
}
void *calloc(size_t count, size_t size) {
    return fails_now() ? none() : counted(__libc_calloc(count, size));
}
void *realloc(void *block, size_t size) {
    if (fails_now())
        return none();
    void *moved = __libc_realloc(block, size);
    return block ? moved : counted(moved);
}
void *aligned_alloc(size_t alignment, size_t size) {
    return fails_now() ? none() : counted(__libc_memalign(alignment, size));
}
void free(void *block) {
    live -= block != NULL;
    __libc_free(block);
}

__attribute__((constructor)) static void start(void) {
    const char *path = getenv("FAIL_REPORT"), *at = getenv("FAIL_AT");
    scratch = getenv("FAIL_SCRATCH");
    count_path = getenv("FAIL_COUNT");
    fail_at = at ? strtol(at, NULL, 10) : 0;
    if (path && scratch) {
        report = open(path, O_WRONLY | O_CREAT | O_TRUNC | O_APPEND | O_CLOEXEC, 0600);
        snprintf(stdout_path, sizeof stdout_path, "%s/child-stdout", scratch);
        snprintf(stderr_path, sizeof stderr_path, "%s/child-stderr", scratch);
        fails_on = getenv("FAIL_ON") != NULL;
        entries_before = folder_entries();
    }
    live = 0;
    watching = report >= 0 || fail_at || count_path;
}

__attribute__((destructor)) static void end(void) {
    watching = false;
    if ((in_child || fail_at) && live)
        _exit(LEFT_BEHIND);
    if (count_path && (report = fresh_file(count_path)) >= 0)
        say("%ld\n", tried);
    else if (!in_child && report >= 0)
        say("%ld failures tried, %ld wrong\n", tried, wrong);
}
