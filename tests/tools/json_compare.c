/* json_compare - compare JSON that the program wrote with what a test expects.
 *
 *   json_compare WANT.json GOT.json [--rel R] [--abs A] [--ignore PATH]...
 *       every value; keys in the same order; numbers within R of the wanted one or within A
 *   json_compare --lines EXPECT GOT.json
 *       the lines of a tests/published case, see expect_lines.h
 *   json_compare GOT.json PATH VALUE [TOLERANCE]
 *       one value; TOLERANCE is relative where it ends in a percent sign
 *
 * Prints each value that moved, with its path and by how much, and in the first two forms
 * a last line `N passed, N failed`. Exit status 0: all as expected; 1: not; 2: cannot compare.
 */
#include "expect_lines.h"
#include "json.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_SHOWN = 25, MOST_IGNORED = 32, LONGEST_PATH = 2048 };

static struct {
    double rel, abs;
    const char *ignored[MOST_IGNORED];
    size_t ignored_count;
    unsigned long passed, failed;
} run = {.rel = 1e-6, .abs = 1e-9};

static bool is_ignored(const char *path) {
    for (size_t k = 0; k < run.ignored_count; k++)
        if (strcmp(run.ignored[k], path) == 0)
            return true;
    return false;
}

static void differs(const char *path, const char *what) {
    if (++run.failed <= MOST_SHOWN)
        printf("  %s: %s\n", *path ? path : "(the whole)", what);
    else if (run.failed == MOST_SHOWN + 1)
        puts("  ... and more");
}

static void compare_numbers(const char *path, const struct json *want, const struct json *got) {
    double off = got->number - want->number;
    if (fabs(off) <= run.rel * fabs(want->number) || fabs(off) <= run.abs) {
        run.passed++;
        return;
    }
    char what[256];
    snprintf(what, sizeof what, "want %.60s, got %.60s: moved by %.3g (%.3g of it)", want->text,
             got->text, off, off / fabs(want->number));
    differs(path, what);
}

static void compare_strings(const char *path, const struct json *want, const struct json *got) {
    if (strcmp(want->text, got->text) == 0) {
        run.passed++;
        return;
    }
    char what[1024];
    snprintf(what, sizeof what, "want \"%.450s\", got \"%.450s\"", want->text, got->text);
    differs(path, what);
}

static void compare(const char *path, const struct json *want, const struct json *got);

static void name_item(char *path, size_t length, const struct json *item, size_t index) {
    if (item->key)
        snprintf(path + length, LONGEST_PATH - length, "%s%s", length ? "." : "", item->key);
    else
        snprintf(path + length, LONGEST_PATH - length, "%s%zu", length ? "." : "", index);
}

static void compare_items(const char *parent, const struct json *want, const struct json *got) {
    char path[LONGEST_PATH], what[256];
    snprintf(path, sizeof path, "%s", parent);
    size_t length = strlen(path);
    for (size_t k = 0; k < want->count && k < got->count; k++) {
        name_item(path, length, &want->items[k], k);
        if (want->items[k].key && strcmp(want->items[k].key, got->items[k].key) != 0) {
            snprintf(what, sizeof what, "want this key here, got \"%.100s\"", got->items[k].key);
            differs(path, what);
            return;
        }
        compare(path, &want->items[k], &got->items[k]);
    }
    if (want->count != got->count) {
        snprintf(what, sizeof what, "want %zu items, got %zu", want->count, got->count);
        differs(parent, what);
    }
}

static void compare(const char *path, const struct json *want, const struct json *got) {
    if (is_ignored(path))
        return;
    if (want->kind != got->kind) {
        char what[128];
        snprintf(what, sizeof what, "want %s, got %s", json_kind_name(want->kind),
                 json_kind_name(got->kind));
        differs(path, what);
        return;
    }
    switch (want->kind) {
    case JSON_NULL:
        run.passed++;
        break;
    case JSON_BOOLEAN:
    case JSON_NUMBER: {
        static const char *const words[] = {"false", "true"};
        struct json a = *want, b = *got;
        a.text = a.text ? a.text : words[a.number != 0];
        b.text = b.text ? b.text : words[b.number != 0];
        compare_numbers(path, &a, &b);
        break;
    }
    case JSON_STRING:
        compare_strings(path, want, got);
        break;
    case JSON_LIST:
    case JSON_OBJECT:
        compare_items(path, want, got);
        break;
    }
}

static _Noreturn void usage(void) {
    fputs("json_compare WANT.json GOT.json [--rel R] [--abs A] [--ignore PATH]...\n"
          "json_compare --lines EXPECT GOT.json\n"
          "json_compare GOT.json PATH VALUE [TOLERANCE]\n",
          stderr);
    exit(2);
}

static double tolerance(const char *text) {
    char *end;
    double value = strtod(text, &end);
    if (end == text || *end || !(value >= 0) || isinf(value))
        usage();
    return value;
}

static int compare_files(int count, char **words) {
    for (int k = 2; k < count; k += 2) {
        if (k + 1 == count)
            usage();
        if (strcmp(words[k], "--rel") == 0)
            run.rel = tolerance(words[k + 1]);
        else if (strcmp(words[k], "--abs") == 0)
            run.abs = tolerance(words[k + 1]);
        else if (strcmp(words[k], "--ignore") == 0 && run.ignored_count < MOST_IGNORED)
            run.ignored[run.ignored_count++] = words[k + 1];
        else
            usage();
    }
    compare("", json_read_file(words[0]), json_read_file(words[1]));
    printf("%lu passed, %lu failed\n", run.passed, run.failed);
    return run.failed || !run.passed;
}

static int compare_one(int count, char **words) {
    char line[LONGEST_PATH];
    const char *tolerance_word = count > 3 ? words[3] : "";
    size_t length = strlen(tolerance_word);
    const char *kind = "";
    if (length && tolerance_word[length - 1] == '%')
        kind = "rel ";
    else if (length)
        kind = "abs ";
    snprintf(line, sizeof line, "%s %s %s%s", words[1], words[2], kind, tolerance_word);
    return expect_line(json_read_file(words[0]), line, "json_compare") ? 0 : 1;
}

int main(int count, char **words) {
    if (count == 4 && strcmp(words[1], "--lines") == 0)
        return expect_lines(words[2], json_read_file(words[3]));
    if (count >= 3 && (count == 3 || strncmp(words[3], "--", 2) == 0))
        return compare_files(count - 1, words + 1);
    if (count == 4 || count == 5)
        return compare_one(count - 1, words + 1);
    usage();
}
