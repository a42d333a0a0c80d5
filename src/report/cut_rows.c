#include "report/cut_rows.h"

#include "report/brace_words.h"
#include "report/cut_words.h"

#include <math.h>
#include <string.h>

static const char *mass_words(struct arena *arena, const struct cut_answer *answer, double kg) {
    return quantity_print(arena, kg, QUANTITY_MASS, answer->frame->units);
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

const char *cut_summary(struct arena *arena, const struct cut_answer *answer) {
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
    return arena_print(arena, "%s%s%s; weighs %s.", counted(arena, boards, "board"), and_sheets,
                       cost, mass_words(arena, answer, answer->whole.as_judged));
}

const char *cut_left_out(struct arena *arena, const struct cut_answer *answer) {
    size_t count = pieces_left_out(answer);
    if (!count)
        return "";
    return arena_print(arena, "%s too long or too large for what there is to buy: see below.",
                       count == 1 ? "One piece is" : arena_print(arena, "%zu pieces are", count));
}

/* ---- what to buy ---- */

static void add_row(struct arena *arena, struct cut_rows *rows, const char *const *cells) {
    struct cut_row row = {{0}};
    for (int k = 0; k < rows->columns; k++)
        row.cells[k] = cells[k];
    ARRAY_PUSH(arena, rows, row);
}

static void buy_row(struct arena *arena, struct cut_rows *rows, size_t count, const char *each,
                    const char *what, double price) {
    const char *cells[] = {count ? arena_print(arena, "%zu", count) : "", each, what,
                           isfinite(price) ? money_in_words(arena, price) : "",
                           isfinite(price) ? money_in_words(arena, price * (double)count)
                                           : "no price"};
    add_row(arena, rows, cells);
}

static void buy_sticks(struct arena *arena, struct cut_rows *rows, const struct cut_answer *answer,
                       const struct cut_sticks *sticks) {
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
            buy_row(arena, rows, count, each, what, price);
    }
}

static void buy_small(struct arena *arena, struct cut_rows *rows, const struct cut_small *small) {
    if (!small->in_box) {
        buy_row(arena, rows, (size_t)small->count, "", small->words, small->cost / small->count);
        return;
    }
    int spare = small->boxes * small->in_box - small->count;
    buy_row(arena, rows, (size_t)small->boxes, arena_print(arena, "box of %d", small->in_box),
            arena_print(arena, "%s (%d needed, %d spare)", small->words, small->count, spare),
            small->cost / small->boxes);
}

static struct cut_rows rows_of(int columns) {
    return (struct cut_rows){.columns = columns};
}

struct cut_rows cut_buying(struct arena *arena, const struct cut_answer *answer) {
    struct cut_rows list = rows_of(5), *rows = &list;
    for (size_t k = 0; k < answer->stick_count; k++)
        buy_sticks(arena, rows, answer, &answer->sticks[k]);
    for (size_t k = 0; k < answer->sheet_count; k++) {
        const struct cut_sheets *sheets = &answer->sheets[k];
        if (sheets->needed)
            buy_row(arena, rows, (size_t)sheets->needed,
                    cut_size_words(arena, answer, sheets->width, sheets->length),
                    table_sheet(sheets->sheet)->name, sheets->cost / sheets->needed);
    }
    for (size_t k = 0; k < answer->small_count; k++)
        buy_small(arena, rows, &answer->smalls[k]);
    if (isfinite(answer->cost))
        add_row(arena, rows,
                (const char *[]){"", "",
                                 answer->unpriced.count ? "Total of what has a price" : "Total", "",
                                 money_in_words(arena, answer->cost)});
    return list;
}

const char *cut_buying_remark(const struct cut_answer *answer) {
    return isfinite(answer->cost)
               ? ""
               : "Nothing has a price: `prices:` in the file makes a bill of this.";
}

/* ---- what it weighs ---- */

static void weight_row(struct arena *arena, struct cut_rows *rows, const struct cut_answer *answer,
                       const char *name, const struct cut_weight *weight) {
    add_row(arena, rows,
            (const char *[]){name, mass_words(arena, answer, weight->dry),
                             mass_words(arena, answer, weight->after_rain),
                             mass_words(arena, answer, weight->with_trays)});
}

struct cut_rows cut_weights(struct arena *arena, const struct cut_answer *answer) {
    struct cut_rows list = rows_of(4);
    add_row(arena, &list, (const char *[]){"", "dry", "after rain", "full of trays"});
    weight_row(arena, &list, answer, "all of it", &answer->whole);
    for (size_t k = 0; k < answer->part_count; k++)
        weight_row(arena, &list, answer, answer->parts[k].name, &answer->parts[k]);
    return list;
}

const char *cut_weights_remark(const struct cut_answer *answer) {
    return answer->part_count ? "Screws are not weighed. Whether one person can carry a part: "
                                "batten check."
                              : "Screws are not weighed. Where it comes apart, `parts:` in the "
                                "file names what is carried as one.";
}
