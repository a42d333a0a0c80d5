#include "report/table_text.h"

#include "base/version.h"
#include "report/layout.h"
#include "report/names.h"

#include <string.h>

enum { NAME_WIDTH = 26, ROW_MOST = 40, VALUE_MOST = 20 };

static const char *all_names(struct arena *arena, const struct name_list *list) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < list->count; k++)
        text_print(&text, k ? ", %s" : "%s", list->names[k]);
    return text_string(&text);
}

void table_list_text(struct text *text) {
    static const size_t WIDTHS[] = {NAME_WIDTH, LINE_WIDTH - 2 - NAME_WIDTH - 2};
    struct arena *arena = text->arena;
    text_add(text, "The tables (batten table NAME prints one)\n");
    for (size_t k = 0; k < table_count(); k++) {
        const struct table *table = table_at(k);
        row_of_cells(text, 2, (const char *const[]){table->name, table->title}, WIDTHS, 2);
    }
    text_add(text, "\nThe names that a frame may use\n");
    size_t count;
    const struct name_list *lists = name_lists(arena, &count);
    for (size_t k = 0; k < count; k++) {
        paragraph(text, "  ", 4, arena_print(arena, "%s (%s)", lists[k].key, lists[k].words));
        paragraph(text, "      ", 6, all_names(arena, &lists[k]));
    }
}

void table_list_json(struct json *json, struct arena *arena) {
    json_object(json, JSON_LINES);
    json_key_string(json, "batten", BATTEN_VERSION);
    json_key(json, "tables");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < table_count(); k++) {
        const struct table *table = table_at(k);
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "name", table->name);
        json_key_string(json, "title", table->title);
        json_key_number(json, "rows", (double)table->count);
        json_close(json);
    }
    json_close(json);
    json_key(json, "names");
    json_object(json, JSON_LINES);
    size_t count;
    const struct name_list *lists = name_lists(arena, &count);
    for (size_t k = 0; k < count; k++) {
        json_key(json, lists[k].key);
        json_list(json, JSON_ONE_LINE);
        for (size_t j = 0; j < lists[k].count; j++)
            json_string(json, lists[k].names[j]);
        json_close(json);
    }
    json_close(json);
    json_close(json);
    json_end(json);
}

static const char *value_in_words(struct arena *arena, const struct table_row *row) {
    if (strcmp(row->unit, "1") == 0)
        return row->value;
    return arena_print(arena, "%s %s", row->value, row->unit);
}

/* Where a row comes from, with its mark, and its note. */
static const char *origin_in_words(struct arena *arena, const struct table_row *row) {
    return arena_print(arena, "%s%s%s [%s]%s%s", row->source, row->edition[0] ? ", " : "",
                       row->edition, mark_name(row->mark), row->note[0] ? "; " : "", row->note);
}

static void widen(size_t *width, const char *cell, size_t most) {
    size_t length = strlen(cell);
    if (length > *width)
        *width = length < most ? length : most;
}

void table_text(struct text *text, const struct table *table) {
    struct arena *arena = text->arena;
    size_t widths[3] = {0};
    for (size_t k = 0; k < table->count; k++) {
        widen(&widths[0], table->rows[k].row, ROW_MOST);
        widen(&widths[1], value_in_words(arena, &table->rows[k]), VALUE_MOST);
    }
    widths[2] = LINE_WIDTH - 2 - 2 * 2 - widths[0] - widths[1];
    paragraph(text, "", 0, arena_print(arena, "%s: %s", table->name, table->title));
    text_add(text, "\n");
    for (size_t k = 0; k < table->count; k++) {
        const struct table_row *row = &table->rows[k];
        const char *cells[] = {row->row, value_in_words(arena, row), origin_in_words(arena, row)};
        row_of_cells(text, 2, cells, widths, 3);
    }
    text_add(text, "\n[read] seen in a copy of the text, [memory] recalled and to be confirmed, "
                   "[trade] common\npractice without a published source\n");
}

void table_json(struct json *json, const struct table *table) {
    json_object(json, JSON_LINES);
    json_key_string(json, "batten", BATTEN_VERSION);
    json_key_string(json, "name", table->name);
    json_key_string(json, "title", table->title);
    json_key(json, "rows");
    json_list(json, JSON_LINES);
    for (size_t k = 0; k < table->count; k++) {
        const struct table_row *row = &table->rows[k];
        json_object(json, JSON_ONE_LINE);
        json_key_string(json, "row", row->row);
        json_key_string(json, "value", row->value);
        json_key_string(json, "unit", row->unit);
        json_key_string(json, "source", row->source);
        json_key_string(json, "edition", row->edition);
        json_key_string(json, "mark", mark_name(row->mark));
        json_key_string(json, "note", row->note);
        json_close(json);
    }
    json_close(json);
    json_close(json);
    json_end(json);
}
