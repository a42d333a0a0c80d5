/* base/text.h - text that grows, in an arena. */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include "base/arena.h"

#include <stdarg.h>

struct text {
    struct arena *arena;
    char *items;  /* terminated by 0 once anything was added; NULL before */
    size_t count; /* bytes without the 0 */
    size_t capacity;
};

/* An empty text. */
struct text text_new(struct arena *arena);

void text_bytes(struct text *text, const char *bytes, size_t length);
void text_add(struct text *text, const char *string);
void text_print(struct text *text, const char *format, ...) __attribute__((format(printf, 2, 3)));
void text_print_list(struct text *text, const char *format, va_list arguments);

/* What was written so far, "" when nothing. */
const char *text_string(const struct text *text);

#endif
