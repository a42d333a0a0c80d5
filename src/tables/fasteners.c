#include "tables/fasteners.h"

#include "tables/data.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { SIZES_MOST = 11, NAME_MOST = 16 };

static const char *const KIND_NAMES[] = {
    /* ORDER DOWEL KIND */
    [DOWEL_SCREW] = "screw",
    [DOWEL_NAIL] = "nail",
    [DOWEL_LAG] = "lag",
    [DOWEL_BOLT] = "bolt"};
static const char *const NAIL_NAMES[] = {
    /* ORDER NAIL KIND */
    [NAIL_COMMON] = "common",
    [NAIL_BOX] = "box",
    [NAIL_SINKER] = "sinker"};

/* The sizes of tables/fastener-sizes.tsv, by thickness. */
static const char *const SCREWS[SIZES_MOST] = {"4", "5",  "6",  "7",  "8",
                                               "9", "10", "12", "14", "16"};
static const char *const COMMON[SIZES_MOST] = {"2d", "3d",  "4d",  "5d",  "6d",
                                               "8d", "10d", "12d", "16d", "20d"};
static const char *const OTHER_NAILS[SIZES_MOST] = {"6d", "8d", "10d", "12d", "16d", "20d"};
static const char *const INCHES[SIZES_MOST] = {"1/4", "5/16", "3/8", "1/2"};

const char *dowel_kind_name(enum dowel_kind kind) {
    return KIND_NAMES[kind];
}

const char *nail_kind_name(enum nail_kind kind) {
    return NAIL_NAMES[kind];
}

static const char *const *sizes_of(enum dowel_kind kind, enum nail_kind nail) {
    switch (kind) {
    case DOWEL_SCREW:
        return SCREWS;
    case DOWEL_NAIL:
        return nail == NAIL_COMMON ? COMMON : OTHER_NAILS;
    default:
        return INCHES;
    }
}

const char *table_fastener_name(enum dowel_kind kind, enum nail_kind nail, size_t index) {
    return index < SIZES_MOST ? sizes_of(kind, nail)[index] : NULL;
}

static struct cited size_row(const struct fastener_size *size, const char *what) {
    struct cited cited = {NAN, "", MARK_TRADE};
    const struct table_row *row = size->kind == DOWEL_NAIL
                                      ? table_row_named("fastener-sizes", "nail.%s.%s.%s",
                                                        NAIL_NAMES[size->nail], size->name, what)
                                      : table_row_named("fastener-sizes", "%s.%s.%s",
                                                        KIND_NAMES[size->kind], size->name, what);
    table_row_give(row, &cited);
    return cited;
}

static struct fastener_size size_named(enum dowel_kind kind, enum nail_kind nail,
                                       const char *name) {
    struct fastener_size size = {.kind = kind, .nail = nail, .name = name};
    size.diameter = size_row(&size, "D");
    size.root = size_row(&size, "root");
    size.head = size_row(&size, "head");
    size.length = size_row(&size, "length");
    size.tip = size_row(&size, "tip");
    return size;
}

/* "No.8" is 8, "1/4 in" is 1/4. False where it is longer than any name. */
static bool bare_name(enum dowel_kind kind, const char *name, char bare[NAME_MOST]) {
    if (kind == DOWEL_SCREW && strncmp(name, "No.", 3) == 0)
        name += 3 + strspn(name + 3, " ");
    size_t length = strlen(name);
    if ((kind == DOWEL_LAG || kind == DOWEL_BOLT) && length > 2 &&
        strcmp(name + length - 2, "in") == 0)
        length -= 2;
    while (length > 0 && name[length - 1] == ' ')
        length--;
    if (length >= NAME_MOST)
        return false;
    memcpy(bare, name, length);
    bare[length] = '\0';
    return true;
}

bool table_fastener_find(enum dowel_kind kind, enum nail_kind nail, const char *name,
                         struct fastener_size *out) {
    char bare[NAME_MOST];
    if (!bare_name(kind, name, bare))
        return false;
    const char *const *sizes = sizes_of(kind, nail);
    for (size_t k = 0; sizes[k]; k++)
        if (strcmp(sizes[k], bare) == 0) {
            *out = size_named(kind, nail, sizes[k]);
            return true;
        }
    return false;
}

bool table_fastener_of_diameter(enum dowel_kind kind, enum nail_kind nail, double diameter,
                                struct fastener_size *out) {
    const char *const *sizes = sizes_of(kind, nail);
    for (size_t k = 0; sizes[k]; k++) {
        *out = size_named(kind, nail, sizes[k]);
        if (fabs(out->diameter.value - diameter) < 1e-5)
            return true;
    }
    return false;
}

struct cited table_fastener_factor(const char *row) {
    const struct table_row *found = table_row_in(table_of_fastener_factors, row);
    if (!found)
        abort();
    return table_row_cited(found);
}
