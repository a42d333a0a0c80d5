#include "draw/figure.h"

#include "base/vector.h"
#include "units/decimal.h"

#include <math.h>

#define READS_WELL 0.1 /* of the frame's size: how large the largest movement is drawn at most */

double bent_exaggeration(const struct drawing *drawing) {
    static const double nice[] = {1, 2, 5};
    double largest = drawing->result->bent.largest, room = READS_WELL * drawing->model->size;
    double best = 1e-3;
    if (!(largest > 0.0))
        return 1.0;
    for (double ten = 1e-3; ten < 1e7; ten *= 10.0)
        for (int k = 0; k < 3; k++)
            if (nice[k] * ten * largest <= room)
                best = nice[k] * ten;
    return best;
}

const char *exaggeration_in_words(struct arena *arena, double times) {
    if (times > 0.99 && times < 1.01)
        return "drawn as large as it is";
    bool larger = times > 1.0;
    return arena_print(arena, "drawn %s times too %s",
                       decimal_fixed(arena, larger ? times : 1.0 / times, 0),
                       larger ? "large" : "small");
}

static struct point moved(const struct figure *figure, size_t member, size_t station,
                          double times) {
    const struct model_member *stick = &figure->drawing->model->members[member];
    const struct bent_stick *bent = &figure->drawing->result->bent.members[member];
    double at[3];
    for (int c = 0; c < 3; c++)
        at[c] =
            stick->from[c] + bent->at[station] * stick->axes[0][c] + times * bent->by[station][c];
    return figure_point(figure, at);
}

void figure_bent(struct figure *figure) {
    const struct bent *bent = &figure->drawing->result->bent;
    double times = bent_exaggeration(figure->drawing);
    if (!bent->members)
        return;
    for (size_t m = 0; m < figure->drawing->model->member_count; m++)
        for (size_t k = 0; k + 1 < bent->members[m].count; k++) {
            struct point from = moved(figure, m, k, times), to = moved(figure, m, k + 1, times);
            if (hypot(to.x - from.x, to.y - from.y) < 0.01)
                continue;
            ink_line(figure->ink, PEN_BENT, from, to);
            figure_take(figure, from);
            figure_take(figure, to);
            labels_keep_off_line(&figure->labels, from, to);
        }
}
