/* json.h - reading JSON for the test runners. Strict: a key given twice, a trailing comma, NaN or
 * anything after the value is an error. Nothing is freed: these programs end at once. */
#ifndef TESTS_TOOLS_JSON_H
#define TESTS_TOOLS_JSON_H

#include <stdbool.h>
#include <stddef.h>

enum json_kind { JSON_NULL, JSON_BOOLEAN, JSON_NUMBER, JSON_STRING, JSON_LIST, JSON_OBJECT };

struct json {
    enum json_kind kind;
    const char *key;  /* inside an object; else NULL */
    double number;    /* JSON_NUMBER; 1 for true */
    const char *text; /* JSON_STRING, escapes resolved; JSON_NUMBER, as written */
    struct json *items;
    size_t count;
};

/* The value in `path`. Prints what is wrong, with its place, and exits 2 where it is not JSON. */
struct json *json_read_file(const char *path);

/* "an object", "a number" ... */
const char *json_kind_name(enum json_kind kind);

/* The value at a path such as `cases.tray.joints.d.2`, `checks[sag/lower/rail-1].ratio` (the item
 * whose id, symbol or size is that) or `braces.#` (how many); a key may itself hold dots. NULL
 * where there is none. */
const struct json *json_find(const struct json *from, const char *path);

#endif
