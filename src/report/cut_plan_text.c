#include "report/brace_words.h"
#include "report/cut_words.h"
#include "report/layout.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

enum { NAMES_SHOWN = 6 };

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

const char *cut_board_sentence(struct arena *arena, const struct cut_answer *answer,
                               const struct cut_sticks *sticks, size_t from, size_t *count) {
    const struct cut_board *board = &sticks->boards[from];
    *count = alike(arena, answer, sticks, from);
    const char *times = *count > 1 ? arena_print(arena, "%zu boards of ", *count) : "";
    const char *rest =
        board->off_cut > 0.0
            ? arena_print(arena, "; %s left", cut_length_words(arena, answer, board->off_cut))
            : "; nothing left";
    return arena_print(arena, "%s%s: %s%s", times, cut_length_words(arena, answer, board->stock),
                       board_in_words(arena, answer, sticks, board), rest);
}

const char *cut_too_long_sentence(struct arena *arena, const struct cut_answer *answer,
                                  const struct cut_sticks *sticks, size_t number) {
    const struct cut_piece *piece = &sticks->pieces[sticks->too_long[number]];
    return arena_print(arena,
                       "%s is %s long and comes out of none of these boards: buy it longer "
                       "(--stock), or splice it",
                       piece->name, cut_length_words(arena, answer, piece->needs));
}

const char *cut_sticks_heading(struct arena *arena, const struct cut_sticks *sticks) {
    return arena_print(arena, "%s: %s, %s", sticks->name,
                       counted(arena, sticks->board_count, "board"), boards_proof(arena, sticks));
}

static void boards_of(struct text *text, const struct cut_answer *answer,
                      const struct cut_sticks *sticks) {
    struct arena *arena = text->arena;
    text_print(text, "  %s\n", cut_sticks_heading(arena, sticks));
    for (size_t from = 0, count; from < sticks->board_count; from += count)
        paragraph(text, "    ", 8, cut_board_sentence(arena, answer, sticks, from, &count));
    for (size_t k = 0; k < sticks->too_long_count; k++)
        paragraph(text, "    ", 8, cut_too_long_sentence(arena, answer, sticks, k));
}

static const char *why_too_large(const struct cut_sheets *sheets,
                                 const struct cut_sheet_piece *piece) {
    bool turned = piece->size[1] <= sheets->width && piece->size[0] <= sheets->length;
    return sheets->fluted && turned
               ? " is wider across its ribs than a sheet: let them run the other way (runs: "
                 "across), "
                 "or give it less overhang"
               : " is larger than a sheet: make it of two, over a stick between";
}

const char *cut_sheet_sentence(struct arena *arena, const struct cut_answer *answer,
                               const struct cut_sheets *sheets,
                               const struct cut_sheet_piece *piece) {
    const char *where =
        piece->sheet
            ? arena_print(arena,
                          "sheet %d, %s from its left and %s from its bottom edge: ", piece->sheet,
                          cut_length_words(arena, answer, piece->at[0]),
                          cut_length_words(arena, answer, piece->at[1]))
            : "";
    const char *shape = piece->holds_corners ? " (then cut to its shape)" : "";
    return arena_print(arena, "%s%s %s%s%s", where, piece->name,
                       cut_size_words(arena, answer, piece->size[0], piece->size[1]), shape,
                       piece->sheet ? "" : why_too_large(sheets, piece));
}

static void sheet_pieces(struct text *text, const struct cut_answer *answer,
                         const struct cut_sheets *sheets, int number) {
    for (size_t k = 0; k < sheets->piece_count; k++)
        if (sheets->pieces[k].sheet == number)
            paragraph(text, "    ", 8,
                      cut_sheet_sentence(text->arena, answer, sheets, &sheets->pieces[k]));
}

const char *cut_sheets_heading(struct arena *arena, const struct cut_sheets *sheets) {
    return arena_print(arena, "%s: %s, %s", table_sheet(sheets->sheet)->name,
                       counted(arena, (size_t)sheets->needed, "sheet"),
                       sheets_proof(arena, sheets));
}

const char *cut_sheets_remark(const struct cut_sheets *sheets) {
    return sheets->fluted ? "Its ribs run along the longer side; no piece is turned." : "";
}

static void sheets_of(struct text *text, const struct cut_answer *answer,
                      const struct cut_sheets *sheets) {
    text_print(text, "  %s\n", cut_sheets_heading(text->arena, sheets));
    if (sheets->fluted)
        paragraph(text, "    ", 4, cut_sheets_remark(sheets));
    for (int number = 1; number <= sheets->needed; number++)
        sheet_pieces(text, answer, sheets, number);
    sheet_pieces(text, answer, sheets, 0);
}

const char *cut_measured_words(struct arena *arena, const struct cut_answer *answer) {
    return arena_print(arena, "lengths to the nearest %s; a saw cut takes %s",
                       answer->frame->units == UNITS_SI ? "mm" : "1/16 in",
                       kerf_in_words(arena, answer));
}

void cut_plan_section(struct text *text, const struct cut_answer *answer) {
    text_print(text, "\nHow to cut it (%s)\n", cut_measured_words(text->arena, answer));
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
static const char *batch(struct arena *arena, const struct cut_answer *answer,
                         const struct cut_piece *const *pieces, size_t count) {
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
    return arena_print(arena, "%zu x %s: %s%s%s%s", count,
                       cut_length_words(arena, answer, pieces[0]->length), text_string(&names),
                       ends[0] ? "; " : "", ends,
                       pieces[0]->measure ? "; an end runs along what it lies on: mark it on "
                                            "the frame"
                                          : "");
}

static bool is_same_batch(struct arena *arena, const struct cut_answer *answer,
                          const struct cut_piece *a, const struct cut_piece *b) {
    return strcmp(cut_length_words(arena, answer, a->length),
                  cut_length_words(arena, answer, b->length)) == 0 &&
           a->measure == b->measure &&
           strcmp(ends_in_words(arena, answer, a), ends_in_words(arena, answer, b)) == 0;
}

const char **cut_batches(struct arena *arena, const struct cut_answer *answer,
                         const struct cut_sticks *sticks, size_t *batch_count) {
    const char **batches = ARENA_ARRAY(arena, const char *, sticks->piece_count);
    const struct cut_piece **pieces =
        ARENA_ARRAY(arena, const struct cut_piece *, sticks->piece_count);
    *batch_count = 0;
    for (size_t k = 0; k < sticks->piece_count; k++)
        pieces[k] = &sticks->pieces[k];
    if (sticks->piece_count)
        qsort(pieces, sticks->piece_count, sizeof(const struct cut_piece *), longest_first);
    for (size_t from = 0, count; from < sticks->piece_count; from += count) {
        for (count = 1; from + count < sticks->piece_count &&
                        is_same_batch(arena, answer, pieces[from], pieces[from + count]);)
            count++;
        batches[(*batch_count)++] = batch(arena, answer, &pieces[from], count);
    }
    return batches;
}

void cut_order_section(struct text *text, const struct cut_answer *answer) {
    text_add(text, "\nIn which order? " CUT_ORDER "\n");
    for (size_t k = 0; k < answer->stick_count; k++) {
        size_t count;
        const char **batches = cut_batches(text->arena, answer, &answer->sticks[k], &count);
        text_print(text, "  %s\n", answer->sticks[k].name);
        for (size_t b = 0; b < count; b++)
            paragraph(text, "    ", 8, batches[b]);
    }
}
