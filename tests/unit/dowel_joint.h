/* dowel_joint.h - one fastener through a side member into a main member, for the tests. lb and in.
 */
#ifndef TESTS_UNIT_DOWEL_JOINT_H
#define TESTS_UNIT_DOWEL_JOINT_H

#include "check/dowel.h"
#include "in_arena.h"
#include "near.h"
#include "redo.h"

#include <math.h>

static const double INCH = 0.0254, POUND = 4.4482216152605, DEGREE = 3.14159265358979323846 / 180;

struct joint {
    struct dowel dowel;
    struct dowel_layer side, main;
    struct dowel_service service;
};

static inline struct dowel dowel(enum dowel_kind kind, const char *size, double length) {
    struct dowel found;
    cr_assert(dowel_find(kind, NAIL_COMMON, size, &found), "%s is not known", size);
    if (length > 0.0)
        dowel_set_length(&found, length * INCH);
    return found;
}

/* Into a main member of any thickness, dry, ten years. */
static inline struct joint joint(struct dowel dowel, double side, double gravity) {
    struct dowel_layer layer = {.thickness = INFINITY, .gravity = {gravity, "", MARK_TRADE}};
    struct joint joint = {dowel, layer, layer, {.duration = DURATION_TEN_YEARS}};
    joint.side.thickness = side * INCH;
    return joint;
}

/* Its values; the whole working is redone. */
static inline struct dowel_values values(const struct joint *joint) {
    struct working working = {.arena = arena};
    struct dowel_values found, again;
    dowel_values(&joint->dowel, &joint->side, &joint->main, &joint->service, &working, &found);
    cr_assert(redo_all(&working) > 5);
    dowel_values(&joint->dowel, &joint->side, &joint->main, &joint->service, NULL, &again);
    cr_assert(isnan(found.lateral) ? isnan(again.lateral) : found.lateral == again.lateral);
    return found;
}

static inline double lb(double newtons) {
    return newtons / POUND;
}

static inline double lb_in(double line) {
    return line / (POUND / INCH);
}

#endif
