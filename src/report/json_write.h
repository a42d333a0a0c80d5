/* report/json_write.h - writing one JSON document.
 *
 * Numbers in the shortest form that reads back the same, -0 as 0, not finite as null. Strings are
 * escaped; valid UTF-8 passes through, other bytes become U+FFFD. The layout is fixed: an object or
 * list is opened either over several lines (one entry a line) or within one line; everything inside
 * one line stays in it. Memory comes from the arena; with a sink the text is handed on in blocks
 * and does not pile up.
 */
#ifndef REPORT_JSON_WRITE_H
#define REPORT_JSON_WRITE_H

#include "base/arena.h"
#include "base/text.h"
#include "report/shortest.h"

#include <stdbool.h>
#include <stddef.h>

/* Takes `length` bytes; the owner of the sink keeps track of failures. A NULL `put` keeps the whole
 * document in `json->text`. */
struct json_sink {
    void (*put)(void *to, const char *bytes, size_t length);
    void *to;
};

enum { JSON_DEPTH = 16 };
enum json_layout { JSON_LINES, JSON_ONE_LINE };

struct json {
    struct text text;
    struct json_sink sink;
    struct powers_of_ten powers;
    int depth;
    bool after_key;
    struct {
        char close;
        enum json_layout layout;
        bool filled;
    } open[JSON_DEPTH];
};

struct json *json_new(struct arena *arena, struct json_sink sink);

void json_object(struct json *json, enum json_layout layout);
void json_list(struct json *json, enum json_layout layout);
void json_close(struct json *json); /* the innermost object or list */

void json_key(struct json *json, const char *key);
void json_number(struct json *json, double value);
void json_string(struct json *json, const char *string); /* NULL: null */
void json_null(struct json *json);
void json_bool(struct json *json, bool value);
void json_numbers(struct json *json, const double *values, size_t count); /* a list in one line */

/* A key with its value. */
void json_key_string(struct json *json, const char *key, const char *string);
void json_key_number(struct json *json, const char *key, double value);
void json_key_bool(struct json *json, const char *key, bool value);
void json_key_strings(struct json *json, const char *key, const char *const *items, size_t count);

/* A newline, and what is left to the sink. */
void json_end(struct json *json);

#endif
