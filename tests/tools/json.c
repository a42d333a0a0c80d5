#include "json.h"

#include <ctype.h>
#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { DEEPEST = 200 };

struct reader {
    const char *path, *start, *at, *end;
    int depth;
};

static _Noreturn void refuse(const struct reader *reader, const char *what) {
    int line = 1, column = 1;
    for (const char *p = reader->start; p < reader->at; p++) {
        column = *p == '\n' ? 1 : column + 1;
        line += *p == '\n';
    }
    fprintf(stderr, "%s:%d:%d: not JSON: %s\n", reader->path, line, column, what);
    exit(2);
}

static void *take(size_t size) {
    void *taken = calloc(1, size ? size : 1);
    if (!taken) {
        fputs("out of memory\n", stderr);
        exit(2);
    }
    return taken;
}

static void skip_space(struct reader *reader) {
    while (reader->at < reader->end && strchr(" \t\r\n", *reader->at) && *reader->at)
        reader->at++;
}

static bool accept(struct reader *reader, char wanted) {
    skip_space(reader);
    if (reader->at == reader->end || *reader->at != wanted)
        return false;
    reader->at++;
    return true;
}

static unsigned read_hex(struct reader *reader) {
    char digits[5] = {0};
    for (int k = 0; k < 4; k++) {
        if (reader->at == reader->end || !isxdigit((unsigned char)*reader->at))
            refuse(reader, "four hexadecimal digits expected");
        digits[k] = *reader->at++;
    }
    return (unsigned)strtoul(digits, NULL, 16);
}

static char *put_utf8(char *to, unsigned code) {
    if (code < 0x80) {
        *to++ = (char)code;
    } else if (code < 0x800) {
        *to++ = (char)(0xc0 | code >> 6);
        *to++ = (char)(0x80 | (code & 0x3f));
    } else if (code < 0x10000) {
        *to++ = (char)(0xe0 | code >> 12);
        *to++ = (char)(0x80 | (code >> 6 & 0x3f));
        *to++ = (char)(0x80 | (code & 0x3f));
    } else {
        *to++ = (char)(0xf0 | code >> 18);
        *to++ = (char)(0x80 | (code >> 12 & 0x3f));
        *to++ = (char)(0x80 | (code >> 6 & 0x3f));
        *to++ = (char)(0x80 | (code & 0x3f));
    }
    return to;
}

static char *read_escape(struct reader *reader, char *to) {
    static const char letters[] = "\"\\/bfnrt", meant[] = "\"\\/\b\f\n\r\t";
    char letter = reader->at < reader->end ? *reader->at++ : '\0';
    if (letter == 'u') {
        unsigned code = read_hex(reader);
        if (code >= 0xd800 && code < 0xdc00) {
            if (reader->end - reader->at < 2 || reader->at[0] != '\\' || reader->at[1] != 'u')
                refuse(reader, "half a surrogate pair");
            reader->at += 2;
            unsigned low = read_hex(reader);
            if (low < 0xdc00 || low > 0xdfff)
                refuse(reader, "half a surrogate pair");
            code = 0x10000 + ((code - 0xd800) << 10) + (low - 0xdc00);
        }
        return put_utf8(to, code);
    }
    const char *known = letter ? strchr(letters, letter) : NULL;
    if (!known)
        refuse(reader, "unknown escape");
    *to++ = meant[known - letters];
    return to;
}

static const char *read_string(struct reader *reader) {
    if (!accept(reader, '"'))
        refuse(reader, "a string expected");
    char *text = take((size_t)(reader->end - reader->at) + 1), *to = text;
    while (reader->at < reader->end && *reader->at != '"') {
        unsigned char byte = (unsigned char)*reader->at++;
        if (byte < 0x20)
            refuse(reader, "a control character in a string");
        if (byte == '\\')
            to = read_escape(reader, to);
        else
            *to++ = (char)byte;
    }
    if (!accept(reader, '"'))
        refuse(reader, "the string does not end");
    char *fitted = realloc(text, (size_t)(to - text) + 1);
    return fitted ? fitted : text;
}

static size_t digits(const char **at) {
    const char *start = *at;
    while (isdigit((unsigned char)**at))
        ++*at;
    return (size_t)(*at - start);
}

static void read_number(struct reader *reader, struct json *value) {
    const char *start = reader->at, *at = start;
    at += *at == '-';
    bool zero_first = *at == '0';
    size_t whole = digits(&at);
    if (!whole || (zero_first && whole > 1))
        refuse(reader, "a value expected");
    if (*at == '.' && (at++, !digits(&at)))
        refuse(reader, "digits expected after the point");
    if (*at == 'e' || *at == 'E') {
        at++;
        at += *at == '-' || *at == '+';
        if (!digits(&at))
            refuse(reader, "digits expected in the exponent");
    }
    value->kind = JSON_NUMBER;
    value->number = strtod(start, NULL);
    value->text = strndup(start, (size_t)(at - start));
    if (!isfinite(value->number))
        refuse(reader, "a number too large");
    reader->at = at;
}

static struct json read_value(struct reader *reader);

static void add_item(struct reader *reader, struct json *parent, const char *key) {
    for (size_t k = 0; key && k < parent->count; k++)
        if (strcmp(parent->items[k].key, key) == 0)
            refuse(reader, "a key given twice");
    struct json item = read_value(reader);
    item.key = key;
    if ((parent->count & (parent->count + 1)) == 0) { /* 0, 1, 3, 7 ...: full */
        struct json *grown = realloc(parent->items, (2 * parent->count + 1) * sizeof *grown);
        if (!grown)
            refuse(reader, "out of memory");
        parent->items = grown;
    }
    parent->items[parent->count++] = item;
}

