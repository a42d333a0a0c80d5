#include "report/edit_places.h"

#include <string.h>

size_t offset_of(const struct file_text *file, struct place place) {
    size_t at = 0;
    for (int line = 1; line < place.line && at < file->length; line++) {
        const char *end = memchr(file->bytes + at, '\n', file->length - at);
        at = end ? (size_t)(end - file->bytes) + 1 : file->length;
    }
    for (int column = 1; column < place.column && at < file->length; column++)
        do
            at++;
        while (at < file->length && ((unsigned char)file->bytes[at] & 0xC0) == 0x80);
    return at;
}

static char byte_at(const struct file_text *file, size_t at) {
    return at < file->length ? file->bytes[at] : '\0';
}

static size_t quoted_end(const struct file_text *file, size_t at, char quote) {
    for (at++; at < file->length; at++) {
        if (file->bytes[at] == '\\' && quote == '"')
            at++;
        else if (file->bytes[at] == quote && quote == '\'' && byte_at(file, at + 1) == quote)
            at++;
        else if (file->bytes[at] == quote)
            return at + 1;
    }
    return at;
}

static size_t scalar_end(struct file_text *file, const struct node *node) {
    size_t at = offset_of(file, node->place), length = strlen(node->text);
    char first = byte_at(file, at);
    if (first == '"' || first == '\'')
        return quoted_end(file, at, first);
    if (length == 0 || at + length > file->length ||
        memcmp(file->bytes + at, node->text, length) != 0)
        file->lost = true;
    return at + length;
}

/* Past blanks, commas and comments. */
static size_t past_blanks(const struct file_text *file, size_t at) {
    while (at < file->length) {
        char c = file->bytes[at];
        if (c == '#')
            while (at < file->length && file->bytes[at] != '\n')
                at++;
        else if (c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == ',')
            at++;
        else
            break;
    }
    return at;
}

const struct node *last_child(const struct node *node) {
    const struct node *last = node->first;
    while (last && last->next)
        last = last->next;
    return last;
}

bool in_brackets(const struct file_text *file, const struct node *node) {
    char first = byte_at(file, offset_of(file, node->place));
    return first == '{' || first == '[';
}

size_t end_of(struct file_text *file, const struct node *node) {
    if (node->kind == NODE_TEXT)
        return scalar_end(file, node);
    const struct node *last = last_child(node);
    if (!in_brackets(file, node)) {
        file->lost |= !last;
        return last ? end_of(file, last) : 0;
    }
    size_t inside = last ? end_of(file, last) : offset_of(file, node->place) + 1;
    size_t close = past_blanks(file, inside);
    char closing = byte_at(file, close);
    file->lost |= closing != '}' && closing != ']';
    return close + 1;
}

size_t line_end(const struct file_text *file, size_t at) {
    while (at < file->length && file->bytes[at] != '\n')
        at++;
    return at;
}

int column_of(const struct file_text *file, const struct node *block) {
    if (block->kind == NODE_MAP)
        return block->first->key_place.column;
    int column = block->first->place.column;
    for (size_t at = offset_of(file, block->first->place); at > 0 && column > 1; column--)
        if (byte_at(file, --at) == '-')
            return column - 1;
    return column;
}
