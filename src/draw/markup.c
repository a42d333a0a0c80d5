#include "draw/markup.h"

#include "frame/utf8.h"

/* The decoder stops at a byte that is none of a character's, and so at the end of the string. */
enum { UTF8_MOST = 4 };
static const char REPLACEMENT[] = "\xEF\xBF\xBD";

static const char *reference(long code) {
    switch (code) {
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '&':
        return "&amp;";
    case '"':
        return "&quot;";
    case '\'':
        return "&#39;";
    default:
        return NULL;
    }
}

void markup_add(struct text *text, const char *string) {
    while (*string) {
        long code = 0;
        size_t length = utf8_decode(string, UTF8_MOST, &code);
        const char *instead = length ? reference(code) : REPLACEMENT;
        if (!instead && !utf8_printable(code))
            instead = REPLACEMENT;
        if (instead)
            text_add(text, instead);
        else
            text_bytes(text, string, length);
        string += length ? length : 1;
    }
}

const char *markup(struct arena *arena, const char *string) {
    struct text text = text_new(arena);
    markup_add(&text, string);
    return text_string(&text);
}
