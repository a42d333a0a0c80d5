#include "judge/ground.h"

#include "judge/patterns.h"

#include <math.h>
#include <string.h>

/* Somebody leaning on an empty frame is told in a sentence, unless the file asks for it. */
static bool in_scope(const struct run *run, int combination) {
    return run->frame->has_combine || !run_pushes(run, combination) ||
           loads_case_factor(run->loads, combination, CASE_TRAY) != 0.0;
}

static double *of_loads(const struct run *run, const double *weights) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    double *loads = ARENA_ARRAY(run->arena, double, response->column_count);
    for (size_t c = 0; c < response->live_count; c++)
        if (response->columns[c].set >= 0)
            loads[c] = weights[c];
    return loads;
}

static void list_variants(struct ground_work *work) {
    struct run *run = work->run;
    size_t most = run->mix_count * (1 + run->loads->pattern_count);
    work->variants = ARENA_ARRAY(run->arena, struct variant, most);
    for (size_t x = 0; x < run->mix_count; x++) {
        const struct mix *mix = &run->mixes[x];
        if (!mix->solved || !in_scope(run, mix->combination))
            continue;
        double *full = of_loads(run, mix->weights[STIFFNESS_MIDDLE]);
        work->variants[work->variant_count++] = (struct variant){mix, "", full};
        for (size_t p = 0; p < run->loads->pattern_count && pattern_matters(run, full); p++) {
            double *weights = of_loads(run, full);
            if (pattern_apply(run, p, weights))
                work->variants[work->variant_count++] =
                    (struct variant){mix, run->loads->patterns[p].words, weights};
        }
    }
}

/* How far out to a side a support lies. */
static double outwards(const struct run *run, size_t support, int side) {
    const double *at = run->frame->joints.items[run->frame->supports.items[support].joint].at;
    double place = side == SIDE_LEFT || side == SIDE_RIGHT ? at[0] : at[1];
    return side == SIDE_LEFT || side == SIDE_FRONT ? -place : place;
}

struct foot_group ground_group(const struct run *run, size_t support, int side) {
    const double near = table_constant("push-level").value; /* as for joints of one height */
    size_t supports = run->frame->supports.count;
    struct foot_group group = {.in = ARENA_ARRAY(run->arena, bool, supports)};
    double furthest = -INFINITY;
    for (size_t k = 0; k < supports; k++)
        if (run->frame->supports.items[k].foot)
            furthest = fmax(furthest, outwards(run, k, side));
    for (size_t k = 0; k < supports; k++) {
        bool within = side < 0             ? true
                      : side == SIDE_COUNT ? k == support
                                           : outwards(run, k, side) >= furthest - near;
        group.in[k] = run->frame->supports.items[k].foot && within;
        group.count += group.in[k];
    }
    return group;
}

static const char *count_in_words(struct arena *arena, size_t count) {
    static const char *const words[] = {"no",   "one", "two",   "three", "four",
                                        "five", "six", "seven", "eight"};
    return count < sizeof words / sizeof *words ? words[count] : arena_print(arena, "%zu", count);
}

/* Are these all the feet of one side, and no others? */
static bool is_side(const struct run *run, const struct foot_group *group, enum side side) {
    struct foot_group of_side = ground_group(run, 0, (int)side);
    return memcmp(of_side.in, group->in, run->frame->supports.count * sizeof *group->in) == 0;
}

static const char *names_of(const struct run *run, const struct foot_group *group) {
    const char *names = "";
    for (size_t k = 0; k < run->frame->supports.count; k++)
        if (group->in[k])
            names = arena_print(run->arena, "%s%s%s", names, *names ? ", " : "",
                                run->frame->joints.items[run->frame->supports.items[k].joint].name);
    return names;
}

static const char *group_in_words(const struct run *run, const struct foot_group *group) {
    const char *count = count_in_words(run->arena, group->count);
    if (group->count == run->footprint->feet && group->count > 1)
        return arena_print(run->arena, "each of its %s feet", count);
    for (int side = 0; side < SIDE_COUNT; side++) {
        bool across = side == SIDE_FRONT || side == SIDE_BACK;
        if ((run->frame->plane && across) || !is_side(run, group, (enum side)side))
            continue;
        return group->count == 1
                   ? arena_print(run->arena, "the %s foot", side_name((enum side)side))
                   : arena_print(run->arena, "each of the %s %s feet", count,
                                 side_name((enum side)side));
    }
    return group->count == 1 ? arena_print(run->arena, "the foot %s", names_of(run, group))
                             : arena_print(run->arena, "each of the feet %s", names_of(run, group));
}

const char *ground_needs(const struct run *run, const struct foot_group *group, double force) {
    double step = run->frame->units == UNITS_SI ? 5.0 : 4.4482216152605; /* whole pounds */
    double up = ceil(force / step - 1e-6) * step;
    return arena_print(run->arena, "%s needs %s of hold-down", group_in_words(run, group),
                       quantity_print(run->arena, up, QUANTITY_WEIGHT, run->frame->units));
}

void judge_ground(struct run *run) {
    if (run->footprint->feet == 0)
        return;
    struct ground_work work = {
        .run = run, .needs = ARENA_ARRAY(run->arena, double, run->frame->supports.count)};
    list_variants(&work);
    judge_lift(&work);
    judge_tip(&work);
    judge_slide(&work);
    judge_empty(&work);
}
