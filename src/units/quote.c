#include "units/quote.h"

#include <string.h>

enum { LONGEST_QUOTE = 64 };

const char *plain_text(struct arena *arena, const char *text) {
    size_t length = strlen(text);
    const char *tail = "";
    if (length > LONGEST_QUOTE) {
        length = LONGEST_QUOTE;
        while (length > 0 && ((unsigned char)text[length] & 0xC0) == 0x80)
            length--;
        tail = "...";
    }
    char *plain = arena_print(arena, "%.*s%s", (int)length, text, tail);
    for (char *at = plain; *at; at++)
        if ((unsigned char)*at < 0x20 || *at == 0x7F)
            *at = '?';
    return plain;
}

const char *quote_text(struct arena *arena, const char *text) {
    return arena_print(arena, "'%s'", plain_text(arena, text));
}
