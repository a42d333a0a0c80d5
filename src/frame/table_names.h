/* frame/table_names.h - names that the tables know, read from a value. */
#ifndef FRAME_TABLE_NAMES_H
#define FRAME_TABLE_NAMES_H

#include "frame/reader.h"

enum table_kind {
    NAMES_SPECIES,
    NAMES_GRADES,
    NAMES_SIZES,
    NAMES_SHEETS,
    NAMES_TRAYS,
    NAMES_GROUNDS,
    NAMES_SNOWS,
    NAMES_WIND_WORDS
};

/* The table's number of the name, -1 where it knows none such (told, with what is near). */
int read_table_name(struct reader *reader, const struct node *node, enum table_kind kind);

#endif
