#include "frame/fastener_size.h"

#include "base/text.h"
#include "tables/fasteners.h"
#include "units/quote.h"

#include <math.h>
#include <stdio.h>

enum dowel_kind fastener_dowel_kind(enum fastener_kind kind) {
    switch (kind) {
    case FASTENER_NAIL:
        return DOWEL_NAIL;
    case FASTENER_LAG:
        return DOWEL_LAG;
    case FASTENER_BOLT:
        return DOWEL_BOLT;
    default:
        return DOWEL_SCREW;
    }
}

double screw_diameter(long number) {
    char name[24];
    struct fastener_size size;
    snprintf(name, sizeof name, "%ld", number);
    return table_fastener_find(DOWEL_SCREW, NAIL_COMMON, name, &size) ? size.diameter.value : NAN;
}

/* "2d, 3d and 4d" */
static const char *known_sizes(struct arena *arena, enum dowel_kind kind) {
    struct text text = text_new(arena);
    for (size_t k = 0; table_fastener_name(kind, NAIL_COMMON, k); k++) {
        bool last = !table_fastener_name(kind, NAIL_COMMON, k + 1);
        text_print(&text, "%s%s",
                   k == 0 ? ""
                   : last ? " and "
                          : ", ",
                   table_fastener_name(kind, NAIL_COMMON, k));
    }
    return text_string(&text);
}

static bool read_named(struct reader *reader, const struct node *node, enum dowel_kind kind,
                       const char *expected, const char *what, double *diameter) {
    struct fastener_size size;
    const char *text = read_text(reader, node, expected);
    if (!text)
        return false;
    if (!table_fastener_find(kind, NAIL_COMMON, text, &size)) {
        trouble(reader, node, "%s is no %s; known are %s", quote_text(reader->arena, text), what,
                known_sizes(reader->arena, kind));
        return false;
    }
    *diameter = size.diameter.value;
    return true;
}

bool read_screw_size(struct reader *reader, const struct node *node, double *diameter) {
    return read_named(reader, node, DOWEL_SCREW, "a screw number such as 8", "wood screw number",
                      diameter);
}

bool read_nail_size(struct reader *reader, const struct node *node, double *diameter) {
    return read_named(reader, node, DOWEL_NAIL, "a nail size such as 10d", "nail size", diameter);
}

/* A length, so that 6.35 mm or 0.25 in will do for 1/4 in. */
bool read_lag_or_bolt_size(struct reader *reader, const struct node *node, double *diameter) {
    struct fastener_size size;
    double value = 0;
    if (!read_quantity(reader, node, QUANTITY_LENGTH, OVER_ZERO, &value))
        return false;
    if (!table_fastener_of_diameter(DOWEL_LAG, NAIL_COMMON, value, &size)) {
        trouble(reader, node, "%s is no size of lag or bolt that the tables know; known are %s in",
                quote_text(reader->arena, node->text), known_sizes(reader->arena, DOWEL_LAG));
        return false;
    }
    *diameter = size.diameter.value;
    return true;
}
