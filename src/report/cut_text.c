#include "report/cut_text.h"

#include "report/brace_words.h"
#include "report/check_text.h"
#include "report/cut_words.h"
#include "report/layout.h"
#include "report/visible.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { COUNT_WIDTH = 5, EACH_WIDTH = 17, WHAT_WIDTH = 38, PRICE_WIDTH = 10, NAMES_SHOWN = 6 };

static const char *length_words(struct arena *arena, const struct cut_answer *answer, double m) {
    return quantity_print_length(arena, m, answer->frame->units);
}

static const char *mass_words(struct arena *arena, const struct cut_answer *answer, double kg) {
    return quantity_print(arena, kg, QUANTITY_MASS, answer->frame->units);
}

static const char *title_of(struct arena *arena, const struct cut_answer *answer) {
    struct result result = {.frame = answer->frame};
    return title_in_words(arena, &result);
}

/* ---- in one sentence ---- */

static void summary(struct text *text, const struct cut_answer *answer) {
    struct arena *arena = text->arena;
    size_t boards = 0, sheets = 0;
    for (size_t k = 0; k < answer->stick_count; k++)
        boards += answer->sticks[k].board_count;
    for (size_t k = 0; k < answer->sheet_count; k++)
        sheets += (size_t)answer->sheets[k].needed;
    const char *and_sheets =
        sheets ? arena_print(arena, " and %s", counted(arena, sheets, "sheet")) : "";
    const char *cost = isfinite(answer->cost)
                           ? arena_print(arena, ", %s%s", money_in_words(arena, answer->cost),
                                         answer->unpriced.count ? " for what has a price" : "")
                           : "";
    paragraph(text, "", 0,
              arena_print(arena, "%s: %s%s%s; weighs %s.", title_of(arena, answer),
                          counted(arena, boards, "board"), and_sheets, cost,
                          mass_words(arena, answer, answer->whole.as_judged)));
}

/* ---- what to buy ---- */

static const size_t BUY_WIDTHS[] = {COUNT_WIDTH, EACH_WIDTH, WHAT_WIDTH, PRICE_WIDTH, PRICE_WIDTH};

static void buy_row(struct text *text, size_t count, const char *each, const char *what,
                    double price) {
    struct arena *arena = text->arena;
    const char *cells[] = {count ? arena_print(arena, "%zu", count) : "", each, what,
                           isfinite(price) ? money_in_words(arena, price) : "",
                           isfinite(price) ? money_in_words(arena, price * (double)count)
                                           : "no price"};
    row_of_cells(text, 2, cells, BUY_WIDTHS, 5);
}

static void buy_sticks(struct text *text, const struct cut_answer *answer,
                       const struct cut_sticks *sticks) {
    struct arena *arena = text->arena;
    const char *what =
        arena_print(arena, "%s: %s", sticks->name, wood_in_words(arena, answer, sticks->kinds[0]));
    for (size_t s = sticks->stock_count; s-- > 0;) {
        const char *each = length_words(arena, answer, sticks->stocks[s]);
        size_t count = 0;
        double price = NAN;
        for (size_t b = 0; b < sticks->board_count; b++)
            count += sticks->boards[b].stock == sticks->stocks[s];
        for (size_t c = 0; c < answer->costs.count; c++)
            if (strcmp(answer->costs.items[c].what, sticks->name) == 0 &&
                strcmp(answer->costs.items[c].each, each) == 0)
                price = answer->costs.items[c].price;
        if (count)
            buy_row(text, count, each, what, price);
    }
}

static const char *size_words(struct arena *arena, const struct cut_answer *answer, double a,
                              double b) {
    return arena_print(arena, "%s x %s", length_words(arena, answer, a),
                       length_words(arena, answer, b));
}

static void buy_small(struct text *text, const struct cut_small *small) {
    struct arena *arena = text->arena;
    if (!small->in_box) {
        buy_row(text, (size_t)small->count, "", small->words, small->cost / small->count);
        return;
    }
    int spare = small->boxes * small->in_box - small->count;
    buy_row(text, (size_t)small->boxes, arena_print(arena, "box of %d", small->in_box),
            arena_print(arena, "%s (%d needed, %d spare)", small->words, small->count, spare),
            small->cost / small->boxes);
}

