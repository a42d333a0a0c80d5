#include "report/yaml_write.h"

#include <stdbool.h>
#include <string.h>

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

/* True where the text needs no quotes, wherever it stands. */
static bool is_plain(const char *string) {
    size_t length = strlen(string);
    bool starts_well = is_letter(string[0]) || (string[0] == '-' && is_letter(string[1]));
    if (!starts_well || string[length - 1] == ' ')
        return false;
    for (size_t k = 0; k < length; k++)
        if (!is_letter(string[k]) && !strchr(" -_./+", string[k]))
            return false;
    return true;
}

static void scalar(struct text *text, const char *string) {
    if (is_plain(string)) {
        text_add(text, string);
        return;
    }
    text_add(text, "\"");
    for (const char *at = string; *at; at++) {
        if (*at == '"' || *at == '\\')
            text_print(text, "\\%c", *at);
        else if ((unsigned char)*at < 0x20)
            text_print(text, "\\x%02X", *at);
        else
            text_bytes(text, at, 1);
    }
    text_add(text, "\"");
}

static void key(struct text *text, const struct node *node) {
    scalar(text, node->key);
    text_add(text, ":");
}

void yaml_value(struct text *text, const struct node *node) {
    if (node->kind == NODE_TEXT) {
        scalar(text, node->text);
        return;
    }
    bool map = node->kind == NODE_MAP;
    text_add(text, map ? "{" : "[");
    for (const struct node *child = node->first; child; child = child->next) {
        if (child != node->first)
            text_add(text, ", ");
        if (map)
            yaml_entry(text, child);
        else
            yaml_value(text, child);
    }
    text_add(text, map ? "}" : "]");
}

void yaml_entry(struct text *text, const struct node *node) {
    key(text, node);
    text_add(text, " ");
    yaml_value(text, node);
}

void yaml_section(struct text *text, const struct node *section) {
    key(text, section);
    if (section->kind == NODE_TEXT || section->count == 0) {
        text_add(text, " ");
        yaml_value(text, section);
        text_add(text, "\n");
        return;
    }
    text_add(text, "\n");
    for (const struct node *entry = section->first; entry; entry = entry->next) {
        text_add(text, "  ");
        if (section->kind == NODE_MAP) {
            yaml_entry(text, entry);
        } else {
            text_add(text, "- ");
            yaml_value(text, entry);
        }
        text_add(text, "\n");
    }
}

void yaml_file(struct text *text, const struct node *root) {
    for (const struct node *section = root->first; section; section = section->next)
        yaml_section(text, section);
}
