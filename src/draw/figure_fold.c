#include "draw/figure.h"

#include "base/vector.h"

#include <math.h>

#define REACH 0.13 /* of the frame's size: how far the joint that moves most is drawn to move */

static double (*moves_of(const struct figure *figure, const struct motion *motion))[3] {
    size_t joints = figure->drawing->frame->joints.count;
    double(*moves)[3] = arena_take(figure->arena, joints, sizeof *moves);
    double largest = 0.0;
    for (size_t k = 0; k < motion->move_count; k++)
        largest = fmax(largest, vector_length(motion->moves[k].by));
    for (size_t k = 0; k < motion->move_count && largest > 0.0; k++)
        for (int c = 0; c < 3; c++)
            moves[motion->moves[k].joint][c] =
                motion->moves[k].by[c] * REACH * figure->drawing->model->size / largest;
    return moves;
}

static struct point moved_joint(const struct figure *figure, double (*moves)[3], int joint) {
    double at[3];
    for (int c = 0; c < 3; c++)
        at[c] = figure->drawing->frame->joints.items[joint].at[c] + moves[joint][c];
    return figure_point(figure, at);
}

static bool moves_at_all(double (*moves)[3], int joint) {
    return vector_length(moves[joint]) > 0.0;
}

void figure_motion(struct figure *figure, const struct motion *motion) {
    const struct drawing *drawing = figure->drawing;
    double(*moves)[3] = moves_of(figure, motion);
    for (size_t s = 0; s < drawing->model->segment_count; s++) {
        const int *ends = drawing->model->segments[s].joints;
        if (moves_at_all(moves, ends[0]) || moves_at_all(moves, ends[1]))
            ink_line(figure->ink, PEN_GHOST, moved_joint(figure, moves, ends[0]),
                     moved_joint(figure, moves, ends[1]));
    }
    for (size_t j = 0; j < drawing->frame->joints.count; j++)
        if (moves_at_all(moves, (int)j))
            ink_arrow(figure->ink, PEN_FOLD, PEN_FOLD_HEAD,
                      figure_point(figure, drawing->frame->joints.items[j].at),
                      moved_joint(figure, moves, (int)j));
}
