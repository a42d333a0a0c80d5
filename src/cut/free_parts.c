#include "cut/free_parts.h"

#include <stdlib.h>
#include <string.h>

enum { ORDERS = 5, FITS = 3, SPLITS = 4, SHUFFLES = 200, WORK_MOST = 100000000 };

struct part {
    int sheet;
    int64_t x, y, width, height;
};
struct parts {
    struct part *items;
    size_t count, capacity;
};

struct laying {
    struct arena *arena;
    const struct plates *plates;
    int fit, split;
    struct parts parts;
    struct sheets_layout layout;
    long work;
};

/* ---- in which order ---- */

struct turn {
    int plate;
    int64_t keys[2];
};

static int64_t larger(int64_t a, int64_t b) {
    return a > b ? a : b;
}
static int64_t smaller(int64_t a, int64_t b) {
    return a < b ? a : b;
}

static void set_keys(struct turn *turn, const struct plate *plate, int order) {
    int64_t width = plate->width, height = plate->height;
    int64_t area = width / 1000 * (height / 1000);
    const int64_t first[ORDERS] = {area, larger(width, height), smaller(width, height), width,
                                   height};
    turn->keys[0] = first[order];
    turn->keys[1] = area;
}

static int largest_first(const void *left, const void *right) {
    const struct turn *a = left, *b = right;
    for (int k = 0; k < 2; k++)
        if (a->keys[k] != b->keys[k])
            return a->keys[k] > b->keys[k] ? -1 : 1;
    return a->plate - b->plate;
}

static struct turn *turns_of(struct arena *arena, const struct plates *plates, int order,
                             size_t *count) {
    *count = 0;
    for (size_t p = 0; p < plates->count; p++)
        *count += (size_t)plates->items[p].demand;
    struct turn *turns = ARENA_ARRAY(arena, struct turn, *count);
    size_t next = 0;
    for (size_t p = 0; p < plates->count; p++)
        for (int copy = 0; copy < plates->items[p].demand; copy++) {
            turns[next].plate = (int)p;
            set_keys(&turns[next++], &plates->items[p], order);
        }
    if (*count)
        qsort(turns, *count, sizeof *turns, largest_first);
    return turns;
}

/* ---- into which part ---- */

/* What stays free beside the plate, to be small; negative where it does not fit. */
static int64_t left_over(const struct laying *laying, const struct part *part, int64_t width,
                         int64_t height) {
    int64_t across = part->width - width, along = part->height - height;
    if (across < 0 || along < 0)
        return -1;
    switch (laying->fit) {
    case 0:
        return smaller(across, along);
    case 1:
        return larger(across, along);
    default:
        return part->width / 1000 * (part->height / 1000) - width / 1000 * (height / 1000);
    }
}

static bool best_part(struct laying *laying, const struct plate *plate, size_t *best,
                      bool *turned) {
    int64_t least = -1;
    for (size_t k = 0; k < laying->parts.count; k++)
        for (int turn = 0; turn < (plate->may_turn ? 2 : 1); turn++) {
            int64_t left = left_over(laying, &laying->parts.items[k], plate_width(plate, turn),
                                     plate_height(plate, turn));
            if (left < 0 || (least >= 0 && left >= least))
                continue;
            least = left;
            *best = k;
            *turned = turn;
        }
    laying->work += (long)laying->parts.count;
    return least >= 0;
}

static void new_sheet(struct laying *laying) {
    struct part whole = {.sheet = (int)laying->layout.count,
                         .width = laying->plates->width,
                         .height = laying->plates->height};
    ARRAY_PUSH(laying->arena, &laying->parts, whole);
    ARRAY_PUSH(laying->arena, &laying->layout, (struct sheet_layout){0});
}

/* Does the first cut run along the width of the part, so that what is above keeps all of it? */
static bool cut_along_width(const struct laying *laying, int64_t across, int64_t along,
                            int64_t width, int64_t height) {
    switch (laying->split) {
    case 0:
        return across <= along;
    case 1:
        return across > along;
    case 2: /* the largest piece as large as can be */
        return larger(along / 1000 * ((width + across) / 1000), across / 1000 * (height / 1000)) >=
               larger(across / 1000 * ((height + along) / 1000), along / 1000 * (width / 1000));
    default:
        return width >= height;
    }
}

static void add_part(struct laying *laying, struct part part) {
    if (part.width > 0 && part.height > 0)
        ARRAY_PUSH(laying->arena, &laying->parts, part);
}

static void lay(struct laying *laying, int number) {
    const struct plate *plate = &laying->plates->items[number];
    size_t best = 0;
    bool turned = false;
    if (!best_part(laying, plate, &best, &turned)) {
        new_sheet(laying);
        best_part(laying, plate, &best, &turned);
    }
    struct part part = laying->parts.items[best];
    laying->parts.items[best] = laying->parts.items[--laying->parts.count];
    struct spot spot = {.plate = number, .x = part.x, .y = part.y, .turned = turned};
    ARRAY_PUSH(laying->arena, &laying->layout.items[part.sheet], spot);
    int64_t width = plate_width(plate, turned), height = plate_height(plate, turned);
    int64_t across = part.width - width, along = part.height - height;
    bool wide = cut_along_width(laying, across, along, width, height);
    add_part(laying,
             (struct part){part.sheet, part.x, part.y + height, wide ? part.width : width, along});
    add_part(laying, (struct part){part.sheet, part.x + width, part.y, across,
                                   wide ? height : part.height});
}

static struct sheets_layout lay_all(struct arena *arena, const struct plates *plates,
                                    const struct turn *turns, size_t count, int fit, int split,
                                    long *work) {
    struct laying laying = {.arena = arena, .plates = plates, .fit = fit, .split = split};
    for (size_t k = 0; k < count; k++)
        lay(&laying, turns[k].plate);
    *work += laying.work;
    return laying.layout;
}

static void take(struct sheets_layout *best, struct sheets_layout layout) {
    if (!best->count || layout.count < best->count)
        *best = layout;
}

/* Two plates of the order change places; the same swaps every time. */
static void swap_two(struct turn *turns, size_t count, uint64_t *state) {
    size_t at[2];
    for (int k = 0; k < 2; k++) {
        *state = *state * 6364136223846793005u + 1442695040888963407u;
        at[k] = (size_t)(*state >> 33) % count;
    }
    struct turn other = turns[at[0]];
    turns[at[0]] = turns[at[1]];
    turns[at[1]] = other;
}

struct sheets_layout free_parts_fewest(struct arena *arena, const struct plates *plates,
                                       size_t bound) {
    struct sheets_layout best = {0};
    long work = 0;
    size_t count = 0;
    for (int order = 0; order < ORDERS; order++) {
        struct turn *turns = turns_of(arena, plates, order, &count);
        for (int way = 0; way < FITS * SPLITS && work < WORK_MOST; way++) {
            take(&best, lay_all(arena, plates, turns, count, way % FITS, way / FITS, &work));
            if (best.count <= bound)
                return best;
        }
    }
    struct turn *turns = turns_of(arena, plates, 0, &count);
    uint64_t state = 1;
    for (int shuffle = 0; shuffle < SHUFFLES && work < WORK_MOST; shuffle++) {
        for (size_t swaps = 0; swaps < 1 + count / 10; swaps++)
            swap_two(turns, count, &state);
        take(&best, lay_all(arena, plates, turns, count, shuffle % FITS, shuffle % SPLITS, &work));
        if (best.count <= bound)
            break;
    }
    return best;
}
