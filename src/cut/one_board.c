#include "cut/one_board.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

struct one_board {
    struct arena *arena;
    const struct remainder *remainder;
    struct looking *looking;
    int64_t smallest; /* of what is left */
    size_t first;     /* the kind that must be on it */
    int stock;
    int64_t need[MEASURES]; /* worth that it must hold */
    int64_t worth[MEASURES];
    int *take;
    struct candidate *kept; /* a heap, the worst on top, once `width` are kept */
    size_t count, width, found;
};

static double lost_on(const struct one_board *board) {
    const struct remainder *remainder = board->remainder;
    double lost = 0.0;
    for (int m = 0; m < MEASURES; m++) {
        const struct measure *measure = &remainder->measures[m];
        lost += (double)(measure->full[board->stock] - board->worth[m]) / measure->unit;
    }
    return lost;
}

static bool worse(const struct candidate *a, const struct candidate *b) {
    return a->lost != b->lost ? a->lost > b->lost : a->number > b->number;
}

static void sink(struct candidate *heap, size_t count, size_t at) {
    for (;;) {
        size_t worst = at, child = 2 * at + 1;
        for (size_t c = child; c < count && c < child + 2; c++)
            if (worse(&heap[c], &heap[worst]))
                worst = c;
        if (worst == at)
            return;
        struct candidate other = heap[at];
        heap[at] = heap[worst];
        heap[worst] = other;
        at = worst;
    }
}

/* While the heap is full, a pattern must hold more than the worst kept. */
static void raise_need(struct one_board *board) {
    const struct remainder *remainder = board->remainder;
    const struct measure *measure = &remainder->measures[0];
    double most_lost = board->kept[0].lost * measure->unit * (1.0 + 1e-12);
    int64_t need = measure->full[board->stock] - (int64_t)ceil(most_lost) - 1;
    if (need > board->need[0])
        board->need[0] = need;
}

static void keep(struct one_board *board) {
    const struct remainder *remainder = board->remainder;
    size_t bytes = remainder->kinds->count * sizeof *board->take;
    struct candidate candidate = {
        .lost = lost_on(board), .stock = board->stock, .number = board->found++};
    if (board->count < board->width) {
        candidate.take = ARENA_ARRAY(board->arena, int, remainder->kinds->count);
        memcpy(candidate.take, board->take, bytes);
        board->kept[board->count++] = candidate;
        if (board->count == board->width)
            for (size_t k = board->count; k-- > 0;)
                sink(board->kept, board->count, k);
        return;
    }
    board->looking->cut_short = true;
    if (!worse(&board->kept[0], &candidate))
        return;
    candidate.take = board->kept[0].take;
    memcpy(candidate.take, board->take, bytes);
    board->kept[0] = candidate;
    sink(board->kept, board->count, 0);
}

/* A pattern is not worth trying where a piece left over still fits, or fits in the place of a
 * shorter one: whatever plan holds it, one with the longer piece here is as good. The first piece
 * stays. */
static bool is_dominated(const struct one_board *board, int64_t room) {
    const struct remainder *remainder = board->remainder;
    board->looking->steps += (long)remainder->kinds->count / 4;
    const int64_t *size = remainder->kinds->size;
    int64_t longer = 0; /* the shortest piece left over among those that are longer */
    for (size_t k = 0; k < remainder->kinds->count; k++) {
        int on = board->take[k] - (k == board->first);
        if (on > 0 && longer && longer <= size[k] + room)
            return true;
        if (remainder->left[k] > board->take[k]) {
            if (size[k] <= room)
                return true;
            longer = size[k];
        }
    }
    return false;
}

/* May enough worth still come from `kind` and those behind it? */
static bool can_hold_enough(const struct one_board *board, size_t kind, int64_t room) {
    for (int m = 0; m < MEASURES; m++) {
        const struct measure *measure = &board->remainder->measures[m];
        int64_t missing = board->need[m] - board->worth[m];
        if (missing <= 0)
            continue;
        if (missing > measure->all_behind[kind] ||
            (double)missing > (double)room * measure->densest[kind] * (1.0 + 1e-12) + 0.5)
            return false;
    }
    return true;
}

/* The first kind from `kind` on that is no longer than `room`. */
static size_t first_that_fits(const struct kinds *kinds, size_t kind, int64_t room) {
    size_t end = kinds->count;
    while (kind < end) {
        size_t middle = kind + (end - kind) / 2;
        if (kinds->size[middle] <= room)
            end = middle;
        else
            kind = middle + 1;
    }
    return kind;
}

