#include "check/carry.h"
#include "judge/steps.h"
#include "pieces/weigh.h"

#include <math.h>

/* The box round a part, m. */
struct extents {
    double low[3], high[3];
};

static void include_point(struct extents *extents, const double at[3], const double half[3]) {
    for (int c = 0; c < 3; c++) {
        extents->low[c] = fmin(extents->low[c], at[c] - half[c]);
        extents->high[c] = fmax(extents->high[c], at[c] + half[c]);
    }
}

static void include_member(struct extents *extents, const struct model_member *stick) {
    double half[3];
    for (int c = 0; c < 3; c++) {
        double direction[3] = {c == 0, c == 1, c == 2};
        half[c] = member_extent(stick, direction) / 2.0;
    }
    include_point(extents, stick->from, half);
    include_point(extents, stick->to, half);
}

static struct extents extents_of(const struct model *model, const struct part *part) {
    static const double none[3] = {0.0, 0.0, 0.0};
    const struct frame *frame = model->frame;
    struct extents extents = {{INFINITY, INFINITY, INFINITY}, {-INFINITY, -INFINITY, -INFINITY}};
    for (size_t k = 0; k < part->member_count; k++)
        include_member(&extents, &model->members[part->members[k]]);
    for (size_t k = 0; k < part->panel_count; k++)
        for (int c = 0; c < 4; c++) {
            int corner = frame->panels.items[part->panels[k]].corners[c];
            include_point(&extents, frame->joints.items[corner].at, none);
        }
    return extents;
}

/* A flat part is turned on edge, its longer side level; any other stands as it does in the frame.
 */
static struct carried carried_of(const struct model *model, const struct part *part) {
    struct extents extents = extents_of(model, part);
    double wide = extents.high[0] - extents.low[0], deep = extents.high[1] - extents.low[1];
    double high = extents.high[2] - extents.low[2], narrow = fmin(wide, deep);
    bool flat = high < narrow;
    return (struct carried){.depth = flat ? high : narrow, .top = flat ? narrow : high};
}

static void judge_part(struct run *run, const struct part *part) {
    struct weight weight = weigh_part(run->arena, run->model, part);
    struct carried carried = carried_of(run->model, part);
    carried.weight = run->model->wet ? weight.after_rain : weight.dry;
    struct working *working = run_working(run, arena_print(run->arena, "carry/%s", part->name));
    struct rating rating = check_carry(&carried, working);
    struct check *check = run_add_check(
        run, "carry", part->name, "", rating, arena_print(run->arena, "part %s", part->name),
        "carry it with two people, or let it come apart further", working);
    if (weight.trays > 0.0) {
        check->beside.words = "with its trays on it weighs";
        check->beside.value = carried.weight + weight.trays;
        check->beside.kind = QUANTITY_MASS;
    }
}

/* Where nothing is named as carried apart there is no check: what all of it weighs is said. */
static void tell_whole_weight(struct run *run) {
    if (!run->frame->self_weight)
        return;
    struct weight weight = weigh_frame(run->arena, run->model);
    enum unit_system units = run->frame->units;
    const char *dry = quantity_print(run->arena, weight.dry, QUANTITY_MASS, units);
    const char *rain = "";
    if (run->model->wet)
        rain = arena_print(run->arena, ", %s after rain",
                           quantity_print(run->arena, weight.after_rain, QUANTITY_MASS, units));
    const char *trays = "";
    if (weight.trays > 0.0) {
        double own = run->model->wet ? weight.after_rain : weight.dry;
        trays = arena_print(run->arena, ", %s with full shelves",
                            quantity_print(run->arena, own + weight.trays, QUANTITY_MASS, units));
    }
    run_caution(run,
                arena_print(run->arena,
                            "all of it weighs %s%s%s, without screws; where it comes apart, parts: "
                            "names what one person carries",
                            dry, rain, trays));
}

void judge_carry(struct run *run) {
    if (!run->frame->parts.count)
        tell_whole_weight(run);
    for (size_t k = 0; k < run->frame->parts.count; k++)
        judge_part(run, &run->frame->parts.items[k]);
}
