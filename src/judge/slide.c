#include "judge/ground.h"
#include "judge/standing.h"

#include "check/ground.h"

#include <math.h>

struct worst_slide {
    bool found;
    struct rating rating;
    const struct variant *variant;
};

/* What holds both ways and level leaves nothing to slide that way. */
static bool held_level(const struct frame *frame, int axis) {
    for (size_t k = 0; k < frame->supports.count; k++)
        if (!frame->supports.items[k].foot && frame->supports.items[k].held[axis])
            return true;
    return false;
}

static void level_force(const struct run *run, const double *weights, double level[2]) {
    for (int axis = 0; axis < 2; axis++) {
        level[axis] = 0.0;
        double all = 0.0;
        if (held_level(run->frame, axis) || (axis == 1 && run->frame->plane))
            continue;
        for (size_t c = 0; c < run->responses[STIFFNESS_MIDDLE]->live_count; c++) {
            level[axis] += weights[c] * run->resultants[c].force[axis];
            all += fabs(weights[c] * run->resultants[c].force[axis]);
        }
        if (fabs(level[axis]) <= 1e-9 * all)
            level[axis] = 0.0;
    }
}

static struct cited friction_on(int ground) {
    return ground < 0 ? table_constant("friction-not-given") : table_ground_friction(ground);
}

/* What presses on each kind of ground. Of a frame that tips only the sum is known: it is taken on
 * the most slippery ground that a foot stands on. */
static size_t grounds_of(const struct run *run, const struct mix *mix,
                         struct slide_ground *grounds) {
    size_t count = 0;
    double sum = 0.0;
    int slippery = -1;
    for (int ground = -1; ground < table_ground_count(); ground++) {
        double pressure = 0.0;
        bool any = false;
        for (size_t k = 0; k < run->frame->supports.count; k++) {
            const struct support *support = &run->frame->supports.items[k];
            if (!support->foot || support->ground != ground)
                continue;
            double force =
                standing_pressure(run, STIFFNESS_MIDDLE, mix->weights[STIFFNESS_MIDDLE], k);
            any = true;
            pressure += fmax(0.0, force);
            sum += force;
        }
        if (!any)
            continue;
        struct cited friction = friction_on(ground);
        if (count == 0 || friction.value < grounds[slippery].friction.value)
            slippery = (int)count;
        const char *words = ground < 0 ? "ground, which is not said" : table_ground_name(ground);
        grounds[count++] = (struct slide_ground){words, friction, pressure};
    }
    if (mix->tips && count) {
        grounds[0] = grounds[slippery];
        grounds[0].pressure = fmax(0.0, sum);
        count = 1;
    }
    return count;
}

static struct rating rate(const struct run *run, const struct variant *variant,
                          struct working *working) {
    struct slide_ground *grounds =
        ARENA_ARRAY(run->arena, struct slide_ground, table_ground_count() + 1);
    struct slide_input input = {.grounds = grounds};
    level_force(run, variant->weights, input.level);
    input.ground_count = grounds_of(run, variant->mix, grounds);
    return check_slide(&input, working);
}

static bool ground_not_said(const struct frame *frame) {
    for (size_t k = 0; k < frame->supports.count; k++)
        if (frame->supports.items[k].foot && frame->supports.items[k].ground < 0)
            return true;
    return false;
}

void judge_slide(struct ground_work *work) {
    struct run *run = work->run;
    struct worst_slide worst = {0};
    for (size_t v = 0; v < work->variant_count; v++) {
        const struct variant *variant = &work->variants[v];
        if (*variant->pattern ||
            !run_wants_combination(run, "slide/frame", variant->mix->combination))
            continue;
        struct rating rating = rate(run, variant, NULL);
        if (!worst.found || rating_is_worse(&rating, &worst.rating))
            worst = (struct worst_slide){true, rating, variant};
    }
    if (!worst.found || worst.rating.demand == 0.0)
        return;
    struct working *working = run_working(run, "slide/frame");
    struct rating rating = rate(run, worst.variant, working);
    bool unsaid = ground_not_said(run->frame);
    if (unsaid)
        run_caution(run, "what the feet stand on is not said: it counts as slippery as wet grass; "
                         "say it under supports, such as {foot: {on: paving}}");
    run_add_check(run, "slide", "frame",
                  run->loads->combinations[worst.variant->mix->combination].name, rating,
                  "the whole frame",
                  unsaid ? "say under supports what its feet stand on; or weigh it down, stake its "
                           "feet, or strap it to a wall"
                         : "weigh it down, stake its feet, or strap it to a wall",
                  working);
}
