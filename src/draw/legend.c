#include "draw/legend.h"

#include "draw/hatch.h"

#include <math.h>

#define SWATCH 8.0 /* mm */
#define HIGH 3.6
#define ROW 5.6
#define GAP 1.5 /* mm between a swatch and its words */

struct legend {
    const struct drawing *drawing;
    struct ink *ink;
    struct point start;
    double width, x, y; /* where the next entry goes */
    double row;         /* how high this row is */
};

/* Room for an entry in this row or the next; its swatch's upper left corner. */
static struct point entry(struct legend *legend, const char *words) {
    double room = legend->start.x + legend->width - legend->x;
    double wide = SWATCH + GAP + ink_words_width(WORDS_PLAIN, words);
    if (legend->x > legend->start.x && wide > room) {
        legend->x = legend->start.x;
        legend->y += legend->row;
        legend->row = ROW;
    }
    struct point at = {legend->x, legend->y};
    double down = ink_wrapped(legend->ink, WORDS_PLAIN,
                              (struct point){at.x + SWATCH + GAP, at.y + HIGH - 0.9},
                              legend->width - SWATCH - GAP, words);
    legend->row = fmax(legend->row, down + 2.0);
    legend->x += wide + 4.0;
    return at;
}

static void swatch(struct legend *legend, enum work work) {
    struct point at = entry(legend, WORK_WORDS[work]);
    struct point corners[4] = {
        at, {at.x + SWATCH, at.y}, {at.x + SWATCH, at.y + HIGH}, {at.x, at.y + HIGH}};
    struct convex shape = {corners, 4};
    hatch_shape(legend->ink, work, &shape, -0.7853981633974483);
    ink_shape(legend->ink, work == WORK_FAILS ? PEN_OUTLINE_HEAVY : PEN_OUTLINE, corners, 4);
}

static void sample(struct legend *legend, enum pen pen, const char *words) {
    struct point at = entry(legend, words);
    ink_line(legend->ink, pen, (struct point){at.x, at.y + HIGH / 2.0},
             (struct point){at.x + SWATCH, at.y + HIGH / 2.0});
}

static void arrow_sample(struct legend *legend, const char *words) {
    struct point at = entry(legend, words);
    ink_arrow(legend->ink, PEN_LOAD, PEN_LOAD_HEAD, (struct point){at.x, at.y + HIGH / 2.0},
              (struct point){at.x + SWATCH, at.y + HIGH / 2.0});
}

static void works(struct legend *legend) {
    const struct drawing *drawing = legend->drawing;
    for (int work = WORK_PLAIN; work < WORK_COUNT; work++) {
        bool used = false;
        for (size_t m = 0; m < drawing->frame->members.count; m++)
            used |= drawing->work[m] == (enum work)work;
        if (used && drawing->result->checks.count)
            swatch(legend, (enum work)work);
    }
}

double legend_draw(const struct drawing *drawing, struct point at, double width, struct ink *ink) {
    struct legend legend = {drawing, ink, at, width, at.x, at.y, ROW};
    const char *under = drawing->result->bent.combination;
    if (drawing->shows[SHOW_WORK])
        works(&legend);
    if (drawing->shows[SHOW_LOADS] && figure_has_loads(drawing, NULL))
        arrow_sample(&legend,
                     arena_print(drawing->arena,
                                 "loads%s%s: all on one stick together, without its own weight",
                                 under ? " of " : "", under ? under : ""));
    if (drawing->shows[SHOW_BENT] && under)
        sample(&legend, PEN_BENT,
               arena_print(drawing->arena, "bent under %s, %s", under,
                           exaggeration_in_words(drawing->arena, bent_exaggeration(drawing))));
    if (drawing->shows[SHOW_BRACES] && drawing->braces && drawing->braces->brace_count)
        sample(&legend, PEN_BRACE, "diagonal to add");
    return legend.x > at.x ? legend.y + legend.row - at.y : 0.0;
}
