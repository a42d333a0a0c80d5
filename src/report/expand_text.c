#include "report/expand_text.h"

#include "frame/tree.h"
#include "report/yaml_write.h"

#include <stdbool.h>
#include <string.h>

/* ORDER MADE: the sections that a shape makes, and the keys that ask for them. */
static const char *const MADE[] = {"joints", "members", "supports", "shelves", "panels"};
static const char *const ASKING[] = {"shape", "leave-out"};

static bool among(const char *key, const char *const *keys, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (strcmp(key, keys[k]) == 0)
            return true;
    return false;
}

static bool is_made(const struct node *section) {
    return among(section->key, MADE, sizeof MADE / sizeof *MADE);
}

static bool goes_away(const struct node *section) {
    return is_made(section) || among(section->key, ASKING, sizeof ASKING / sizeof *ASKING);
}

static void write_made(struct text *text, const struct node *tree) {
    for (size_t k = 0; k < sizeof MADE / sizeof *MADE; k++) {
        const struct node *section = node_child(tree, MADE[k]);
        if (section)
            yaml_section(text, section);
    }
}

/* ---- the file's own lines ---- */

struct lines {
    const char *bytes;
    size_t length;
};

static size_t line_end(const struct lines *lines, size_t at) {
    const char *end = memchr(lines->bytes + at, '\n', lines->length - at);
    return end ? (size_t)(end - lines->bytes) + 1 : lines->length;
}

/* Where the `number`-th line starts, counted from 1. */
static size_t line_start(const struct lines *lines, int number) {
    size_t at = 0;
    while (--number > 0 && at < lines->length)
        at = line_end(lines, at);
    return at;
}

/* Where the blank lines and comments start that stand at the end of a section: they belong to what
 * comes next. */
static size_t trailer(const struct lines *lines, size_t from, size_t to) {
    size_t start = from;
    for (size_t at = from, next; at < to; at = next) {
        next = line_end(lines, at);
        if (lines->bytes[at] != '#' && lines->bytes[at] != '\n' && lines->bytes[at] != '\r')
            start = next;
    }
    return start;
}

static void copy_lines(struct text *text, const struct lines *lines, size_t from, size_t to) {
    text_bytes(text, lines->bytes + from, to - from);
    if (to > from && lines->bytes[to - 1] != '\n')
        text_add(text, "\n");
}

/* Line by line: every key of the file starts a line of its own. */
static bool is_laid_out(const struct node *root) {
    int line = 0;
    for (const struct node *section = root->first; section; section = section->next) {
        if (section->key_place.column != 1 || section->key_place.line <= line)
            return false;
        line = section->key_place.line;
    }
    return root->place.column == 1 && root->place.line == root->first->key_place.line;
}

static void splice(struct text *text, const struct node *tree, const struct node *root,
                   const struct lines *lines) {
    copy_lines(text, lines, 0, line_start(lines, root->first->key_place.line));
    for (const struct node *section = root->first; section; section = section->next) {
        size_t from = line_start(lines, section->key_place.line);
        size_t to =
            section->next ? line_start(lines, section->next->key_place.line) : lines->length;
        if (strcmp(section->key, "shape") == 0)
            write_made(text, tree);
        copy_lines(text, lines, goes_away(section) ? trailer(lines, from, to) : from, to);
    }
}

/* ---- reading it back ---- */

/* The same sections, in whatever order. */
static bool same_file(const struct node *a, const struct node *b) {
    if (!a || a->count != b->count)
        return false;
    for (const struct node *section = b->first; section; section = section->next) {
        const struct node *other = node_child(a, section->key);
        if (!other || !node_same(other, section))
            return false;
    }
    return true;
}

void expand_text(struct text *text, const struct frame *frame, const char *bytes, size_t length) {
    struct lines lines = {bytes, length};
    if (!frame->shape.given) {
        text_bytes(text, bytes, length);
        return;
    }
    const struct node *root = tree_of_text(text->arena, bytes, length);
    struct text spliced = text_new(text->arena);
    if (is_laid_out(root))
        splice(&spliced, frame->tree, root, &lines);
    /* Text that is laid out in a way not thought of here is written anew, without its comments. */
    if (same_file(tree_of_text(text->arena, text_string(&spliced), spliced.count), frame->tree))
        text_bytes(text, text_string(&spliced), spliced.count);
    else
        yaml_file(text, frame->tree);
}
