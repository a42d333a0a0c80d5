#include "fix/ballast_places.h"

#include <math.h>

/* Level sticks this near to the lowest one lie as low. */
static const double SAME_HEIGHT = 0.025; /* m */
static const double LEVEL = 1e-6;        /* rise by length, as the format has it */

static bool carries_ballast(const struct work *work, int member) {
    return work->frame->members.items[member].acts_as == ACTS_AS_MEMBER &&
           fabs(work->model->members[member].axes[0][2]) < LEVEL;
}

static double height_of(const struct work *work, int member) {
    return work->model->members[member].from[2];
}

static void add_stick(struct work *work, struct places *places, int member) {
    ARRAY_PUSH(work->arena, &places->list, member);
    places->length += work->model->members[member].length;
}

/* Of a shelf that lies lowest its rails, which have no more than that to carry it; else every
 * level stick down there. */
static bool add_shelf_rails(struct work *work, struct places *places, double lowest) {
    for (size_t s = 0; s < work->frame->shelves.count; s++) {
        const struct shelf *shelf = &work->frame->shelves.items[s];
        bool low = shelf->rail_count > 0;
        for (size_t k = 0; k < shelf->rail_count; k++)
            low &= carries_ballast(work, shelf->rails[k]) &&
                   height_of(work, shelf->rails[k]) <= lowest + SAME_HEIGHT;
        for (size_t k = 0; low && k < shelf->rail_count; k++)
            add_stick(work, places, shelf->rails[k]);
    }
    return places->list.count > 0;
}

struct places low_sticks(struct work *work) {
    struct places places = {0};
    double lowest = INFINITY, bottom = INFINITY, top = -INFINITY;
    for (size_t j = 0; j < work->frame->joints.count; j++) {
        bottom = fmin(bottom, work->frame->joints.items[j].at[2]);
        top = fmax(top, work->frame->joints.items[j].at[2]);
    }
    for (size_t m = 0; m < work->model->member_count; m++)
        if (carries_ballast(work, (int)m))
            lowest = fmin(lowest, height_of(work, (int)m));
    if (!(lowest - bottom <= (top - bottom) / 2.0) || add_shelf_rails(work, &places, lowest))
        return places;
    for (size_t m = 0; m < work->model->member_count; m++)
        if (carries_ballast(work, (int)m) && height_of(work, (int)m) <= lowest + SAME_HEIGHT)
            add_stick(work, &places, (int)m);
    return places;
}

struct places all_feet(struct work *work) {
    struct places places = {.feet = true};
    for (size_t k = 0; k < work->frame->supports.count; k++)
        if (work->frame->supports.items[k].foot)
            ARRAY_PUSH(work->arena, &places.list, work->frame->supports.items[k].joint);
    return places;
}