static void read_items(struct reader *reader, struct json *value, char last) {
    bool object = value->kind == JSON_OBJECT;
    if (++reader->depth > DEEPEST)
        refuse(reader, "nested too deep");
    if (!accept(reader, last)) {
        do {
            const char *key = object ? read_string(reader) : NULL;
            if (object && !accept(reader, ':'))
                refuse(reader, "a colon expected");
            add_item(reader, value, key);
        } while (accept(reader, ','));
        if (!accept(reader, last))
            refuse(reader, "a comma or the end of the list or object expected");
    }
    reader->depth--;
}

static bool accept_word(struct reader *reader, const char *word) {
    size_t length = strlen(word);
    if ((size_t)(reader->end - reader->at) < length || memcmp(reader->at, word, length) != 0)
        return false;
    reader->at += length;
    return true;
}

static struct json read_value(struct reader *reader) {
    struct json value = {.kind = JSON_NULL};
    skip_space(reader);
    if (accept(reader, '{')) {
        value.kind = JSON_OBJECT;
        read_items(reader, &value, '}');
    } else if (accept(reader, '[')) {
        value.kind = JSON_LIST;
        read_items(reader, &value, ']');
    } else if (reader->at < reader->end && *reader->at == '"') {
        value.kind = JSON_STRING;
        value.text = read_string(reader);
    } else if (accept_word(reader, "true")) {
        value = (struct json){.kind = JSON_BOOLEAN, .number = 1};
    } else if (accept_word(reader, "false")) {
        value.kind = JSON_BOOLEAN;
    } else if (!accept_word(reader, "null")) {
        read_number(reader, &value);
    }
    return value;
}

static char *whole_file(const char *path, size_t *length) {
    FILE *file = strcmp(path, "-") == 0 ? stdin : fopen(path, "rb");
    if (!file) {
        fprintf(stderr, "%s: %s\n", path, strerror(errno));
        exit(2);
    }
    char *bytes = NULL;
    size_t capacity = 0, got = 1;
    for (*length = 0; got; *length += got) {
        if (*length + 65536 > capacity)
            bytes = realloc(bytes, (capacity = 2 * capacity + 131072));
        if (!bytes) {
            fputs("out of memory\n", stderr);
            exit(2);
        }
        got = fread(bytes + *length, 1, 65536, file);
    }
    bytes[*length] = '\0';
    return bytes;
}

struct json *json_read_file(const char *path) {
    size_t length;
    char *bytes = whole_file(path, &length);
    struct reader reader = {.path = path, .start = bytes, .at = bytes, .end = bytes + length};
    struct json *value = take(sizeof *value);
    *value = read_value(&reader);
    skip_space(&reader);
    if (reader.at != reader.end)
        refuse(&reader, "something stands after the value");
    return value;
}

const char *json_kind_name(enum json_kind kind) {
    static const char *const names[] = {"null",     "true or false", "a number",
                                        "a string", "a list",        "an object"};
    return names[kind];
}

/* What tells the items of a list apart: checks, the steps of a working, the rows of a span. */
static bool is_name_key(const char *key) {
    return strcmp(key, "id") == 0 || strcmp(key, "symbol") == 0 || strcmp(key, "size") == 0;
}

/* The item of `list` whose name is the text up to the closing bracket; *rest gets what follows. */
static const struct json *find_by_id(const struct json *list, const char *path, const char **rest) {
    const char *close = strchr(path, ']');
    if (!close || list->kind != JSON_LIST)
        return NULL;
    *rest = close + 1;
    for (size_t k = 0; k < list->count; k++) {
        const struct json *item = &list->items[k];
        for (size_t i = 0; item->kind == JSON_OBJECT && i < item->count; i++)
            if (is_name_key(item->items[i].key) && item->items[i].kind == JSON_STRING &&
                strlen(item->items[i].text) == (size_t)(close - path) &&
                memcmp(item->items[i].text, path, (size_t)(close - path)) == 0)
                return item;
    }
    return NULL;
}

static bool ends_a_key(char byte) {
    return byte == '\0' || byte == '.' || byte == '[';
}

static const struct json *find_by_key(const struct json *object, const char *path) {
    for (size_t k = 0; k < object->count; k++) {
        size_t length = strlen(object->items[k].key);
        if (strncmp(object->items[k].key, path, length) == 0 && ends_a_key(path[length])) {
            const struct json *found = json_find(&object->items[k], path + length);
            if (found)
                return found;
        }
    }
    return NULL;
}

const struct json *json_find(const struct json *from, const char *path) {
    if (*path == '\0')
        return from;
    if (*path == '[') {
        const char *rest = NULL;
        const struct json *item = find_by_id(from, path + 1, &rest);
        return item ? json_find(item, rest) : NULL;
    }
    path += *path == '.';
    if (strcmp(path, "#") == 0 && (from->kind == JSON_LIST || from->kind == JSON_OBJECT)) {
        struct json *count = take(sizeof *count);
        *count = (struct json){.kind = JSON_NUMBER, .number = (double)from->count, .text = "count"};
        return count;
    }
    if (from->kind == JSON_OBJECT)
        return find_by_key(from, path);
    if (from->kind != JSON_LIST || !isdigit((unsigned char)*path))
        return NULL;
    char *rest;
    unsigned long index = strtoul(path, &rest, 10);
    return index < from->count && ends_a_key(*rest) ? json_find(&from->items[index], rest) : NULL;
}
