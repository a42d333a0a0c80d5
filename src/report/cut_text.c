#include "report/cut_text.h"

#include "report/brace_words.h"
#include "report/check_text.h"
#include "report/cut_words.h"
#include "report/layout.h"
#include "report/visible.h"

#include <math.h>
#include <string.h>

enum { COUNT_WIDTH = 5, EACH_WIDTH = 17, WHAT_WIDTH = 38, PRICE_WIDTH = 10 };

static const char *mass_words(struct arena *arena, const struct cut_answer *answer, double kg) {
    return quantity_print(arena, kg, QUANTITY_MASS, answer->frame->units);
}

static const char *title_of(struct arena *arena, const struct cut_answer *answer) {
    struct result result = {.frame = answer->frame};
    return title_in_words(arena, &result);
}

/* ---- in one sentence ---- */

static size_t pieces_left_out(const struct cut_answer *answer) {
    size_t count = 0;
    for (size_t k = 0; k < answer->stick_count; k++)
        count += answer->sticks[k].too_long_count;
    for (size_t k = 0; k < answer->sheet_count; k++)
        count += answer->sheets[k].too_large;
    return count;
}

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
    if (pieces_left_out(answer))
        paragraph(text, "", 0,
                  arena_print(arena,
                              "%s too long or too large for what there is to buy: see below.",
                              pieces_left_out(answer) == 1
                                  ? "One piece is"
                                  : arena_print(arena, "%zu pieces are", pieces_left_out(answer))));
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
        const char *each = cut_length_words(arena, answer, sticks->stocks[s]);
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
                    cut_size_words(arena, answer, sheets->width, sheets->length),
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

/* ---- what it weighs ---- */

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
        cut_plan_section(text, answer);
        cut_order_section(text, answer);
        cut_left_section(text, answer);
        weight_section(text, answer);
    } else {
        paragraph(text, "", 0,
                  arena_print(text->arena, "%s: there is nothing to cut.",
                              title_of(text->arena, answer)));
    }
    notes_section(text, answer);
}
