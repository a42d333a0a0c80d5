#include "expect_lines.h"

#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST_LINE = 1024, MOST_WORDS = 16 };

#define POUND 4.4482216152605
#define INCH 0.0254

static const struct {
    const char *name;
    double si;
} units[] = {
    {"m", 1},
    {"cm", 1e-2},
    {"mm", 1e-3},
    {"in", INCH},
    {"ft", 12 * INCH},
    {"N", 1},
    {"kN", 1e3},
    {"lb", POUND},
    {"kip", 1e3 * POUND},
    {"kg", 1},
    {"Pa", 1},
    {"kPa", 1e3},
    {"MPa", 1e6},
    {"psf", POUND / (144 * INCH * INCH)},
    {"psi", POUND / (INCH * INCH)},
    {"ksi", 1e3 * POUND / (INCH * INCH)},
    {"N/m", 1},
    {"kN/m", 1e3},
    {"lb/in", POUND / INCH},
    {"plf", POUND / (12 * INCH)},
    {"N-m", 1},
    {"kN-m", 1e3},
    {"lb-in", POUND *INCH},
    {"lb-ft", 12 * POUND *INCH},
    {"kip-in", 1e3 * POUND *INCH},
    {"kip-ft", 12e3 * POUND *INCH},
    {"rad", 1},
    {"mrad", 1e-3},
    {"deg", 3.14159265358979323846 / 180},
    {"m/s", 1},
    {"mph", 0.44704},
};

static bool unit_factor(const char *name, double *factor) {
    for (size_t k = 0; k < sizeof units / sizeof *units; k++)
        if (strcmp(units[k].name, name) == 0) {
            *factor = units[k].si;
            return true;
        }
    return false;
}

struct words {
    char text[LONGEST_LINE];
    char *items[MOST_WORDS];
    size_t count;
    size_t next;
};

static bool split(struct words *words, const char *line) {
    words->count = words->next = 0;
    if (strlen(line) >= sizeof words->text)
        return false;
    strcpy(words->text, line);
    for (char *word = strtok(words->text, " \t\r\n"); word; word = strtok(NULL, " \t\r\n")) {
        if (*word == '#')
            break;
        if (words->count == MOST_WORDS)
            return false;
        words->items[words->count++] = word;
    }
    return true;
}

static const char *next_word(struct words *words) {
    return words->next < words->count ? words->items[words->next++] : NULL;
}

static bool read_number(const char *word, double *value) {
    char *end;
    *value = strtod(word, &end);
    return end != word && *end == '\0' && isfinite(*value);
}

/* The unit, where the next word is one. */
static void maybe_unit(struct words *words, double *factor) {
    if (words->next < words->count && unit_factor(words->items[words->next], factor))
        words->next++;
}

/* `abs 5e-6 in`, `rel 1e-4`, `rel 0.1%` or nothing. NULL, or what is wrong. */
static const char *read_tolerance(struct words *words, double factor, double *rel, double *abs) {
    const char *kind = next_word(words), *number = next_word(words);
    *rel = *abs = 0;
    if (!kind)
        return NULL;
    bool relative = strcmp(kind, "rel") == 0;
    if (!relative && strcmp(kind, "abs") != 0)
        return "unknown unit, or neither `abs` nor `rel`";
    char *end;
    double value = number ? strtod(number, &end) : NAN;
    bool percent = relative && number && *end == '%';
    if (!(value >= 0) || isinf(value) || end[percent] != '\0')
        return "the tolerance is missing or no number";
    if (relative)
        *rel = percent ? value / 100 : value;
    else {
        maybe_unit(words, &factor);
        *abs = value * factor;
    }
    return words->next < words->count ? "something stands after the tolerance" : NULL;
}

static bool expect_number(const struct json *got, double want, struct words *words,
                          const char *where) {
    double factor = 1, rel, abs;
    maybe_unit(words, &factor);
    const char *wrong = read_tolerance(words, factor, &rel, &abs);
    if (wrong) {
        printf("  %s: %s\n", where, wrong);
        return false;
    }
    if (got->kind != JSON_NUMBER) {
        printf("  %s: want a number, got %s\n", where, json_kind_name(got->kind));
        return false;
    }
    double value = got->number / factor, off = value - want;
    if (fabs(off) * factor <= abs || fabs(off) <= rel * fabs(want))
        return true;
    printf("  %s: want %.9g, got %.9g: off by %.3g, allowed %.3g\n", where, want, value, off,
           fmax(abs / factor, rel * fabs(want)));
    return false;
}

static bool expect_word(const struct json *got, const char *want, const char *where) {
    const char *text = got->text;
    if (got->kind == JSON_NULL)
        text = "null";
    else if (got->kind == JSON_BOOLEAN)
        text = got->number != 0 ? "true" : "false";
    if (text && strcmp(text, want) == 0)
        return true;
    printf("  %s: want %s, got %s\n", where, want, text ? text : json_kind_name(got->kind));
    return false;
}

bool expect_line(const struct json *json, const char *line, const char *place) {
    struct words words;
    const char *path = split(&words, line) ? next_word(&words) : NULL;
    const char *want = next_word(&words);
    if (!path || !want) {
        printf("  %s: a path and a value were expected\n", place);
        return false;
    }
    char where[LONGEST_LINE + 256];
    snprintf(where, sizeof where, "%s: %s", place, path);
    const struct json *got = json_find(json, path);
    if (!got) {
        printf("  %s: is not there\n", where);
        return false;
    }
    double number;
    if (read_number(want, &number))
        return expect_number(got, number, &words, where);
    if (words.next < words.count) {
        printf("  %s: something stands after the word %s\n", where, want);
        return false;
    }
    return expect_word(got, want, where);
}

static bool for_the_runner(const char *line) {
    return strncmp(line, "exit ", 5) == 0 || strncmp(line, "command ", 8) == 0;
}

int expect_lines(const char *path, const struct json *json) {
    FILE *file = fopen(path, "r");
    if (!file) {
        printf("  %s: %s\n", path, strerror(errno));
        return 2;
    }
    char line[LONGEST_LINE], place[512];
    unsigned long passed = 0, failed = 0, comments = 0;
    for (int number = 1; fgets(line, sizeof line, file); number++) {
        size_t start = strspn(line, " \t\r\n");
        comments += strchr(line, '#') != NULL;
        if (line[start] == '\0' || line[start] == '#' || for_the_runner(line))
            continue;
        snprintf(place, sizeof place, "%s:%d", path, number);
        *(expect_line(json, line, place) ? &passed : &failed) += 1;
    }
    fclose(file);
    if (!comments || passed + failed == 0) {
        printf("  %s: %s\n", path, comments ? "expects nothing" : "names no source");
        return 2;
    }
    printf("%lu passed, %lu failed\n", passed, failed);
    return failed ? 1 : 0;
}
