/* frame/utf8.h - one character of UTF-8 text. */
#ifndef FRAME_UTF8_H
#define FRAME_UTF8_H

#include <stdbool.h>
#include <stddef.h>

/* The bytes of the first character, 1 to 4, with its code point; 0 where they are not UTF-8
 * (too long forms, surrogates and what lies over U+10FFFF included). `length` is at least 1. */
size_t utf8_decode(const char *bytes, size_t length, long *code);

/* True where a character shows as something and does not change how its neighbours are shown. */
bool utf8_printable(long code);

#endif
