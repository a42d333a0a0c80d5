/* pieces/small.h - screws and other small parts, counted by kind and size. */
#ifndef PIECES_SMALL_H
#define PIECES_SMALL_H

#include "model/model.h"

struct small_part {
    const char *key;             /* "screw-8x1-1/4in", "hinge": the name that a price goes by */
    const char *words;           /* "screws No. 8 x 1-1/4 in" */
    enum fastener_kind fastener; /* FASTENER_NONE where it is none */
    const char *size;            /* as the tables call it: "8" */
    struct optional length;      /* m */
    int count;
};
struct small_parts {
    struct small_part *items;
    size_t count, capacity;
    struct { /* what cannot be counted, in sentences */
        const char **items;
        size_t count, capacity;
    } notes;
};

/* Fastenings of member ends; brackets, hinges, gusset plates and blocks with their screws; screws
 * or staples round panels, their hinges and stays. */
struct small_parts small_parts(struct arena *arena, const struct model *model);

#endif
