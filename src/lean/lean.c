#include "lean/lean.h"

#include <math.h>

double *lean_limits(struct arena *arena, const struct model *model) {
    const struct frame *frame = model->frame;
    const struct limit *limit = &frame->limits.lean;
    double least_height = table_constant("lean-height-least").value;
    double *limits = ARENA_ARRAY(arena, double, frame->joints.count);
    double ground = INFINITY;
    for (size_t k = 0; k < frame->supports.count; k++)
        ground = fmin(ground, frame->joints.items[frame->supports.items[k].joint].at[2]);
    for (size_t j = 0; j < frame->joints.count; j++) {
        double height = fmax(frame->joints.items[j].at[2] - ground, least_height);
        limits[j] = limit->divisor > 0.0 ? height / limit->divisor : limit->length;
    }
    return limits;
}

struct lean lean_worst(const struct model *model, const double *limits, const double *slots) {
    struct lean worst = {.joint = -1};
    for (size_t j = 0; j < model->frame->joints.count; j++) {
        const double *move = &slots[3 * model->move_slot[j]];
        double level = hypot(move[0], move[1]);
        double ratio = level / limits[j];
        /* of joints that lean alike the first is told, whatever the last digit */
        if (worst.joint >= 0 && ratio <= worst.ratio * (1.0 + 1e-9))
            continue;
        worst =
            (struct lean){.joint = (int)j, .movement = level, .limit = limits[j], .ratio = ratio};
        if (isnan(ratio))
            break;
    }
    return worst;
}
