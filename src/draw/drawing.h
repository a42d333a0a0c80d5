/* draw/drawing.h - what a picture is made from, and what it is to show.
 */
#ifndef DRAW_DRAWING_H
#define DRAW_DRAWING_H

#include "draw/view.h"
#include "draw/wood.h"
#include "loads/loads.h"
#include "result/brace_answer.h"
#include "result/result.h"

/* ORDER SHOW */
enum show {
    SHOW_NAMES,
    SHOW_DIMENSIONS,
    SHOW_LOADS,
    SHOW_BENT,
    SHOW_FOLDS,
    SHOW_BRACES,
    SHOW_WORK,
    SHOW_COUNT
};
extern const char *const SHOW_NAMES_TYPED[SHOW_COUNT]; /* "names" "dimensions" ... */

/* How hard a stick works, by the worst check that names it. ORDER WORK: as the pens that fill it.
 */
enum work { WORK_PLAIN, WORK_EASY, WORK_SOME, WORK_CLOSE, WORK_NO_RULE, WORK_FAILS, WORK_COUNT };
extern const char *const WORK_WORDS[WORK_COUNT];

struct drawing {
    struct arena *arena;
    const struct frame *frame;
    const struct model *model;
    const struct loads *loads;
    const struct result *result;       /* judged, with the bent shape where that is shown */
    const struct brace_answer *braces; /* NULL: neither folds nor braces are shown */
    const struct wood *woods;          /* per member */
    const enum work *work;             /* per member */
    bool shows[SHOW_COUNT];
};

/* The facts gathered: pieces of wood, and how hard each works. What `shows` is left to the caller.
 */
struct drawing drawing_of(struct arena *arena, const struct model *model, const struct loads *loads,
                          const struct result *result, const struct brace_answer *braces);

/* The ways to fold that are known: as fastened where the frame folds, else with every fastening a
 * hinge. */
const struct motion *drawing_motions(const struct drawing *drawing, size_t *count);

#endif
