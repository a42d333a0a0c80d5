/* buy/work.h - what its steps share. For src/buy only. */
#ifndef BUY_WORK_H
#define BUY_WORK_H

#include "buy/buy.h"
#include "model/model.h"
#include "pieces/rectangles.h"
#include "pieces/sticks.h"

#include <stdint.h>

struct buying {
    struct arena *arena;
    const struct frame *frame;
    const struct model *model;
    const struct cut_options *options;
    struct cut_answer *answer;
};

/* m to whole nanometres and back. */
int64_t buy_nanometres(double metres);
double buy_metres(int64_t nanometres);

void buy_note(struct buying *buying, const char *words);

/* A line of the bill; a NAN price goes among what has no price. */
void buy_line(struct buying *buying, struct cut_cost_line line);

/* Boards for all sticks, and the hint on sticks of the same wood. (buy/sticks.c) */
void buy_sticks(struct buying *buying);
/* Sheets for panels and decks. (buy/sheets.c) */
void buy_sheets(struct buying *buying);
/* Screws and other small parts, in boxes where those are priced. (buy/smalls.c) */
void buy_smalls(struct buying *buying);

/* ---- prices ---- */

/* The price of a stick as a board of this length, NAN where the file has none. */
double price_of_board(const struct frame *frame, int stick, double length);
/* The lengths of its prices, ascending, each once; returns how many. */
size_t priced_lengths(struct arena *arena, const struct frame *frame, int stick, double **lengths);

/* The price of a sheet of this size, the shorter side first. */
double price_of_sheet(const struct frame *frame, int sheet, double width, double length);
struct sheet_size {
    double width, length;
};
size_t priced_sizes(struct arena *arena, const struct frame *frame, int sheet,
                    struct sheet_size **sizes);

#endif
