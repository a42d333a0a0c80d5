/* Sheets: published guillotine problems, sheets cut up at random, and what must hold of every plan.
 */
#include "cut/guillotine.h"
#include "cut/sheets.h"

#include "in_arena.h"
#include "second_frame.h"

#include <stdlib.h>

TestSuite(sheets, .init = set_up, .fini = tear_down);

/* ---- is it a plan, and one that guillotine cuts can make? ---- */

struct box {
    int64_t x, y, width, height;
};

static bool cuts_apart(const struct box *boxes, size_t count, int64_t at, bool upright) {
    for (size_t k = 0; k < count; k++) {
        int64_t from = upright ? boxes[k].x : boxes[k].y;
        int64_t to = from + (upright ? boxes[k].width : boxes[k].height);
        if (from < at && to > at)
            return false;
    }
    return true;
}

/* One piece, or some cut from edge to edge that leaves pieces whole on both sides. */
static bool is_guillotine(struct box *boxes, size_t count) {
    if (count <= 1)
        return true;
    for (size_t k = 0; k < count; k++)
        for (int upright = 0; upright < 2; upright++) {
            int64_t at = upright ? boxes[k].x : boxes[k].y;
            struct box *parts[2] = {ARENA_ARRAY(arena, struct box, count),
                                    ARENA_ARRAY(arena, struct box, count)};
            size_t counts[2] = {0, 0};
            if (!cuts_apart(boxes, count, at, upright))
                continue;
            for (size_t j = 0; j < count; j++) {
                int side = (upright ? boxes[j].x : boxes[j].y) >= at;
                parts[side][counts[side]++] = boxes[j];
            }
            if (counts[0] && counts[1])
                return is_guillotine(parts[0], counts[0]) && is_guillotine(parts[1], counts[1]);
        }
    return false;
}

static void is_sound(const struct sheet_task *task, const struct sheet_plan *plan) {
    int too_large = 0;
    for (int sheet = 0; sheet < plan->sheets; sheet++) {
        struct box *boxes = ARENA_ARRAY(arena, struct box, task->count);
        size_t count = 0;
        for (size_t k = 0; k < task->count; k++) {
            const struct placed *place = &plan->places[k];
            const struct sheet_piece *piece = &task->pieces[k];
            if (place->sheet != sheet)
                continue;
            cr_assert(!place->turned || piece->may_turn);
            int64_t width = place->turned ? piece->height : piece->width;
            int64_t height = place->turned ? piece->width : piece->height;
            cr_assert(place->x >= 0 && place->y >= 0 && place->x + width <= task->width &&
                      place->y + height <= task->height);
            struct box box = {place->x, place->y, width + task->kerf, height + task->kerf};
            for (size_t j = 0; j < count; j++)
                cr_assert(box.x >= boxes[j].x + boxes[j].width || boxes[j].x >= box.x + box.width ||
                              box.y >= boxes[j].y + boxes[j].height ||
                              boxes[j].y >= box.y + box.height,
                          "pieces lie on each other");
            boxes[count++] = box;
        }
        cr_assert(count > 0, "an empty sheet");
        cr_assert(is_guillotine(boxes, count), "a pattern that a saw cannot cut");
    }
    for (size_t k = 0; k < task->count; k++)
        too_large += plan->places[k].sheet < 0;
    cr_assert(too_large == plan->too_large && plan->bound <= plan->sheets);
    cr_assert(plan->proved == (plan->bound == plan->sheets && !too_large));
}

static struct sheet_plan cut_all(const struct sheet_task *task) {
    struct sheet_plan plan = sheets_cut(arena, task);
    is_sound(task, &plan);
    return plan;
}

/* ---- published ---- */

/* The pinwheel: two 2 x 1, two 1 x 2 and a 1 x 1 fill 3 x 3, but no cut goes through from edge to
 * edge, so a saw needs two sheets. */
