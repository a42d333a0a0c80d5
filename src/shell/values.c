#include "shell/shell.h"

#include "report/names.h"
#include "start/starters.h"
#include "tables/tables.h"

#include <string.h>

static const struct shell_values NOTHING = {"", ""};

static void add_name(struct text *text, const char *name) {
    text_print(text, "%s%s", text->count ? " " : "", name);
}

static const char *names_of_list(struct arena *arena, const char *key) {
    struct text text = text_new(arena);
    const struct name_list *list = name_list_find(arena, key);
    for (size_t k = 0; list && k < list->count; k++)
        add_name(&text, list->names[k]);
    return text_string(&text);
}

/* "front|side" as "front side". */
static const char *alternatives(struct arena *arena, const char *value) {
    char *names = arena_copy(arena, value, strlen(value));
    for (char *bar = names; (bar = strchr(bar, '|')) != NULL;)
        *bar = ' ';
    return names;
}

struct shell_values shell_option_values(struct arena *arena, enum option option) {
    const char *value = OPTION_RULES[option].value;
    if (!value)
        return NOTHING;
    if (strcmp(value, "FILE") == 0)
        return (struct shell_values){"", "*"};
    if (strchr(value, '|'))
        return (struct shell_values){alternatives(arena, value), ""};
    switch (option) {
    case OPTION_SPECIES:
    case OPTION_SIDE_WOOD:
    case OPTION_MAIN_WOOD:
        return (struct shell_values){names_of_list(arena, "species"), ""};
    case OPTION_GRADE:
        return (struct shell_values){names_of_list(arena, "grades"), ""};
    case OPTION_DURATION:
        return (struct shell_values){names_of_list(arena, "durations"), ""};
    case OPTION_EDITION:
        return (struct shell_values){"asce7-16 asce7-22", ""};
    default:
        return NOTHING;
    }
}

static const char *starter_kinds(struct arena *arena) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < STARTER_COUNT; k++)
        if (STARTERS[k].units == UNITS_US)
            add_name(&text, STARTERS[k].kind);
    return text_string(&text);
}

static const char *table_names(struct arena *arena) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < table_count(); k++)
        add_name(&text, table_at(k)->name);
    return text_string(&text);
}

struct shell_values shell_word_values(struct arena *arena, const char *words) {
    if (strncmp(words, "FRAME", 5) == 0)
        return (struct shell_values){"", "*.yaml"};
    if (strcmp(words, "KIND") == 0)
        return (struct shell_values){starter_kinds(arena), ""};
    if (strcmp(words, "[NAME]") == 0)
        return (struct shell_values){table_names(arena), ""};
    return NOTHING;
}

const char *shell_quoted(struct arena *arena, const char *words) {
    struct text text = text_new(arena);
    text_add(&text, "'");
    for (; *words; words++)
        if (*words == '\'')
            text_add(&text, "'\\''");
        else
            text_bytes(&text, words, 1);
    text_add(&text, "'");
    return text_string(&text);
}
