#include "cli/output.h"

#include "report/problem_text.h"
#include "report/visible.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

/* The first failure's reason; later calls overwrite errno. */
static int write_trouble;

static void put(void *to, const char *bytes, size_t length) {
    errno = 0;
    if (fwrite(bytes, 1, length, to) != length && !write_trouble)
        write_trouble = errno ? errno : EIO;
}

struct json_sink output_sink(void) {
    return (struct json_sink){put, stdout};
}

void output_text(const struct text *text) {
    put(stdout, text_string(text), text->count);
}

void message(struct arena *arena, const char *words) {
    fprintf(stderr, "batten: %s\n", visible(arena, words));
}

enum exit_status output_problems(struct arena *arena, const char *file_name,
                                 struct problems *problems, bool as_json) {
    problems_sort(problems);
    struct text text = text_new(arena);
    problem_text(&text, file_name ? file_name : "batten", problems);
    fputs(text_string(&text), stderr);
    if (!file_name)
        fputs("batten --help says what there is.\n", stderr);
    if (as_json)
        problem_json(json_new(arena, output_sink()), problems);
    return EXIT_WRONG_INPUT;
}

enum exit_status output_close(enum exit_status status) {
    errno = 0;
    if (fclose(stdout) != 0 && !write_trouble)
        write_trouble = errno ? errno : EIO;
    if (!write_trouble)
        return status;
    fprintf(stderr, "batten: cannot write the answer: %s\n", strerror(write_trouble));
    return EXIT_TROUBLE;
}
