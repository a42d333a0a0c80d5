#include "base/near.h"
#include "base/text.h"
#include "frame/reader.h"
#include "frame/tree.h"
#include "units/quote.h"

#include <ctype.h>
#include <string.h>

enum { FEW_NAMES = 12 };

bool told_enough(const struct reader *reader) {
    return reader->problems->count > MOST_PROBLEMS;
}

static void add(struct reader *reader, struct place place, const char *key, const char *format,
                va_list arguments) {
    struct problems *problems = reader->problems;
    if (told_enough(reader))
        return;
    if (problems->count == MOST_PROBLEMS) {
        problem_add(problems, place, "", "more than %d problems; the rest is not listed",
                    MOST_PROBLEMS);
        return;
    }
    struct text message = text_new(reader->arena);
    text_print_list(&message, format, arguments);
    problem_add(problems, place, key, "%s", text_string(&message));
}

void trouble(struct reader *reader, const struct node *node, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    if (!told_enough(reader)) /* before the path: it costs time in a long list */
        add(reader, node->place, node_path(reader->arena, node), format, arguments);
    va_end(arguments);
}

void trouble_with_key(struct reader *reader, const struct node *node, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    if (!told_enough(reader))
        add(reader, node->key_place, node_path(reader->arena, node), format, arguments);
    va_end(arguments);
}

void trouble_at(struct reader *reader, struct place place, const char *key, const char *format,
                ...) {
    va_list arguments;
    va_start(arguments, format);
    add(reader, place, key, format, arguments);
    va_end(arguments);
}

void trouble_missing(struct reader *reader, const struct node *map, const char *key,
                     const char *expected) {
    const char *path = node_path(reader->arena, map);
    trouble_at(reader, map->key_place,
               arena_print(reader->arena, "%s%s%s", path, *path ? "." : "", key),
               "'%s' is missing; expected %s", key, expected);
}

void caution(struct reader *reader, const char *format, ...) {
    struct text message = text_new(reader->arena);
    va_list arguments;
    va_start(arguments, format);
    text_print_list(&message, format, arguments);
    va_end(arguments);
    ARRAY_PUSH(reader->arena, &reader->frame->cautions, text_string(&message));
}

static const char *listed(struct reader *reader, const char *word, const char *const *names,
                          size_t count) {
    struct text text = text_new(reader->arena);
    text_print(&text, "; %s ", word);
    for (size_t k = 0; k < count; k++)
        text_print(&text, "%s%s", k ? ", " : "", plain_text(reader->arena, names[k]));
    return text_string(&text);
}

static bool same_but_for_capitals(const char *a, const char *b) {
    while (*a && tolower((unsigned char)*a) == tolower((unsigned char)*b)) {
        a++;
        b++;
    }
    return *a == *b;
}

const char *hint(struct reader *reader, const char *found, const char *word,
                 const char *const *names, size_t count) {
    const char *near = NULL;
    if (reader->comparisons_left >= (long)count) {
        reader->comparisons_left -= (long)count;
        near = near_name(found, names, count);
    }
    /* Of one or two letters nearly anything is near: only capitals may differ. */
    if (near && strlen(found) < 3 && !same_but_for_capitals(found, near))
        near = NULL;
    if (near)
        return arena_print(reader->arena, "; did you mean '%s'?", plain_text(reader->arena, near));
    return count > 0 && count <= FEW_NAMES ? listed(reader, word, names, count) : "";
}