Test(sheets, the_pinwheel_takes_two) {
    static const struct sheet_piece pieces[] = {{2000, 1000, false},
                                                {2000, 1000, false},
                                                {1000, 2000, false},
                                                {1000, 2000, false},
                                                {1000, 1000, false}};
    struct sheet_task task = {pieces, 5, 3000, 3000, 0};
    struct sheet_plan plan = cut_all(&task);
    cr_assert(plan.sheets == 2 && plan.proved);
    struct sheet_task without = {pieces, 4, 3000, 3000, 0};
    cr_assert(cut_all(&without).sheets == 2);
}

/* cgcut1 (Christofides and Whitlock 1977): of these pieces the most worth from one 15 x 10 sheet by
 * guillotine cuts without turning is 244. */
Test(sheets, cgcut1_is_244) {
    static const struct {
        int64_t width, height;
        int count, worth;
    } kinds[] = {{8, 4, 2, 66}, {3, 7, 1, 35}, {8, 2, 3, 24}, {3, 4, 5, 17},
                 {3, 3, 2, 11}, {3, 2, 2, 8},  {2, 1, 1, 2}};
    enum { KINDS = sizeof kinds / sizeof *kinds };
    const int64_t unit = 1000000;
    struct sheet_piece pieces[16];
    size_t count = 0;
    for (int k = 0; k < KINDS; k++)
        for (int copy = 0; copy < kinds[k].count; copy++)
            pieces[count++] =
                (struct sheet_piece){kinds[k].width * unit, kinds[k].height * unit, 0};
    struct sheet_task task = {pieces, count, 15 * unit, 10 * unit, 0};
    struct sheet_plan plan = {.places = ARENA_ARRAY(arena, struct placed, count)};
    struct plates plates = plates_of(arena, &task, &plan);
    struct guillotine *guillotine = guillotine_new(arena, &plates);
    cr_assert(guillotine && plates.count == KINDS);
    int worth_of[KINDS], set[KINDS] = {0}, best = 0;
    for (int p = 0; p < KINDS; p++)
        for (int k = 0; k < KINDS; k++)
            if (plates.items[p].width == kinds[k].width * unit &&
                plates.items[p].height == kinds[k].height * unit)
                worth_of[p] = kinds[k].worth;
    for (int p = 0; p < KINDS;) {
        int worth = 0;
        for (int k = 0; k < KINDS; k++)
            worth += set[k] * worth_of[k];
        if (worth > best && guillotine_fits(guillotine, set))
            best = worth;
        for (p = 0; p < KINDS && set[p] == plates.items[p].demand; p++)
            set[p] = 0;
        if (p < KINDS)
            set[p]++;
    }
    cr_assert(best == 244, "%d", best);
}

/* ---- sheets cut up at random: what was cut fits together again ---- */

struct cells {
    struct sheet_piece items[32];
    size_t count;
};

/* Cells of whole millimetres, each a kerf larger than its piece. */
static void cut_up(struct cells *cells, int64_t width, int64_t height, int64_t kerf, int depth,
                   uint64_t *state) {
    bool upright = (width > height) == (random_next(state) < 0.7);
    int64_t side = upright ? width : height;
    int64_t at = (int64_t)((0.2 + 0.6 * random_next(state)) * (double)side) / 1000000 * 1000000;
    if (depth == 0 || random_next(state) < 0.1 || at <= kerf || side - at <= kerf) {
        cells->items[cells->count++] = (struct sheet_piece){width - kerf, height - kerf, false};
        return;
    }
    cut_up(cells, upright ? at : width, upright ? height : at, kerf, depth - 1, state);
    cut_up(cells, upright ? width - at : width, upright ? height : height - at, kerf, depth - 1,
           state);
}

