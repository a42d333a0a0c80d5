#include "report/json_write.h"

#include "frame/utf8.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum { BLOCK = 64 * 1024 };

struct json *json_new(struct arena *arena, struct json_sink sink) {
    struct json *json = ARENA_NEW(arena, struct json);
    json->text = text_new(arena);
    json->sink = sink;
    return json;
}

static void hand_on(struct json *json) {
    if (!json->sink.put || !json->text.count)
        return;
    json->sink.put(json->sink.to, json->text.items, json->text.count);
    json->text.count = 0;
}

static void add(struct json *json, const char *bytes, size_t length) {
    if (json->text.count + length > BLOCK)
        hand_on(json);
    text_bytes(&json->text, bytes, length);
}

static void new_line(struct json *json) {
    static const char SPACES[] = "                                ";
    static_assert(sizeof SPACES > 2 * JSON_DEPTH, "two spaces for each open object");
    add(json, "\n", 1);
    add(json, SPACES, 2 * (size_t)json->depth);
}

/* What stands between the entry before and the one that comes now. */
static void start_entry(struct json *json) {
    if (json->after_key) {
        json->after_key = false;
        return;
    }
    if (json->depth == 0)
        return;
    bool filled = json->open[json->depth - 1].filled;
    bool lines = json->open[json->depth - 1].layout == JSON_LINES;
    json->open[json->depth - 1].filled = true;
    if (filled)
        add(json, ", ", lines ? 1 : 2);
    if (lines)
        new_line(json);
}

static void open(struct json *json, char begin, char end, enum json_layout layout) {
    start_entry(json);
    assert(json->depth < JSON_DEPTH);
    add(json, &begin, 1);
    if (json->depth && json->open[json->depth - 1].layout == JSON_ONE_LINE)
        layout = JSON_ONE_LINE;
    json->open[json->depth].close = end;
    json->open[json->depth].layout = layout;
    json->open[json->depth].filled = false;
    json->depth++;
}

void json_object(struct json *json, enum json_layout layout) {
    open(json, '{', '}', layout);
}

void json_list(struct json *json, enum json_layout layout) {
    open(json, '[', ']', layout);
}

void json_close(struct json *json) {
    assert(json->depth > 0 && !json->after_key);
    json->depth--;
    if (json->open[json->depth].filled && json->open[json->depth].layout == JSON_LINES)
        new_line(json);
    add(json, &json->open[json->depth].close, 1);
}

static void quoted(struct json *json, const char *string) {
    add(json, "\"", 1);
    while (*string) {
        const char *plain = string;
        while ((unsigned char)*plain >= 0x20 && (unsigned char)*plain < 0x7f && *plain != '"' &&
               *plain != '\\')
            plain++;
        if (plain > string) {
            add(json, string, (size_t)(plain - string));
            string = plain;
            continue;
        }
        long code;
        size_t length = utf8_decode(string, 4, &code); /* stops at the end of the string */
        if (length > 1)
            add(json, string, length);
        else if ((unsigned char)*string >= 0x80)
            add(json, "\xEF\xBF\xBD", 3); /* U+FFFD: these bytes are no UTF-8 */
        else if (*string == '"' || *string == '\\')
            add(json, (const char[]){'\\', *string}, 2);
        else {
            static const char HEX[] = "0123456789abcdef";
            add(json, (const char[]){'\\', 'u', '0', '0', HEX[code >> 4], HEX[code & 15]}, 6);
        }
        string += length ? length : 1;
    }
    add(json, "\"", 1);
}

void json_key(struct json *json, const char *key) {
    start_entry(json);
    quoted(json, key);
    add(json, ": ", 2);
    json->after_key = true;
}

void json_string(struct json *json, const char *string) {
    if (!string) {
        json_null(json);
        return;
    }
    start_entry(json);
    quoted(json, string);
}

void json_null(struct json *json) {
    start_entry(json);
    add(json, "null", 4);
}

void json_bool(struct json *json, bool value) {
    start_entry(json);
    add(json, value ? "true" : "false", value ? 4 : 5);
}

void json_number(struct json *json, double value) {
    if (!isfinite(value)) {
        json_null(json);
        return;
    }
    char digits[SHORTEST_ROOM];
    size_t length = shortest_write(&json->powers, value, digits);
    start_entry(json);
    add(json, digits, length);
}

void json_numbers(struct json *json, const double *values, size_t count) {
    json_list(json, JSON_ONE_LINE);
    for (size_t k = 0; k < count; k++)
        json_number(json, values[k]);
    json_close(json);
}

void json_key_string(struct json *json, const char *key, const char *string) {
    json_key(json, key);
    json_string(json, string);
}

void json_key_number(struct json *json, const char *key, double value) {
    json_key(json, key);
    json_number(json, value);
}

void json_key_bool(struct json *json, const char *key, bool value) {
    json_key(json, key);
    json_bool(json, value);
}

void json_key_strings(struct json *json, const char *key, const char *const *items, size_t count) {
    json_key(json, key);
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < count; k++)
        json_string(json, items[k]);
    json_close(json);
}

void json_end(struct json *json) {
    assert(json->depth == 0);
    add(json, "\n", 1);
    hand_on(json);
}
