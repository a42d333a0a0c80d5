#include "draw/figure.h"
#include "draw/hatch.h"

#include <math.h>

static struct point to_sheet(const struct figure *figure, struct point at) {
    return (struct point){figure->left + at.x, figure->top - at.y};
}

static enum work work_shown(const struct figure *figure, int member) {
    const struct drawing *drawing = figure->drawing;
    return drawing->shows[SHOW_WORK] ? drawing->work[member] : WORK_PLAIN;
}

/* The hatch stands at 45 degrees to the stick, so that it is never taken for its edges. */
static double hatch_angle(const struct figure *figure, int member) {
    struct point along = figure_direction(figure, figure->drawing->model->members[member].axes[0]);
    return atan2(along.y, along.x) - 0.7853981633974483;
}

static void draw_face(struct figure *figure, const struct face_seen *face) {
    enum work work = work_shown(figure, face->member);
    double angle = hatch_angle(figure, face->member);
    for (size_t k = 0; k < face->pieces.count; k++) {
        const struct convex *piece = &face->pieces.items[k];
        struct convex moved = {ARENA_ARRAY(figure->arena, struct point, piece->count),
                               piece->count};
        for (size_t c = 0; c < piece->count; c++)
            moved.corners[c] = to_sheet(figure, piece->corners[c]);
        hatch_shape(figure->ink, work, &moved, angle);
        labels_keep_off_shape(&figure->labels, &moved);
    }
}

static void draw_edge(struct figure *figure, const struct line_seen *edge) {
    enum pen pen = !edge->outer                                     ? PEN_EDGE
                   : work_shown(figure, edge->member) == WORK_FAILS ? PEN_OUTLINE_HEAVY
                                                                    : PEN_OUTLINE;
    struct stretches seen = look_line(figure->look, edge);
    double x = edge->ends[1].x - edge->ends[0].x, y = edge->ends[1].y - edge->ends[0].y;
    for (size_t k = 0; k < seen.count; k++) {
        struct stretch part = seen.items[k];
        struct point ends[2] = {
            {edge->ends[0].x + part.begin * x, edge->ends[0].y + part.begin * y},
            {edge->ends[0].x + part.end * x, edge->ends[0].y + part.end * y}};
        if (hypot(ends[1].x - ends[0].x, ends[1].y - ends[0].y) < 0.02)
            continue;
        ink_line(figure->ink, pen, to_sheet(figure, ends[0]), to_sheet(figure, ends[1]));
    }
}

void figure_woods(struct figure *figure) {
    for (size_t f = 0; f < figure->look->face_count; f++)
        draw_face(figure, &figure->look->faces[f]);
    for (size_t e = 0; e < figure->look->edge_count; e++)
        draw_edge(figure, &figure->look->edges[e]);
}
