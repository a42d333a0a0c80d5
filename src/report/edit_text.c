#include "report/edit_text.h"

#include "frame/merge.h"
#include "frame/tree.h"
#include "report/yaml_write.h"

#include <string.h>

/* Bytes of the file that give way to others. */
struct splice {
    size_t from, to;
    const char *with;
};
struct editor {
    struct arena *arena;
    const char *bytes;
    size_t length;
    struct {
        struct splice *items;
        size_t count, capacity;
    } splices;
    bool lost; /* something lies otherwise than is known here */
};

/* ---- where things lie ---- */

/* Columns count characters. */
static size_t offset_of(const struct editor *editor, struct place place) {
    size_t at = 0;
    for (int line = 1; line < place.line && at < editor->length; line++) {
        const char *end = memchr(editor->bytes + at, '\n', editor->length - at);
        at = end ? (size_t)(end - editor->bytes) + 1 : editor->length;
    }
    for (int column = 1; column < place.column && at < editor->length; column++)
        do
            at++;
        while (at < editor->length && ((unsigned char)editor->bytes[at] & 0xC0) == 0x80);
    return at;
}

static char byte_at(const struct editor *editor, size_t at) {
    return at < editor->length ? editor->bytes[at] : '\0';
}

static size_t quoted_end(const struct editor *editor, size_t at, char quote) {
    for (at++; at < editor->length; at++) {
        if (editor->bytes[at] == '\\' && quote == '"')
            at++;
        else if (editor->bytes[at] == quote && quote == '\'' && byte_at(editor, at + 1) == quote)
            at++;
        else if (editor->bytes[at] == quote)
            return at + 1;
    }
    return at;
}

static size_t scalar_end(struct editor *editor, const struct node *node) {
    size_t at = offset_of(editor, node->place), length = strlen(node->text);
    char first = byte_at(editor, at);
    if (first == '"' || first == '\'')
        return quoted_end(editor, at, first);
    if (length == 0 || at + length > editor->length ||
        memcmp(editor->bytes + at, node->text, length) != 0)
        editor->lost = true;
    return at + length;
}

/* Past blanks, commas and comments. */
static size_t past_blanks(const struct editor *editor, size_t at) {
    while (at < editor->length) {
        char c = editor->bytes[at];
        if (c == '#')
            while (at < editor->length && editor->bytes[at] != '\n')
                at++;
        else if (c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == ',')
            at++;
        else
            break;
    }
    return at;
}

static const struct node *last_child(const struct node *node) {
    const struct node *last = node->first;
    while (last && last->next)
        last = last->next;
    return last;
}

static bool in_brackets(const struct editor *editor, const struct node *node) {
    char first = byte_at(editor, offset_of(editor, node->place));
    return first == '{' || first == '[';
}

static size_t end_of(struct editor *editor, const struct node *node) {
    if (node->kind == NODE_TEXT)
        return scalar_end(editor, node);
    const struct node *last = last_child(node);
    if (!in_brackets(editor, node)) {
        editor->lost |= !last;
        return last ? end_of(editor, last) : 0;
    }
    size_t inside = last ? end_of(editor, last) : offset_of(editor, node->place) + 1;
    size_t close = past_blanks(editor, inside);
    char closing = byte_at(editor, close);
    editor->lost |= closing != '}' && closing != ']';
    return close + 1;
}

/* ---- what changes ---- */

static void replace(struct editor *editor, size_t from, size_t to, const char *with) {
    ARRAY_PUSH(editor->arena, &editor->splices, (struct splice){from, to, with});
}

static const char *value_text(struct editor *editor, const struct node *value) {
    struct text text = text_new(editor->arena);
    yaml_value(&text, value);
    return text_string(&text);
}

static void replace_value(struct editor *editor, const struct node *node,
                          const struct node *value) {
    replace(editor, offset_of(editor, node->place), end_of(editor, node),
            value_text(editor, value));
}

static size_t line_end(const struct editor *editor, size_t at) {
    while (at < editor->length && editor->bytes[at] != '\n')
        at++;
    return at;
}

/* A section that the file has not: at its end, after a blank line. */
static void append_section(struct editor *editor, const struct node *section) {
    struct text text = text_new(editor->arena);
    if (editor->length && editor->bytes[editor->length - 1] != '\n')
        text_add(&text, "\n");
    text_add(&text, "\n");
    yaml_section(&text, section);
    replace(editor, editor->length, editor->length, text_string(&text));
}

/* Where the lines of a block stand, as a place on a line of its own. */
static int column_of(const struct editor *editor, const struct node *block) {
    if (block->kind == NODE_MAP)
        return block->first->key_place.column;
    int column = block->first->place.column;
    for (size_t at = offset_of(editor, block->first->place); at > 0 && column > 1; column--)
        if (byte_at(editor, --at) == '-')
            return column - 1;
    return column;
}