static bool holds_enough(const struct one_board *board) {
    for (int m = 0; m < MEASURES; m++)
        if (board->worth[m] < board->need[m])
            return false;
    return true;
}

static void offer(struct one_board *board, int64_t room) {
    const struct kinds *kinds = board->remainder->kinds;
    int stock = board->stock;
    bool shorter_does = stock > 0 && room >= kinds->room[stock] - kinds->room[stock - 1] &&
                        remainder_has(board->remainder, stock - 1);
    if (!shorter_does && holds_enough(board) && !is_dominated(board, room))
        keep(board);
}

static void lay(struct one_board *board, size_t kind, int64_t room);

/* One more piece of this kind, and what may come behind it. */
static void lay_one(struct one_board *board, size_t kind, int64_t room) {
    const struct remainder *remainder = board->remainder;
    board->take[kind]++;
    for (int m = 0; m < MEASURES; m++)
        board->worth[m] += remainder->measures[m].worth[kind];
    lay(board, kind, room - remainder->kinds->size[kind]);
    for (int m = 0; m < MEASURES; m++)
        board->worth[m] -= remainder->measures[m].worth[kind];
    board->take[kind]--;
}

/* Pieces of `kind` and shorter ones into the room that is left. A piece that leaves no room for a
 * further one must be long enough by itself, which passes over most of them. */
static void lay(struct one_board *board, size_t kind, int64_t room) {
    const struct remainder *remainder = board->remainder;
    const struct kinds *kinds = remainder->kinds;
    if (board->count == board->width)
        raise_need(board);
    offer(board, room);
    for (kind = first_that_fits(kinds, kind, room); kind < kinds->count; kind++) {
        if (!can_hold_enough(board, kind, room)) {
            board->looking->cut_short |= board->count == board->width;
            return;
        }
        if (++board->looking->steps > board->looking->most) {
            board->looking->cut_short = true;
            return;
        }
        int64_t missing = board->need[BY_SIZE] - board->worth[BY_SIZE];
        int64_t size = kinds->size[kind];
        if (size < missing && room - size < board->smallest) {
            /* not enough, and nothing fits beside it: on to pieces that leave room for one more */
            size_t next = first_that_fits(kinds, kind, room - board->smallest);
            kind = next > kind ? next - 1 : kind;
            continue;
        }
        if (remainder->left[kind] > board->take[kind])
            lay_one(board, kind, room);
    }
}

/* What is left of each kind and those behind it, in every measure. */
static void look_behind(const struct remainder *remainder) {
    size_t count = remainder->kinds->count;
    for (int m = 0; m < MEASURES; m++) {
        const struct measure *measure = &remainder->measures[m];
        measure->densest[count] = 0.0;
        measure->all_behind[count] = 0;
        for (size_t k = count; k-- > 0;) {
            double density = (double)measure->worth[k] / (double)remainder->kinds->size[k];
            bool some = remainder->left[k] > 0;
            measure->densest[k] =
                some && density > measure->densest[k + 1] ? density : measure->densest[k + 1];
            measure->all_behind[k] =
                measure->all_behind[k + 1] + remainder->left[k] * measure->worth[k];
        }
    }
}

static int tightest_first(const void *left, const void *right) {
    const struct candidate *a = left, *b = right;
    return worse(a, b) - worse(b, a);
}

size_t one_board_patterns(struct arena *arena, const struct remainder *remainder, size_t first,
                          struct looking *looking, struct candidate **candidates) {
    const struct kinds *kinds = remainder->kinds;
    struct one_board board = {.arena = arena,
                              .remainder = remainder,
                              .looking = looking,
                              .first = first,
                              .take = ARENA_ARRAY(arena, int, kinds->count),
                              .kept = arena_room(arena, looking->width, sizeof(struct candidate)),
                              .width = looking->width};
    look_behind(remainder);
    for (size_t k = first; k < kinds->count; k++)
        if (remainder->left[k])
            board.smallest = kinds->size[k];
    for (size_t s = 0; s < kinds->stock_count; s++) {
        if (kinds->room[s] < kinds->size[first] || kinds->cost[s] > remainder->cost_left ||
            !remainder_has(remainder, (int)s))
            continue;
        board.stock = (int)s;
        for (int m = 0; m < MEASURES; m++)
            board.need[m] = remainder->measures[m].full[s] - remainder->measures[m].loss;
        lay_one(&board, first, kinds->room[s]);
    }
    if (board.count)
        qsort(board.kept, board.count, sizeof *board.kept, tightest_first);
    *candidates = board.kept;
    return board.count;
}
