#include "report/visible.h"

#include "base/text.h"
#include "frame/utf8.h"

/* The decoder stops at a byte that is none of a character's, and so at the end of the string. */
enum { UTF8_MOST = 4 };

const char *visible(struct arena *arena, const char *string) {
    struct text text = text_new(arena);
    while (*string) {
        long code = (unsigned char)*string;
        size_t length = utf8_decode(string, UTF8_MOST, &code);
        if (length && utf8_printable(code))
            text_bytes(&text, string, length);
        else
            text_print(&text, code < 0x100 ? "\\x%02lx" : "\\u%04lx", code);
        string += length ? length : 1;
    }
    return text_string(&text);
}

size_t text_width(const char *string) {
    size_t width = 0;
    for (; *string; string++)
        width += ((unsigned char)*string & 0xc0) != 0x80;
    return width;
}
