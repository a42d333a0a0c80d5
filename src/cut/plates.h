/* cut/plates.h - the pieces of a sheet as kinds of equal size, without kerf. For src/cut only.
 *
 * With pieces and sheet a kerf larger both ways, guillotine patterns lie edge to edge (exact).
 */
#ifndef CUT_PLATES_H
#define CUT_PLATES_H

#include "cut/sheets.h"

struct plates {
    size_t count;
    struct plate {
        int64_t width, height;
        bool may_turn;
        int demand;
        int *pieces; /* their numbers in the task */
    } * items;       /* largest area first */
    int64_t width, height;
};

/* A plate on a sheet. */
struct spot {
    int plate;
    int64_t x, y;
    bool turned;
};

/* A sheet with its plates. */
struct sheet_layout {
    struct spot *items;
    size_t count, capacity;
};
struct sheets_layout {
    struct sheet_layout *items;
    size_t count, capacity;
};

/* Pieces that no sheet holds are left out; their places say so. */
struct plates plates_of(struct arena *arena, const struct sheet_task *task,
                        struct sheet_plan *plan);

static inline int64_t plate_width(const struct plate *plate, bool turned) {
    return turned ? plate->height : plate->width;
}
static inline int64_t plate_height(const struct plate *plate, bool turned) {
    return turned ? plate->width : plate->height;
}

#endif