static void buy_section(struct text *text, const struct cut_answer *answer) {
    struct arena *arena = text->arena;
    text_add(text, "\nWhat to buy\n");
    for (size_t k = 0; k < answer->stick_count; k++)
        buy_sticks(text, answer, &answer->sticks[k]);
    for (size_t k = 0; k < answer->sheet_count; k++) {
        const struct cut_sheets *sheets = &answer->sheets[k];
        if (sheets->needed)
            buy_row(text, (size_t)sheets->needed,
                    size_words(arena, answer, sheets->width, sheets->length),
                    table_sheet(sheets->sheet)->name, sheets->cost / sheets->needed);
    }
    for (size_t k = 0; k < answer->small_count; k++)
        buy_small(text, &answer->smalls[k]);
    if (isfinite(answer->cost)) {
        const char *cells[] = {"", "",
                               answer->unpriced.count ? "Total of what has a price" : "Total", "",
                               money_in_words(arena, answer->cost)};
        row_of_cells(text, 2, cells, BUY_WIDTHS, 5);
    } else {
        paragraph(text, "  ", 2,
                  "Nothing has a price: `prices:` in the file makes a bill of this.");
    }
}

/* ---- how to cut it ---- */

/* Boards from `from` on that read alike: how many. */
static size_t alike(struct arena *arena, const struct cut_answer *answer,
                    const struct cut_sticks *sticks, size_t from) {
    const char *words = board_in_words(arena, answer, sticks, &sticks->boards[from]);
    size_t count = 1;
    while (from + count < sticks->board_count &&
           sticks->boards[from + count].stock == sticks->boards[from].stock &&
           strcmp(words, board_in_words(arena, answer, sticks, &sticks->boards[from + count])) == 0)
        count++;
    return count;
}

static void boards_of(struct text *text, const struct cut_answer *answer,
                      const struct cut_sticks *sticks) {
    struct arena *arena = text->arena;
    text_print(text, "  %s: %s; %s\n", sticks->name, counted(arena, sticks->board_count, "board"),
               boards_proof(arena, sticks));
    for (size_t from = 0, count; from < sticks->board_count; from += count) {
        const struct cut_board *board = &sticks->boards[from];
        count = alike(arena, answer, sticks, from);
        const char *times = count > 1 ? arena_print(arena, "%zu boards of ", count) : "";
        const char *rest =
            board->off_cut > 0.0
                ? arena_print(arena, "; %s left", length_words(arena, answer, board->off_cut))
                : "; nothing left";
        paragraph(text, "    ", 8,
                  arena_print(arena, "%s%s: %s%s", times, length_words(arena, answer, board->stock),
                              board_in_words(arena, answer, sticks, board), rest));
    }
    for (size_t k = 0; k < sticks->too_long_count; k++) {
        const struct cut_piece *piece = &sticks->pieces[sticks->too_long[k]];
        paragraph(text, "    ", 8,
                  arena_print(arena,
                              "%s is %s long and comes out of none of these boards: buy it "
                              "longer (--stock), or splice it",
                              piece->name, length_words(arena, answer, piece->needs)));
    }
}

static void sheet_pieces(struct text *text, const struct cut_answer *answer,
                         const struct cut_sheets *sheets, int number) {
    struct arena *arena = text->arena;
    for (size_t k = 0; k < sheets->piece_count; k++) {
        const struct cut_sheet_piece *piece = &sheets->pieces[k];
        if (piece->sheet != number)
            continue;
        const char *where =
            number ? arena_print(arena,
                                 "sheet %d, %s from its left and %s from its bottom edge: ", number,
                                 length_words(arena, answer, piece->at[0]),
                                 length_words(arena, answer, piece->at[1]))
                   : "";
        const char *shape = piece->holds_corners ? " (then cut to its shape)" : "";
        paragraph(text, "    ", 8,
                  arena_print(arena, "%s%s %s%s%s", where, piece->name,
                              size_words(arena, answer, piece->size[0], piece->size[1]), shape,
                              number ? "" : " is larger than a sheet"));
    }
}

