/* draw/labels.h - words beside what they name: never on a line, a stick or one another.
 *
 * First everything that words must keep off is told, then the labels are asked for, then placed:
 * each at the nearest free place round one of its anchors, with a thin leader where that is not
 * right beside it. What finds no place is left out and told. Sheet coordinates, mm.
 */
#ifndef DRAW_LABELS_H
#define DRAW_LABELS_H

#include "draw/ink.h"

struct box {
    double left, top, right, bottom;
};

enum { ANCHORS = 6 };
struct label_anchor { /* what a label may point at */
    struct point at;
    double cost; /* mm: how much farther than the first it counts as */
};
struct label {
    const char *words;
    enum words_style style;
    struct label_anchor anchors[ANCHORS];
    size_t anchor_count;
    bool placed;
    struct box box; /* of the words */
};

struct label_shape {
    struct convex shape;
    struct box box; /* round it */
};

struct labels {
    struct arena *arena;
    struct box room; /* where words may stand */
    struct {
        struct point (*items)[2];
        size_t count, capacity;
    } lines;
    struct {
        struct label_shape *items;
        size_t count, capacity;
    } shapes;
    struct {
        struct box *items;
        size_t count, capacity;
    } boxes;
    struct {
        struct label *items;
        size_t count, capacity;
    } asked;
};

void labels_keep_off_line(struct labels *labels, struct point from, struct point to);
void labels_keep_off_shape(struct labels *labels, const struct convex *shape);
void labels_keep_off_box(struct labels *labels, struct box box);

void labels_ask(struct labels *labels, enum words_style style, const char *words,
                const struct label_anchor *anchors, size_t count);

/* Place and draw all that was asked for; the words that found no place are added to `left_out`. */
struct left_out {
    const char **items;
    size_t count, capacity;
};
void labels_place(struct labels *labels, struct ink *ink, struct left_out *left_out);

bool boxes_overlap(struct box a, struct box b);

#endif
