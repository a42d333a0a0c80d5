#include "draw/figure.h"

#include <math.h>

#define WORTH_A_NAME 0.2   /* of the largest seen piece: smaller ones are not pointed at */
enum { NAMES_MOST = 160 }; /* sticks in one view; with more no name could be read */

static struct point middle_of(const struct convex *piece) {
    struct point middle = {0.0, 0.0};
    for (size_t k = 0; k < piece->count; k++) {
        middle.x += piece->corners[k].x / (double)piece->count;
        middle.y += piece->corners[k].y / (double)piece->count;
    }
    return middle;
}

struct seen_piece {
    const struct convex *shape;
    double area;
};

/* The two largest seen pieces of a stick. */
static void largest_pieces(const struct figure *figure, size_t member, struct seen_piece best[2]) {
    best[0] = best[1] = (struct seen_piece){NULL, 0.0};
    for (size_t f = 0; f < figure->look->face_count; f++) {
        const struct face_seen *face = &figure->look->faces[f];
        for (size_t k = 0; face->member == (int)member && k < face->pieces.count; k++) {
            struct seen_piece one = {&face->pieces.items[k], convex_area(&face->pieces.items[k])};
            if (one.area > best[0].area) {
                best[1] = best[0];
                best[0] = one;
            } else if (one.area > best[1].area)
                best[1] = one;
        }
    }
}

/* Points on the seen wood where a name may point at: the middle of a piece, and either side of it.
 */
static size_t anchors_of(const struct figure *figure, size_t member,
                         struct label_anchor out[ANCHORS]) {
    struct seen_piece best[2];
    size_t count = 0;
    largest_pieces(figure, member, best);
    struct point along = figure_direction(figure, figure->drawing->model->members[member].axes[0]);
    double length = hypot(along.x, along.y);
    if (best[1].area < WORTH_A_NAME * best[0].area)
        best[1].shape = NULL;
    for (int p = 0; p < 2 && best[p].shape && length > 0.0; p++) {
        struct point middle = middle_of(best[p].shape);
        /* the pieces have the look's own coordinates, y up */
        struct point far = {middle.x + along.x / length * 1e4, middle.y - along.y / length * 1e4};
        struct point back = {2.0 * middle.x - far.x, 2.0 * middle.y - far.y};
        double begin = 0.5, end = 0.5;
        convex_stretch(best[p].shape, back, far, false, &begin, &end);
        static const double shares[] = {0.5, 0.25, 0.75};
        for (int s = 0; s < 3 && count < ANCHORS; s++) {
            double share = begin + shares[s] * (end - begin);
            out[count++] = (struct label_anchor){{figure->left + back.x + share * (far.x - back.x),
                                                  figure->top - back.y - share * (far.y - back.y)},
                                                 (s ? 0.4 : 0.0) + (p ? 4.0 : 0.0)};
        }
    }
    return count;
}

static void name_sheets(struct figure *figure) {
    const struct frame *frame = figure->drawing->frame;
    for (size_t k = 0; k < frame->panels.count; k++) {
        struct label_anchor middle = {.cost = 0.0};
        if (figure_panel_middle(figure, k, &middle.at))
            labels_ask(&figure->labels, WORDS_QUIET,
                       arena_print(figure->arena, "(%s)", frame->panels.items[k].name), &middle, 1);
    }
}

void figure_names(struct figure *figure) {
    const struct frame *frame = figure->drawing->frame;
    size_t named = 0;
    for (size_t m = 0; m < frame->members.count; m++)
        named += figure_shows_stick(figure, m);
    if (named > NAMES_MOST)
        return;
    for (size_t m = 0; m < frame->members.count; m++) {
        struct label_anchor anchors[ANCHORS];
        if (figure_shows_stick(figure, m))
            labels_ask(&figure->labels, WORDS_PLAIN, frame->members.items[m].name, anchors,
                       anchors_of(figure, m, anchors));
    }
    name_sheets(figure);
}
