#include "cli/read_input.h"

#include "frame/input_guard.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

const char *input_name(const char *path) {
    return strcmp(path, "-") == 0 ? "<stdin>" : path;
}

static void close_file(void *file) {
    fclose(file);
}

/* Why the file cannot be read, by errno. Too little memory is no fault of the file. */
static const char *trouble(struct arena *arena) {
    if (errno == ENOMEM)
        arena_exhausted(arena);
    return arena_print(arena, "cannot be read: %s", strerror(errno));
}

bool read_input(const char *path, struct text *bytes, const char **why) {
    struct arena *arena = bytes->arena;
    FILE *file = stdin;
    if (strcmp(path, "-") != 0) {
        file = fopen(path, "rb");
        if (!file) {
            *why = trouble(arena);
            return false;
        }
        arena_defer(arena, close_file, file);
    }
    char block[16 * 1024];
    size_t got;
    while ((got = fread(block, 1, sizeof block, file)) > 0) {
        text_bytes(bytes, block, got);
        if (bytes->count > INPUT_BYTES) {
            *why = "larger than 4 MiB; a frame's description is a few kilobytes";
            return false;
        }
    }
    if (ferror(file)) {
        *why = trouble(arena);
        return false;
    }
    return true;
}
