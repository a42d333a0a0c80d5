#include "report/names.h"

#include "tables/fasteners.h"

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

static int fastener_count(enum dowel_kind kind) {
    int count = 0;
    while (table_fastener_name(kind, NAIL_COMMON, (size_t)count))
        count++;
    return count;
}
static int screw_count(void) {
    return fastener_count(DOWEL_SCREW);
}
static const char *screw_name(int index) {
    return table_fastener_name(DOWEL_SCREW, NAIL_COMMON, (size_t)index);
}
static int nail_count(void) {
    return fastener_count(DOWEL_NAIL);
}
static const char *nail_name(int index) {
    return table_fastener_name(DOWEL_NAIL, NAIL_COMMON, (size_t)index);
}
static int bolt_count(void) {
    return fastener_count(DOWEL_BOLT);
}
static const char *bolt_name(int index) {
    return table_fastener_name(DOWEL_BOLT, NAIL_COMMON, (size_t)index);
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
    {"screws", "connections: screw (its number)", screw_count, screw_name},
    {"nails", "connections: nail", nail_count, nail_name},
    {"bolts", "connections: lag, bolt (inches)", bolt_count, bolt_name},
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
    {"faces", "shape: covers, braces",
     WORDS("front", "back", "left", "right", "roof", "roof-front", "roof-back", "lid")},
    {"brace-ways", "shape: braces (or a number of bays)", WORDS("all", "long", "x", "tie")},
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
