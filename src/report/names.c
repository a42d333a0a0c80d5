#include "report/names.h"

#include "tables/tables.h"

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

static int duration_count(void) {
    return DURATION_COUNT;
}
static const char *duration_of(int index) {
    return duration_name((enum duration)index);
}

/* Names that come from the tables. */
static const struct {
    const char *key, *words;
    int (*count)(void);
    const char *(*name)(int index);
} FROM_TABLES[] = {
    {"species", "sticks: species", table_species_count, table_species_name},
    {"grades", "sticks: grade", table_grade_count, table_grade_name},
    {"sizes", "sticks: size (or actual [t, w])", table_size_count, size_name},
    {"sheets", "panels: sheet, decks", table_sheet_count, sheet_name},
    {"trays", "shelves: trays", table_tray_count, tray_name},
    {"grounds", "supports: on", table_ground_count, table_ground_name},
    {"snow-kinds", "site: snow-kind", table_snow_count, table_snow_name},
    {"wind-words", "site: wind-words", table_wind_word_count, table_wind_word_name},
    {"durations", "combine: duration", duration_count, duration_of},
};

#define WORDS(...)                                                                                 \
    (const char *const[]){__VA_ARGS__},                                                            \
        sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *)

/* The format's own words, as the reader of src/frame/ knows them. */
static const struct name_list OWN_WORDS[] = {
    {"connections", "connections: type",
     WORDS("screwed-lap", "screwed-butt", "glued-lap", "bracket", "gusset", "cleat", "notched",
           "hinge", "springs", "pinned", "rigid")},
    {"metals", "connections: metal", WORDS("plain", "galvanized", "stainless")},
    {"screws", "connections: screw (its number)",
     WORDS("4", "5", "6", "7", "8", "9", "10", "12", "14", "16")},
    {"nails", "connections: nail",
     WORDS("2d", "3d", "4d", "5d", "6d", "8d", "10d", "12d", "16d", "20d")},
    {"bolts", "connections: lag, bolt", WORDS("1/4 in", "5/16 in", "3/8 in", "1/2 in")},
    {"supports", "supports", WORDS("foot", "pinned", "fixed", "x", "y", "z", "rx", "ry", "rz")},
    {"held", "panels: held",
     WORDS("screwed", "stapled", "clipped", "taped", "hinged", "sliding", "loose")},
    {"places", "site: place", WORDS("outdoors", "glazed", "shed", "indoors")},
    {"exposures", "site: exposure", WORDS("B", "C", "D")},
    {"editions", "site: edition", WORDS("asce7-16", "asce7-22")},
    {"cases", "loads: case (or a name of your own)",
     WORDS("self", "tray", "snow", "wind-left", "wind-right", "wind-front", "wind-back", "push-x",
           "push-y")},
    {"shapes", "shape: kind", WORDS("stand", "lean-to", "gable", "bench", "cold-frame")},
};

enum {
    TABLE_LISTS = sizeof FROM_TABLES / sizeof *FROM_TABLES,
    OWN_LISTS = sizeof OWN_WORDS / sizeof *OWN_WORDS
};

const struct name_list *name_lists(struct arena *arena, size_t *count) {
    struct name_list *lists = ARENA_ARRAY(arena, struct name_list, TABLE_LISTS + OWN_LISTS);
    for (size_t k = 0; k < TABLE_LISTS; k++) {
        size_t names = (size_t)FROM_TABLES[k].count();
        const char **list = ARENA_ARRAY(arena, const char *, names);
        for (size_t j = 0; j < names; j++)
            list[j] = FROM_TABLES[k].name((int)j);
        lists[k] = (struct name_list){FROM_TABLES[k].key, FROM_TABLES[k].words, list, names};
    }
    memcpy(lists + TABLE_LISTS, OWN_WORDS, sizeof OWN_WORDS);
    *count = TABLE_LISTS + OWN_LISTS;
    return lists;
}

const struct name_list *name_list_find(struct arena *arena, const char *key) {
    size_t count;
    const struct name_list *lists = name_lists(arena, &count);
    for (size_t k = 0; k < count; k++)
        if (strcmp(lists[k].key, key) == 0)
            return &lists[k];
    return NULL;
}
