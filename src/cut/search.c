#include "cut/search.h"

#include "cut/failed.h"
#include "cut/one_board.h"

enum {
    WIDTH_MOST = 4000,
    COLUMNS_MOST = 300,     /* kept from one relaxation to the next, besides those given */
    RELAXED_KINDS_LEAST = 6 /* fewer are searched sooner than relaxed */
};

struct search {
    struct arena *arena;
    const struct kinds *kinds;
    struct looking looking;
    struct remainder remainder;
    struct columns columns;
    size_t given_columns;
    long relaxed, relaxed_most;
    struct failed *failed;
    struct candidate *chosen; /* per board of the plan so far */
    size_t chosen_count;
};

static bool is_over(const struct search *search) {
    return search->looking.steps > search->looking.most;
}

/* Relax what is left: its worths measure better than those of the whole. False where even the
 * relaxation costs too much. */
static bool relax_anew(struct search *search, size_t first) {
    long kinds = (long)(search->kinds->count - first);
    if (search->relaxed >= search->relaxed_most || kinds < RELAXED_KINDS_LEAST)
        return true;
    search->relaxed += kinds * kinds;
    if (search->columns.count > search->given_columns + COLUMNS_MOST)
        search->columns.count = search->given_columns;
    struct relaxation anew = relax(search->arena, search->kinds, search->remainder.left,
                                   remainder_boards(&search->remainder), &search->columns);
    if (anew.bound > search->remainder.cost_left || anew.too_few)
        return false;
    if (anew.solved)
        remainder_measure(&search->remainder, &anew);
    return true;
}

static bool rest_fits(struct search *search);

static bool some_board_fits(struct search *search, size_t first) {
    struct candidate *candidates;
    size_t count =
        one_board_patterns(search->arena, &search->remainder, first, &search->looking, &candidates);
    for (size_t c = 0; c < count && !is_over(search); c++) {
        remainder_cut(&search->remainder, &candidates[c], 1);
        search->chosen[search->chosen_count++] = candidates[c];
        if (rest_fits(search))
            return true;
        search->chosen_count--;
        remainder_cut(&search->remainder, &candidates[c], -1);
    }
    return false;
}

static bool rest_fits(struct search *search) {
    struct remainder *remainder = &search->remainder;
    size_t first = 0;
    while (first < search->kinds->count && !remainder->left[first])
        first++;
    if (first == search->kinds->count)
        return true;
    if (remainder_lost(remainder) ||
        failed_before(search->failed, remainder->left, remainder->cost_left))
        return false;
    struct arena_mark mark = arena_mark(search->arena);
    long relaxed = search->relaxed;
    struct measure before = remainder->measures[BY_WORTH];
    search->looking.steps += (long)search->kinds->count;
    if (relax_anew(search, first) && some_board_fits(search, first))
        return true;
    if (search->relaxed == relaxed) /* else its columns are kept */
        arena_rewind(search->arena, mark);
    remainder->measures[BY_WORTH] = before;
    if (!is_over(search))
        failed_note(search->failed, remainder->left, remainder->cost_left);
    return false;
}

/* A list of their own, since a search gives back what it finds. */
static void take_columns(struct search *search, const struct columns *columns) {
    for (size_t k = 0; columns && k < columns->count; k++)
        ARRAY_PUSH(search->arena, &search->columns, columns->items[k]);
    search->given_columns = search->columns.count;
}

enum search_outcome search_layout(struct arena *arena, const struct kinds *kinds,
                                  const struct search_task *task,
                                  const struct search_limits *limits, struct layout *layout) {
    struct arena_mark mark = arena_mark(arena);
    size_t pieces = 0;
    for (size_t k = 0; k < kinds->count; k++)
        pieces += (size_t)task->demand[k];
    struct search search = {
        .arena = arena,
        .kinds = kinds,
        .looking = {.width = limits->width ? limits->width : WIDTH_MOST, .most = limits->steps},
        .remainder = remainder_new(arena, kinds, task->demand, task->cost, task->boards),
        .relaxed_most = limits->relaxed,
        .failed = failed_new(arena, kinds->count + (task->boards ? kinds->stock_count : 0)),
        .chosen = ARENA_ARRAY(arena, struct candidate, pieces)};
    take_columns(&search, task->columns);
    remainder_measure(&search.remainder, task->relaxation);
    if (rest_fits(&search)) {
        for (size_t k = 0; k < search.chosen_count; k++)
            layout_add(arena, layout, kinds,
                       pattern_of(arena, kinds, search.chosen[k].stock, search.chosen[k].take), 1);
        return SEARCH_FOUND;
    }
    arena_rewind(arena, mark);
    return search.looking.cut_short || is_over(&search) ? SEARCH_UNDECIDED : SEARCH_NONE;
}
