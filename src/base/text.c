#include "base/text.h"

#include <stdio.h>
#include <string.h>

struct text text_new(struct arena *arena) {
    return (struct text){.arena = arena};
}

static void reserve(struct text *text, size_t more) {
    size_t needed = text->count + more + 1;
    if (needed <= text->capacity)
        return;
    size_t capacity = text->capacity * 2 > needed ? text->capacity * 2 : needed + 128;
    char *grown = arena_take(text->arena, capacity, 1);
    if (text->count)
        memcpy(grown, text->items, text->count);
    text->items = grown;
    text->capacity = capacity;
}

void text_bytes(struct text *text, const char *bytes, size_t length) {
    reserve(text, length);
    if (length)
        memcpy(text->items + text->count, bytes, length);
    text->count += length;
    text->items[text->count] = '\0';
}

void text_add(struct text *text, const char *string) {
    text_bytes(text, string, strlen(string));
}

void text_print_list(struct text *text, const char *format, va_list arguments) {
    va_list again;
    va_copy(again, arguments);
    int length = vsnprintf(NULL, 0, format, again);
    va_end(again);
    if (length < 0)
        return;
    reserve(text, (size_t)length);
    vsnprintf(text->items + text->count, (size_t)length + 1, format, arguments);
    text->count += (size_t)length;
}

void text_print(struct text *text, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    text_print_list(text, format, arguments);
    va_end(arguments);
}

const char *text_string(const struct text *text) {
    return text->items ? text->items : "";
}
