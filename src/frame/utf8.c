#include "frame/utf8.h"

size_t utf8_decode(const char *bytes, size_t length, long *code) {
    static const long least[] = {0, 0, 0x80, 0x800, 0x10000};
    const unsigned char *at = (const unsigned char *)bytes;
    size_t size = at[0] < 0x80 ? 1 : at[0] < 0xC0 ? 0 : at[0] < 0xE0 ? 2 : at[0] < 0xF0 ? 3 : 4;
    if (size == 0 || size > length || at[0] > 0xF7)
        return 0;
    long value = size == 1 ? at[0] : at[0] & (0x7F >> size);
    for (size_t k = 1; k < size; k++) {
        if ((at[k] & 0xC0) != 0x80)
            return 0;
        value = value << 6 | (at[k] & 0x3F);
    }
    if (value < least[size] || value > 0x10FFFF || (value >= 0xD800 && value <= 0xDFFF))
        return 0;
    *code = value;
    return size;
}

bool utf8_printable(long code) {
    if (code < 0x20 || (code >= 0x7F && code <= 0x9F))
        return false;
    /* Zero-width and direction marks, line and paragraph separators. */
    if ((code >= 0x200B && code <= 0x200F) || (code >= 0x2028 && code <= 0x202E) ||
        (code >= 0x2060 && code <= 0x206F))
        return false;
    return code != 0xFEFF && (code & 0xFFFE) != 0xFFFE;
}
