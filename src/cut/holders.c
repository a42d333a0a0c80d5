#include "cut/holders.h"

static bool is_inside(const struct holder *inner, const struct holder *outer) {
    return inner->width <= outer->width && inner->height <= outer->height;
}

void holders_offer(struct arena *arena, const struct plates *plates, struct holders *holders,
                   struct holder holder) {
    if (holder.width > plates->width || holder.height > plates->height)
        return;
    for (size_t k = 0; k < holders->count; k++)
        if (is_inside(holders->items[k], &holder))
            return;
    size_t kept = 0;
    for (size_t k = 0; k < holders->count; k++)
        if (!is_inside(&holder, holders->items[k]))
            holders->items[kept++] = holders->items[k];
    holders->count = kept;
    struct holder *copy = ARENA_NEW(arena, struct holder);
    *copy = holder;
    ARRAY_PUSH(arena, holders, copy);
}

void holders_of_plate(struct arena *arena, const struct plates *plates, size_t plate,
                      struct holders *holders) {
    const struct plate *item = &plates->items[plate];
    for (int turned = 0; turned < (item->may_turn ? 2 : 1); turned++)
        holders_offer(arena, plates, holders,
                      (struct holder){.width = plate_width(item, turned),
                                      .height = plate_height(item, turned),
                                      .plate = (int)plate,
                                      .turned = turned});
}

static int64_t larger(int64_t a, int64_t b) {
    return a > b ? a : b;
}

struct holder holder_of_two(const struct holder *one, const struct holder *two, bool above) {
    struct holder holder = {.plate = -1, .above = above, .parts = {one, two}};
    holder.width = above ? larger(one->width, two->width) : one->width + two->width;
    holder.height = above ? one->height + two->height : larger(one->height, two->height);
    return holder;
}

static void lay(struct arena *arena, const struct holder *holder, int64_t x, int64_t y,
                struct sheet_layout *sheet) {
    if (holder->plate >= 0) {
        struct spot spot = {.plate = holder->plate, .x = x, .y = y, .turned = holder->turned};
        ARRAY_PUSH(arena, sheet, spot);
        return;
    }
    const struct holder *first = holder->parts[0];
    lay(arena, first, x, y, sheet);
    lay(arena, holder->parts[1], holder->above ? x : x + first->width,
        holder->above ? y + first->height : y, sheet);
}

struct sheet_layout holder_sheet(struct arena *arena, const struct holder *holder) {
    struct sheet_layout sheet = {0};
    lay(arena, holder, 0, 0, &sheet);
    return sheet;
}
