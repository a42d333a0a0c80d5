#include "frame/table_names.h"

#include "tables/tables.h"
#include "units/quote.h"

#include <string.h>

static const char *size_name(int index) {
    return table_size(index)->name;
}

static const char *sheet_name(int index) {
    return table_sheet(index)->name;
}

static const char *tray_name(int index) {
    return table_tray(index)->name;
}

/* ORDER table_kind */
static const struct {
    const char *what;
    int (*find)(const char *name);
    int (*count)(void);
    const char *(*name)(int index);
} names_of[] = {
    {"species", table_species_find, table_species_count, table_species_name},
    {"grade", table_grade_find, table_grade_count, table_grade_name},
    {"size", table_size_find, table_size_count, size_name},
    {"sheet", table_sheet_find, table_sheet_count, sheet_name},
    {"tray or pot", table_tray_find, table_tray_count, tray_name},
    {"ground", table_ground_find, table_ground_count, table_ground_name},
    {"kind of snow", table_snow_find, table_snow_count, table_snow_name},
    {"word for wind", table_wind_word_find, table_wind_word_count, table_wind_word_name},
};

int read_table_name(struct reader *reader, const struct node *node, enum table_kind kind) {
    const char *what = names_of[kind].what;
    const char *text =
        read_text(reader, node, arena_print(reader->arena, "the name of a %s", what));
    if (!text)
        return -1;
    int number = names_of[kind].find(text);
    if (number >= 0)
        return number;
    size_t count = (size_t)names_of[kind].count();
    const char **names = ARENA_ARRAY(reader->arena, const char *, count);
    for (size_t k = 0; k < count; k++)
        names[k] = names_of[kind].name((int)k);
    const char *help = hint(reader, text, "known:", names, count);
    trouble(reader, node, "no %s named %s is known%s", what, quote_text(reader->arena, text),
            *help ? help : "; 'batten table' lists them all");
    return -1;
}
