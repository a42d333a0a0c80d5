#include "report/layout.h"

#include "report/visible.h"

#include <ctype.h>
#include <stdbool.h>
#include <string.h>

enum { BETWEEN = 2 };

void spaces(struct text *text, size_t count) {
    for (size_t k = 0; k < count; k++)
        text_bytes(text, " ", 1);
}

static size_t width_of_bytes(const char *bytes, size_t length) {
    size_t width = 0;
    for (size_t k = 0; k < length; k++)
        width += ((unsigned char)bytes[k] & 0xc0) != 0x80;
    return width;
}

/* Bytes of the next line of `words` in `room` columns, broken at a space; at least one word. A
 * number and what stands behind it (its unit) stay together. */
static size_t line_length(const char *words, size_t room) {
    size_t best = 0, end = 0;
    while (words[end]) {
        size_t word = end + strspn(words + end, " ");
        if (!words[word])
            break;
        word += strcspn(words + word, " ");
        if (best && width_of_bytes(words, word) > room)
            return best;
        end = word;
        if (!best || !words[end] || !isdigit((unsigned char)words[end - 1]))
            best = end;
    }
    return best;
}

void paragraph(struct text *text, const char *first, size_t indent, const char *words) {
    text_add(text, first);
    size_t column = text_width(first);
    do {
        size_t length = line_length(words, column < LINE_WIDTH ? LINE_WIDTH - column : 1);
        text_bytes(text, words, length);
        words += length;
        words += strspn(words, " ");
        text_add(text, "\n");
        column = indent;
        if (*words)
            spaces(text, indent);
    } while (*words);
}

void row_of_cells(struct text *text, size_t indent, const char *const *cells, const size_t *widths,
                  size_t count) {
    enum { CELLS = 8 };
    const char *left[CELLS];
    for (size_t k = 0; k < count; k++)
        left[k] = cells[k];
    bool more;
    do {
        more = false;
        size_t column = 0, wanted = indent; /* where the text ends, where the next cell starts */
        for (size_t k = 0; k < count; k++) {
            size_t length = widths[k] ? line_length(left[k], widths[k]) : strlen(left[k]);
            if (length && column + BETWEEN > wanted && column > 0) { /* a name stuck out */
                text_add(text, "\n");
                column = 0;
            }
            if (length) {
                spaces(text, wanted - column);
                text_bytes(text, left[k], length);
                column = wanted + width_of_bytes(left[k], length);
            }
            left[k] += length;
            left[k] += strspn(left[k], " ");
            more = more || *left[k];
            wanted += widths[k] + BETWEEN;
        }
        text_add(text, "\n");
    } while (more);
}
