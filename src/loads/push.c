#include "loads/push.h"

#include <math.h>

double push_force(const struct loads *loads) {
    const struct optional *said = &loads->model->frame->site.push;
    double weight = 0.0;
    for (int set = SET_SELF; set <= SET_TRAY_SHORT; set++)
        weight += loads_weight(loads, set);
    double least = said->given ? said->value : table_constant("push-least").value;
    return fmax(least, table_constant("push-share").value * weight);
}

size_t push_joints(struct arena *arena, const struct model *model, int **joints) {
    const struct frame *frame = model->frame;
    bool *upright = ARENA_ARRAY(arena, bool, frame->joints.count);
    double highest = -INFINITY;
    for (size_t m = 0; m < model->member_count; m++) {
        if (!member_steep(&model->members[m]))
            continue;
        for (size_t k = model->along.first[m]; k < model->along.first[m + 1]; k++) {
            int joint = model->along.joints[k].joint;
            upright[joint] = true;
            highest = fmax(highest, frame->joints.items[joint].at[2]);
        }
    }
    size_t count = 0;
    *joints = ARENA_ARRAY(arena, int, frame->joints.count);
    double level = table_constant("push-level").value;
    for (size_t j = 0; j < frame->joints.count; j++)
        if (upright[j] && frame->joints.items[j].at[2] >= highest - level)
            (*joints)[count++] = (int)j;
    return count;
}
