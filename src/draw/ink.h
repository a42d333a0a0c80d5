/* draw/ink.h - lines, areas and words of one sheet, pen by pen.
 *
 * Coordinates mm from the left and the top of the sheet. Everything of one pen is one path, written
 * in the order of the pens, words last. No ids, no style sheet, no other file: a drawing can stand
 * in a page beside others.
 */
#ifndef DRAW_INK_H
#define DRAW_INK_H

#include "base/text.h"
#include "draw/convex.h"

#include <stdbool.h>

/* ORDER PEN: from the bottom to the top */
enum pen {
    PEN_WOOD_PLAIN, /* ORDER WORK: what fills a stick */
    PEN_WOOD_EASY,
    PEN_WOOD_SOME,
    PEN_WOOD_CLOSE,
    PEN_WOOD_NO_RULE,
    PEN_WOOD_FAILS,
    PEN_HATCH,
    PEN_HATCH_DOTS,
    PEN_SHEET,
    PEN_EDGE,
    PEN_OUTLINE,
    PEN_OUTLINE_HEAVY,
    PEN_GROUND,
    PEN_MEASURE,
    PEN_GHOST,
    PEN_BRACE,
    PEN_BENT,
    PEN_LOAD,
    PEN_LOAD_HEAD,
    PEN_FOLD,
    PEN_FOLD_HEAD,
    PEN_LEADER,
    PEN_CURVE_FULL, /* of a plot */
    PEN_CURVE_DASHED,
    PEN_CURVE_DOTTED,
    PEN_CURVE_MARK,
    PEN_CURVE_RING,
    PEN_COUNT
};

enum words_style { WORDS_PLAIN, WORDS_QUIET, WORDS_LOAD, WORDS_BRACE, WORDS_TITLE, WORDS_HEADING };
enum anchor { ANCHOR_START, ANCHOR_MIDDLE, ANCHOR_END };

struct ink {
    struct arena *arena;
    struct text paths[PEN_COUNT];
    struct text words;
};

void ink_start(struct ink *ink, struct arena *arena);
void ink_line(struct ink *ink, enum pen pen, struct point from, struct point to);
void ink_shape(struct ink *ink, enum pen pen, const struct point *corners, size_t count);

/* A line through points, not closed. */
void ink_trace(struct ink *ink, enum pen pen, const struct point *points, size_t count);

/* A line with a filled head at `to`. */
void ink_arrow(struct ink *ink, enum pen line, enum pen head, struct point from, struct point to);

/* One line of words: `at` is on its base line. Text of other people is made safe. */
void ink_words(struct ink *ink, enum words_style style, enum anchor anchor, struct point at,
               const char *words);
/* The width that words take at most, with any common sans-serif font; and their height, mm. */
double ink_words_width(enum words_style style, const char *words);
double ink_words_height(enum words_style style);

/* Words in lines of at most `width` mm, the first base line at `at`; a word that is longer is
 * broken. Returns how far down the next line would be. (draw/wrap.c) */
double ink_wrapped(struct ink *ink, enum words_style style, struct point at, double width,
                   const char *words);

/* All of it, for the inside of an <svg>. */
void ink_write(const struct ink *ink, struct text *out);

/* A number of mm, to 0.01. */
const char *ink_number(struct arena *arena, double mm);

#endif
