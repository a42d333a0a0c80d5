#include "draw/figure.h"

#include "base/vector.h"

#include <math.h>
#include <string.h>

#define SHOWN_LEAST 0.9        /* of its length: a brace belongs in the view of its own face */
#define SHOWN_FROM_CORNER 0.35 /* and in the one from the corner, but not end on */

/* The width of the thinnest stick of the frame, which braces are cut from. */
static double brace_width(const struct drawing *drawing) {
    const struct frame *frame = drawing->frame;
    double width = 0.038;
    for (size_t k = 0; k < frame->sticks.count; k++)
        if (drawing->braces->brace_stick && frame->sticks.items[k].has_size &&
            strcmp(frame->sticks.items[k].name, drawing->braces->brace_stick) == 0)
            width = frame->sticks.items[k].width;
    return width;
}

/* Two dashed lines, as wide apart as the stick, from joint to joint. */
static void brace_drawn(struct figure *figure, const struct brace_choice *brace) {
    const struct joint *joints = figure->drawing->frame->joints.items;
    struct point from = figure_point(figure, joints[brace->from].at);
    struct point to = figure_point(figure, joints[brace->to].at);
    double x = to.x - from.x, y = to.y - from.y, length = hypot(x, y), true_length[3];
    double whole = vector_between(joints[brace->from].at, joints[brace->to].at, true_length);
    double least = figure->kind == VIEW_CORNER ? SHOWN_FROM_CORNER : SHOWN_LEAST;
    if (!(length > least * whole * figure->scale))
        return;
    double half = brace_width(figure->drawing) * figure->scale / 2.0;
    struct point across = {-y / length * half, x / length * half};
    for (int side = -1; side <= 1; side += 2) {
        struct point a = {from.x + side * across.x, from.y + side * across.y};
        struct point b = {to.x + side * across.x, to.y + side * across.y};
        ink_line(figure->ink, PEN_BRACE, a, b);
        labels_keep_off_line(&figure->labels, a, b);
    }
    struct label_anchor anchors[3];
    static const double shares[] = {0.5, 0.35, 0.65};
    for (int k = 0; k < 3; k++)
        anchors[k] = (struct label_anchor){{from.x + shares[k] * x, from.y + shares[k] * y}, 0.0};
    labels_ask(&figure->labels, WORDS_BRACE,
               arena_print(figure->arena, "add: %s to %s", joints[brace->from].name,
                           joints[brace->to].name),
               anchors, 3);
}

void figure_braces(struct figure *figure) {
    const struct brace_answer *braces = figure->drawing->braces;
    for (size_t k = 0; braces && k < braces->brace_count; k++)
        brace_drawn(figure, &braces->braces[k]);
}
