#include "tables/data.h"

/* Words that are the row ids of a table: ground, snow, wind. */

static const char *const grounds = "grounds", *const snows = "snow-kinds",
                         *const winds = "wind-words";

int table_ground_count(void) {
    return table_row_count(grounds);
}

const char *table_ground_name(int ground) {
    return table_row_at(grounds, ground)->row;
}

int table_ground_find(const char *name) {
    return table_row_index(grounds, name);
}

struct cited table_ground_friction(int ground) {
    return table_row_cited(table_row_at(grounds, ground));
}

int table_snow_count(void) {
    return table_row_count(snows);
}

const char *table_snow_name(int snow) {
    return table_row_at(snows, snow)->row;
}

int table_snow_find(const char *name) {
    return table_row_index(snows, name);
}

struct cited table_snow_density(int snow) {
    return table_row_cited(table_row_at(snows, snow));
}

int table_wind_word_count(void) {
    return table_row_count(winds);
}

const char *table_wind_word_name(int word) {
    return table_row_at(winds, word)->row;
}

int table_wind_word_find(const char *name) {
    return table_row_index(winds, name);
}

struct cited table_wind_word_gust(int word) {
    return table_row_cited(table_row_at(winds, word));
}