Test(sheets, what_was_cut_fits_together_again) {
    uint64_t state = 9;
    const int64_t width = 1200000000, height = 2400000000;
    for (int trial = 0; trial < 100; trial++) {
        struct arena_mark mark = arena_mark(arena);
        struct cells cells = {.count = 0};
        int64_t kerf = trial % 2 ? 3000000 : 0;
        while (cells.count < 2) {
            cells.count = 0;
            cut_up(&cells, width + kerf, height + kerf, kerf, 2 + trial % 3, &state);
        }
        for (size_t k = 0; k < cells.count; k++)
            cells.items[k].may_turn = trial % 4 >= 2;
        struct sheet_task task = {cells.items, cells.count, width, height, kerf};
        struct sheet_plan plan = cut_all(&task);
        cr_assert(plan.sheets == 1 && plan.proved, "trial %d: %d sheets of %zu pieces", trial,
                  plan.sheets, cells.count);
        /* a nanometre less both ways, and one sheet is not enough */
        task.width -= 1;
        task.height -= 1;
        plan = cut_all(&task);
        cr_assert(plan.sheets + plan.too_large > 1, "trial %d", trial);
        arena_rewind(arena, mark);
    }
}

/* ---- few pieces: fewest against every way to share them out among sheets ---- */

Test(sheets, a_few_pieces_are_proved) {
    uint64_t state = 15;
    for (int trial = 0; trial < 60; trial++) {
        struct arena_mark mark = arena_mark(arena);
        struct sheet_piece pieces[11];
        size_t count = 3 + (size_t)(8 * random_next(&state));
        for (size_t k = 0; k < count; k++)
            pieces[k] = (struct sheet_piece){(int64_t)(1e8 + 9e8 * random_next(&state)),
                                             (int64_t)(1e8 + 19e8 * random_next(&state)),
                                             random_next(&state) < 0.5};
        struct sheet_task task = {pieces, count, 1219200000, 2438400000, 3175000};
        cr_assert(cut_all(&task).proved, "trial %d", trial);
        arena_rewind(arena, mark);
    }
}

Test(sheets, many_pieces_make_a_plan) {
    uint64_t state = 25;
    struct sheet_piece pieces[80];
    double area = 0.0;
    for (size_t k = 0; k < 80; k++) {
        pieces[k] = (struct sheet_piece){(int64_t)(1e8 + 9e8 * random_next(&state)),
                                         (int64_t)(1e8 + 19e8 * random_next(&state)), k % 2};
        area += (double)pieces[k].width * (double)pieces[k].height;
    }
    struct sheet_task task = {pieces, 80, 1219200000, 2438400000, 3175000};
    struct sheet_plan plan = cut_all(&task);
    cr_assert(plan.sheets < 1.35 * area / (1219200000.0 * 2438400000.0), "%d sheets", plan.sheets);
}

/* Three pieces 24 in x 48 in of a 48 x 96 sheet whose ribs run the long way: two lie side by side
 * only with half an inch of saw cut to spare, else one above the other. */
Test(sheets, ribs_keep_their_direction) {
    const int64_t inch = 25400000;
    struct sheet_piece across = {60 * inch, 40 * inch, false};
    struct sheet_task task = {&across, 1, 48 * inch, 96 * inch, inch / 8};
    struct sheet_plan plan = cut_all(&task);
    cr_assert(plan.too_large == 1 && plan.sheets == 0 && !plan.proved);
    across.may_turn = true;
    plan = cut_all(&task);
    cr_assert(plan.sheets == 1 && plan.places[0].turned && plan.proved);
}

/* Five pieces of 25 x 49 in: two are too wide beside each other and too long above each other, so
 * each takes a sheet, though the area says three. */
Test(sheets, bound_counts_what_cannot_share) {
    const int64_t inch = 25400000;
    struct sheet_piece pieces[5];
    for (int k = 0; k < 5; k++)
        pieces[k] = (struct sheet_piece){25 * inch, 49 * inch, false};
    struct sheet_task task = {pieces, 5, 48 * inch, 96 * inch, 0};
    struct sheet_plan plan = cut_all(&task);
    cr_assert(plan.sheets == 5 && plan.bound == 5 && plan.proved);
}
