#include "report/edit_text.h"

#include "frame/merge.h"
#include "frame/tree.h"
#include "report/edit_places.h"
#include "report/yaml_write.h"

#include <string.h>

/* Bytes of the file that give way to others. */
struct splice {
    size_t from, to;
    const char *with;
};
struct editor {
    struct arena *arena;
    struct file_text file;
    struct {
        struct splice *items;
        size_t count, capacity;
    } splices;
};

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
    replace(editor, offset_of(&editor->file, node->place), end_of(&editor->file, node),
            value_text(editor, value));
}

/* A section that the file has not: at its end, after a blank line. */
static void append_section(struct editor *editor, const struct node *section) {
    struct text text = text_new(editor->arena);
    if (editor->file.length && editor->file.bytes[editor->file.length - 1] != '\n')
        text_add(&text, "\n");
    text_add(&text, "\n");
    yaml_section(&text, section);
    replace(editor, editor->file.length, editor->file.length, text_string(&text));
}

/* A key more in a map, or an item more in a list, after what stands there. */
static void insert(struct editor *editor, const struct node *into, const struct node *entry,
                   bool first) {
    const struct node *last = last_child(into);
    bool list = into->kind == NODE_LIST, brackets = in_brackets(&editor->file, into);
    struct text text = text_new(editor->arena);
    editor->file.lost |= !last && !brackets;
    if (editor->file.lost)
        return;
    if (brackets && (last || !first))
        text_add(&text, ", ");
    if (!brackets)
        text_print(&text, "\n%*s%s", column_of(&editor->file, into) - 1, "", list ? "- " : "");
    if (list)
        yaml_value(&text, entry);
    else
        yaml_entry(&text, entry);
    size_t at = last ? end_of(&editor->file, last) : offset_of(&editor->file, into->place) + 1;
    if (!brackets)
        at = line_end(&editor->file, at);
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
    size_t from = offset_of(&editor->file, entry->key_place), to = end_of(&editor->file, entry);
    if (map->count == 1) {
        editor->file.lost |= !in_brackets(&editor->file, map);
        replace(editor, from, to, "");
    } else if (!in_brackets(&editor->file, map)) {
        while (from > 0 && editor->file.bytes[from - 1] == ' ')
            from--;
        to = line_end(&editor->file, to);
        replace(editor, from, to < editor->file.length ? to + 1 : to, "");
    } else if (entry->next) {
        replace(editor, from, offset_of(&editor->file, entry->next->key_place), "");
    } else {
        const struct node *before = map->first;
        while (before->next != entry)
            before = before->next;
        replace(editor, end_of(&editor->file, before), to, "");
    }
}

static void edit_map(struct editor *editor, const struct node *map, const struct node *edit) {
    bool first = true;
    for (const struct node *change = edit->first; change && !editor->file.lost;
         change = change->next) {
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
        text_bytes(text, editor->file.bytes + at, splice->from - at);
        text_add(text, splice->with);
        at = splice->to;
    }
    text_bytes(text, editor->file.bytes + at, editor->file.length - at);
}

bool edit_text(struct text *text, const char *bytes, size_t length, const struct node *edit,
               const struct node *edited) {
    struct editor editor = {.arena = text->arena, .file = {.bytes = bytes, .length = length}};
    const struct node *root = tree_of_text(text->arena, bytes, length);
    struct text spliced = text_new(text->arena);
    edit_map(&editor, root, edit);
    if (!editor.file.lost) {
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
