#include "cut/first_fit.h"

enum { BEST_FIT_MOST = 2000 }; /* pieces up to which the fullest board is looked for too */

/* Boards that are being filled. */
struct filling {
    int64_t *room; /* left, per board */
    int64_t *most; /* a tree of the most room among boards 2^h k ... ; leaves from `leaves` on */
    size_t leaves; /* a power of two */
    size_t boards;
    int *board_of; /* per piece, in the order in which they are placed */
};

static void set_room(struct filling *filling, size_t board, int64_t room) {
    filling->room[board] = room;
    size_t node = filling->leaves + board;
    filling->most[node] = room;
    for (node /= 2; node > 0; node /= 2) {
        int64_t left = filling->most[2 * node], right = filling->most[2 * node + 1];
        filling->most[node] = left > right ? left : right;
    }
}

/* The first board with room, or a new one. */
static size_t first_with_room(const struct filling *filling, int64_t size) {
    if (filling->most[1] < size)
        return filling->boards;
    size_t node = 1;
    while (node < filling->leaves)
        node = filling->most[2 * node] >= size ? 2 * node : 2 * node + 1;
    return node - filling->leaves;
}

/* The board that it fills best, or a new one. */
static size_t fullest_with_room(const struct filling *filling, int64_t size) {
    size_t best = filling->boards;
    for (size_t b = 0; b < filling->boards; b++)
        if (filling->room[b] >= size &&
            (best == filling->boards || filling->room[b] < filling->room[best]))
            best = b;
    return best;
}

static struct filling filling_new(struct arena *arena, size_t pieces) {
    struct filling filling = {.leaves = 1};
    while (filling.leaves < pieces + 1)
        filling.leaves *= 2;
    filling.room = ARENA_ARRAY(arena, int64_t, filling.leaves);
    filling.most = ARENA_ARRAY(arena, int64_t, 2 * filling.leaves);
    filling.board_of = ARENA_ARRAY(arena, int, pieces + 1);
    return filling;
}

/* Place every piece on boards of this room; the layout that comes of it. */
static struct layout fill(struct arena *arena, const struct kinds *kinds, const int *demand,
                          size_t pieces, int64_t room, bool fullest) {
    struct filling filling = filling_new(arena, pieces);
    size_t *count_on = ARENA_ARRAY(arena, size_t, pieces + 1);
    size_t next = 0;
    for (size_t k = 0; k < kinds->count; k++)
        for (int copy = 0; copy < demand[k]; copy++) {
            int64_t size = kinds->size[k];
            size_t board =
                fullest ? fullest_with_room(&filling, size) : first_with_room(&filling, size);
            if (board == filling.boards)
                set_room(&filling, filling.boards++, room);
            set_room(&filling, board, filling.room[board] - size);
            filling.board_of[next++] = (int)board;
            count_on[board]++;
        }
    struct layout layout = {.items = ARENA_ARRAY(arena, struct pattern, filling.boards),
                            .count = filling.boards,
                            .capacity = filling.boards};
    for (size_t b = 0; b < filling.boards; b++) {
        int stock = kinds_stock_for(kinds, room - filling.room[b]);
        layout.items[b] = (struct pattern){
            .stock = stock, .takes = ARENA_ARRAY(arena, struct take, count_on[b]), .times = 1};
        layout.cost += kinds->cost[stock];
    }
    next = 0;
    for (size_t k = 0; k < kinds->count; k++)
        for (int copy = 0; copy < demand[k]; copy++) {
            struct pattern *pattern = &layout.items[filling.board_of[next++]];
            struct take *last = pattern->takes + pattern->take_count;
            if (pattern->take_count && last[-1].kind == (int)k)
                last[-1].count++;
            else
                pattern->takes[pattern->take_count++] = (struct take){(int)k, 1};
        }
    return layout;
}

struct layout first_fit(struct arena *arena, const struct kinds *kinds, const int *demand) {
    size_t pieces = 0;
    int64_t longest = 0;
    for (size_t k = 0; k < kinds->count; k++) {
        pieces += (size_t)demand[k];
        if (demand[k] && !longest)
            longest = kinds->size[k];
    }
    struct layout best = {0};
    if (!pieces)
        return best;
    for (int stock = kinds_stock_for(kinds, longest); stock < (int)kinds->stock_count; stock++)
        for (int fullest = 0; fullest < (pieces > BEST_FIT_MOST ? 1 : 2); fullest++) {
            struct layout layout = fill(arena, kinds, demand, pieces, kinds->room[stock], fullest);
            if (!best.count || layout.cost < best.cost)
                best = layout;
        }
    return best;
}
