/* brace/work.h - what the steps of `brace` share. */
#ifndef BRACE_WORK_H
#define BRACE_WORK_H

#include "brace/search.h"
#include "bracing/candidates.h"
#include "bracing/sheets.h"
#include "fold/ways.h"
#include "result/brace_answer.h"

struct work {
    struct arena *arena;
    const struct frame *frame;
    const struct model *model;
    const struct loads *loads;
    struct bracing_sheet *sheets;
    struct fold_ways ways; /* without clear sheets, readable */
    double *limits;        /* lean limit per joint */
    struct brace_answer *answer;
};

/* How a frame leans under its pushes at one stiffness and with some bars: the worst joint of each
 * push, ratio NAN where it folds. lean[i] belongs to axes[i]. */
struct pushed {
    const struct system *system;
    const struct response *response;
    size_t count;
    int axes[2];
    struct lean lean[2];
};
struct pushed push_frame(const struct work *work, const struct model *model,
                         enum stiffness stiffness, const struct bar *bars, size_t bar_count);

/* The bars of the sheets that count. */
size_t work_bars(const struct work *work, enum stiffness stiffness, bool clear_too,
                 struct bar **bars);

/* Alternatives to diagonals, into the answer. */
void try_alternatives(struct work *work, const struct cells *cells);

/* A brace of the frame's thinnest stick between two joints as a bar, its fastenings (`default`) in
 * series with its own length. Returns the stick. */
int brace_stick(const struct work *work);
struct bar brace_bar(const struct work *work, int stick, int from, int to);

/* What the screws at its worse end hold along it under a push, N; NAN where nothing is published or
 * the file has no `default`. */
double brace_screws_hold(const struct work *work, int stick, int from, int to);

#endif