static void sheets_of(struct text *text, const struct cut_answer *answer,
                      const struct cut_sheets *sheets) {
    struct arena *arena = text->arena;
    text_print(text, "  %s: %s; %s\n", table_sheet(sheets->sheet)->name,
               counted(arena, (size_t)sheets->needed, "sheet"), sheets_proof(arena, sheets));
    if (sheets->fluted)
        paragraph(text, "    ", 4, "Its ribs run along the longer side; no piece is turned.");
    for (int number = 1; number <= sheets->needed; number++)
        sheet_pieces(text, answer, sheets, number);
    sheet_pieces(text, answer, sheets, 0);
}

static void cut_section(struct text *text, const struct cut_answer *answer) {
    text_print(text, "\nHow to cut it (lengths to the nearest %s; a saw cut takes %s)\n",
               answer->frame->units == UNITS_SI ? "mm" : "1/16 in",
               length_words(text->arena, answer, answer->kerf));
    for (size_t k = 0; k < answer->stick_count; k++)
        boards_of(text, answer, &answer->sticks[k]);
    for (size_t k = 0; k < answer->sheet_count; k++)
        sheets_of(text, answer, &answer->sheets[k]);
}

/* ---- all of one length together ---- */

static int longest_first(const void *left, const void *right) {
    const struct cut_piece *const *a = left, *const *b = right;
    if ((*a)->length != (*b)->length)
        return (*a)->length > (*b)->length ? -1 : 1;
    return (*a > *b) - (*a < *b); /* one list, in its order */
}

/* Names of pieces of one length and kind, with their ends. */
static void batch(struct text *text, const struct cut_answer *answer,
                  const struct cut_piece *const *pieces, size_t count) {
    struct arena *arena = text->arena;
    struct text names = text_new(arena);
    const char *before = "";
    size_t shown = 0, hidden = 0;
    for (size_t k = 0; k < count; k++) {
        const char *label = piece_label(arena, pieces[k]);
        if (strcmp(label, before) == 0)
            continue;
        before = label;
        if (shown++ < NAMES_SHOWN)
            text_print(&names, "%s%s", names.count ? ", " : "", label);
        else
            hidden++;
    }
    if (hidden)
        text_print(&names, " and %zu more", hidden);
    const char *ends = ends_in_words(arena, answer, pieces[0]);
    paragraph(text, "    ", 8,
              arena_print(arena, "%zu x %s: %s%s%s%s", count,
                          length_words(arena, answer, pieces[0]->length), text_string(&names),
                          ends[0] ? "; " : "", ends,
                          pieces[0]->measure ? "; an end runs along what it lies on: mark it on "
                                               "the frame"
                                             : ""));
}

static bool is_same_batch(struct arena *arena, const struct cut_answer *answer,
                          const struct cut_piece *a, const struct cut_piece *b) {
    return strcmp(length_words(arena, answer, a->length), length_words(arena, answer, b->length)) ==
               0 &&
           a->measure == b->measure &&
           strcmp(ends_in_words(arena, answer, a), ends_in_words(arena, answer, b)) == 0;
}

static void batches_of(struct text *text, const struct cut_answer *answer,
                       const struct cut_sticks *sticks) {
    struct arena *arena = text->arena;
    const struct cut_piece **pieces =
        ARENA_ARRAY(arena, const struct cut_piece *, sticks->piece_count);
    for (size_t k = 0; k < sticks->piece_count; k++)
        pieces[k] = &sticks->pieces[k];
    if (sticks->piece_count)
        qsort(pieces, sticks->piece_count, sizeof(const struct cut_piece *), longest_first);
    text_print(text, "  %s\n", sticks->name);
    for (size_t from = 0, count; from < sticks->piece_count; from += count) {
        for (count = 1; from + count < sticks->piece_count &&
                        is_same_batch(arena, answer, pieces[from], pieces[from + count]);)
            count++;
        batch(text, answer, &pieces[from], count);
    }
}

static void batch_section(struct text *text, const struct cut_answer *answer) {
    text_add(text, "\nIn which order? Set a stop and cut all of one length together, the longest "
                   "first\n");
    for (size_t k = 0; k < answer->stick_count; k++)
        batches_of(text, answer, &answer->sticks[k]);
}