/* A key more in a map, or an item more in a list, after what stands there. */
static void insert(struct editor *editor, const struct node *into, const struct node *entry,
                   bool first) {
    const struct node *last = last_child(into);
    bool list = into->kind == NODE_LIST, brackets = in_brackets(editor, into);
    struct text text = text_new(editor->arena);
    editor->lost |= !last && !brackets;
    if (editor->lost)
        return;
    if (brackets && (last || !first))
        text_add(&text, ", ");
    if (!brackets)
        text_print(&text, "\n%*s%s", column_of(editor, into) - 1, "", list ? "- " : "");
    if (list)
        yaml_value(&text, entry);
    else
        yaml_entry(&text, entry);
    size_t at = last ? end_of(editor, last) : offset_of(editor, into->place) + 1;
    if (!brackets)
        at = line_end(editor, at);
    replace(editor, at, at, text_string(&text));
}

/* The items that a list has more than before; NULL where it changes otherwise. */
static const struct node *items_added(const struct node *list, const struct node *longer) {
    if (list->kind != NODE_LIST || longer->kind != NODE_LIST)
        return NULL;
    const struct node *then = longer->first;
    for (const struct node *now = list->first; now; now = now->next, then = then->next)
        if (!then || !node_same(now, then))
            return NULL;
    return then;
}

/* The entry with what divides it from its neighbours: its line, or its part of one. */
static void take_out(struct editor *editor, const struct node *map, const struct node *entry) {
    size_t from = offset_of(editor, entry->key_place), to = end_of(editor, entry);
    if (map->count == 1) {
        editor->lost |= !in_brackets(editor, map);
        replace(editor, from, to, "");
    } else if (!in_brackets(editor, map)) {
        while (from > 0 && editor->bytes[from - 1] == ' ')
            from--;
        to = line_end(editor, to);
        replace(editor, from, to < editor->length ? to + 1 : to, "");
    } else if (entry->next) {
        replace(editor, from, offset_of(editor, entry->next->key_place), "");
    } else {
        const struct node *before = map->first;
        while (before->next != entry)
            before = before->next;
        replace(editor, end_of(editor, before), to, "");
    }
}

static void edit_map(struct editor *editor, const struct node *map, const struct node *edit) {
    bool first = true;
    for (const struct node *change = edit->first; change && !editor->lost; change = change->next) {
        const struct node *child = node_child(map, change->key);
        if (!child && node_removes(change))
            continue;
        if (!child && !map->key) {
            append_section(editor, change);
        } else if (!child) {
            insert(editor, map, change, first);
            first = false;
        } else if (node_removes(change)) {
            take_out(editor, map, child);
        } else if (child->kind == NODE_MAP && change->kind == NODE_MAP && !goes_whole(map)) {
            edit_map(editor, child, change);
        } else if (items_added(child, change)) {
            const struct node *items = items_added(child, change);
            for (const struct node *item = items; item; item = item->next)
                insert(editor, child, item, item == items);
        } else {
            replace_value(editor, child, change);
        }
    }
}

/* ---- the whole ---- */

/* By place; of equal ones the first stays first. */
static void sort_splices(struct editor *editor) {
    struct splice *items = editor->splices.items;
    for (size_t k = 1; k < editor->splices.count; k++) {
        struct splice splice = items[k];
        size_t at = k;
        for (; at > 0 && items[at - 1].from > splice.from; at--)
            items[at] = items[at - 1];
        items[at] = splice;
    }
}

static void write_out(struct text *text, const struct editor *editor) {
    size_t at = 0;
    for (size_t k = 0; k < editor->splices.count; k++) {
        const struct splice *splice = &editor->splices.items[k];
        if (splice->from < at)
            return; /* one inside another: does not read back */
        text_bytes(text, editor->bytes + at, splice->from - at);
        text_add(text, splice->with);
        at = splice->to;
    }
    text_bytes(text, editor->bytes + at, editor->length - at);
}

bool edit_text(struct text *text, const char *bytes, size_t length, const struct node *edit,
               const struct node *edited) {
    struct editor editor = {.arena = text->arena, .bytes = bytes, .length = length};
    const struct node *root = tree_of_text(text->arena, bytes, length);
    struct text spliced = text_new(text->arena);
    edit_map(&editor, root, edit);
    if (!editor.lost) {
        sort_splices(&editor);
        write_out(&spliced, &editor);
        const struct node *back = tree_of_text(text->arena, text_string(&spliced), spliced.count);
        if (back && node_same(back, edited)) {
            text_bytes(text, text_string(&spliced), spliced.count);
            return true;
        }
    }
    yaml_file(text, edited);
    return false;
}