/* ---- what is left over, and what it weighs ---- */

static int larger_first(const void *left, const void *right) {
    double a = *(const double *)left, b = *(const double *)right;
    return (a < b) - (a > b);
}

/* Those worth keeping: "2 x 3 ft, 1 ft 4 in"; "" where there are none. */
static const char *off_cuts_of(struct arena *arena, const struct cut_answer *answer,
                               const struct cut_sticks *sticks) {
    double *kept = ARENA_ARRAY(arena, double, sticks->board_count);
    size_t count = 0;
    for (size_t b = 0; b < sticks->board_count; b++)
        if (sticks->boards[b].off_cut >= table_constant("cut-keep").value)
            kept[count++] = sticks->boards[b].off_cut;
    if (count)
        qsort(kept, count, sizeof *kept, larger_first);
    struct text list = text_new(arena);
    for (size_t from = 0, same; from < count; from += same) {
        const char *length = length_words(arena, answer, kept[from]);
        for (same = 1; from + same < count &&
                       strcmp(length, length_words(arena, answer, kept[from + same])) == 0;)
            same++;
        text_add(&list, list.count ? ", " : "");
        if (same > 1)
            text_print(&list, "%zu x ", same);
        text_add(&list, length);
    }
    return text_string(&list);
}

static void off_cut_section(struct text *text, const struct cut_answer *answer) {
    struct arena *arena = text->arena;
    bool any = false;
    for (size_t k = 0; k < answer->stick_count; k++) {
        const char *list = off_cuts_of(arena, answer, &answer->sticks[k]);
        if (!list[0])
            continue;
        if (!any)
            text_print(text, "\nWhat is left over, from %s on\n",
                       length_words(arena, answer, table_constant("cut-keep").value));
        any = true;
        paragraph(text, "  ", 6, arena_print(arena, "%s: %s", answer->sticks[k].name, list));
    }
}

static void weight_row(struct text *text, const struct cut_answer *answer, const char *name,
                       const struct cut_weight *weight) {
    static const size_t widths[] = {30, 14, 14, 14};
    struct arena *arena = text->arena;
    const char *cells[] = {name, mass_words(arena, answer, weight->dry),
                           mass_words(arena, answer, weight->after_rain),
                           mass_words(arena, answer, weight->with_trays)};
    row_of_cells(text, 2, cells, widths, 4);
}

static void weight_section(struct text *text, const struct cut_answer *answer) {
    static const size_t widths[] = {30, 14, 14, 14};
    static const char *const head[] = {"", "dry", "after rain", "full of trays"};
    text_add(text, "\nWhat does it weigh?\n");
    row_of_cells(text, 2, head, widths, 4);
    weight_row(text, answer, "all of it", &answer->whole);
    for (size_t k = 0; k < answer->part_count; k++)
        weight_row(text, answer, answer->parts[k].name, &answer->parts[k]);
    if (!answer->part_count)
        paragraph(text, "  ", 2,
                  "Screws are not weighed. Where it comes apart, `parts:` in the "
                  "file names what is carried as one.");
    else
        paragraph(text, "  ", 2,
                  "Screws are not weighed. Whether one person can carry a part: "
                  "batten check.");
}

static void notes_section(struct text *text, const struct cut_answer *answer) {
    if (answer->notes.count)
        text_add(text, "\nWhat else to know\n");
    for (size_t k = 0; k < answer->notes.count; k++)
        paragraph(text, "  - ", 4, visible(text->arena, answer->notes.items[k]));
}

void cut_text(struct text *text, const struct cut_answer *answer) {
    if (answer->stick_count || answer->sheet_count) {
        summary(text, answer);
        buy_section(text, answer);
        cut_section(text, answer);
        batch_section(text, answer);
        off_cut_section(text, answer);
        weight_section(text, answer);
    } else {
        paragraph(text, "", 0,
                  arena_print(text->arena, "%s: there is nothing to cut.",
                              title_of(text->arena, answer)));
    }
    notes_section(text, answer);
}
