#include "judge/sway_frames.h"

#include "check/sag.h"
#include "judge/standing.h"

#include <math.h>
#include <string.h>

struct sway_setting sway_frames_setting(const struct run *run, enum stiffness stiffness,
                                        bool crept) {
    double creep = crept ? creep_factor(run->model->wet).value : 1.0;
    return (struct sway_setting){.model = run->model,
                                 .stiffness = stiffness,
                                 .least_stiffness = true,
                                 .creep_sticks = creep,
                                 /* screws creep twice as much: EN 1995-1-1 2.3.2.2 [memory] */
                                 .creep_joints = 2.0 * creep - 1.0,
                                 .bars = run->bars[stiffness],
                                 .bar_count = run->bar_counts[stiffness]};
}

static enum stiffness solved_at(const struct run *run, enum stiffness stiffness) {
    return run_uses(run, stiffness) ? stiffness : STIFFNESS_MIDDLE;
}

struct sway_input sway_frames_input(const struct run *run, enum stiffness stiffness,
                                    const struct mix *mix, bool crept) {
    enum stiffness solved = solved_at(run, stiffness);
    const struct response *response = run->responses[solved];
    struct sway_input input = {.setting = sway_frames_setting(run, stiffness, crept)};
    input.setting.excluded = mix->stances[solved].slack;
    input.setting.held = standing_held(run, &mix->stances[solved]);
    input.axial = (const double(*)[2])sway_axial(run->arena, response, mix->weights[solved]);
    return input;
}

bool sway_frames_alike(const struct run *run, const struct mix *one, const struct mix *other) {
    enum stiffness solved = solved_at(run, STIFFNESS_LOW);
    const struct stance *a = &one->stances[solved], *b = &other->stances[solved];
    return !a->let_go && !b->let_go && !a->slack == !b->slack &&
           (!a->slack ||
            memcmp(a->slack, b->slack, run->model->member_count * sizeof *a->slack) == 0);
}

/* The least force (pull positive) of any of some mixes in each segment, at either end. */
struct worst_forces {
    struct sway_input input; /* of the last of them */
    double (*axial)[2];
    int *cuts; /* the most that any of them asks for */
};

/* The lower of two; a NAN stays one, so that what is counted with it is not shown. */
static double lower(double a, double b) {
    return isnan(a) || a < b ? a : b;
}

static void add_forces(const struct run *run, const struct mix *mix, bool crept,
                       struct worst_forces *worst) {
    size_t segments = run->model->segment_count;
    bool first = !worst->axial;
    worst->input = sway_frames_input(run, STIFFNESS_LOW, mix, crept);
    const int *own = sway_cuts(run->arena, &worst->input);
    if (first) {
        worst->axial = arena_take(run->arena, segments, sizeof *worst->axial);
        worst->cuts = ARENA_ARRAY(run->arena, int, segments);
    }
    for (size_t s = 0; s < segments; s++) {
        double least = lower(worst->input.axial[s][0], worst->input.axial[s][1]);
        worst->axial[s][0] = first ? least : lower(worst->axial[s][0], least);
        worst->axial[s][1] = worst->axial[s][0];
        worst->cuts[s] = own[s] > worst->cuts[s] ? own[s] : worst->cuts[s];
    }
}

struct sway_wide *sway_frames_wide(struct run *run, const struct mix *const *mixes, size_t count,
                                   bool crept) {
    struct worst_forces worst = {.axial = NULL};
    for (size_t k = 0; k < count; k++)
        if (sway_frames_alike(run, mixes[0], mixes[k]))
            add_forces(run, mixes[k], crept, &worst);
    if (count < 2 || !worst.axial)
        return NULL; /* of a single mix its own frame answers as quickly */
    worst.input.axial = NULL;
    worst.input.cuts = worst.cuts;
    struct sway_wide *wide = ARENA_NEW(run->arena, struct sway_wide);
    *wide = (struct sway_wide){crept, worst.cuts, mixes[0], sway_prepare(run->arena, &worst.input)};
    return wide;
}

/* Kg is a sum of the forces times matrices that are never negative: with the least of the forces
 * (pull positive) K + f Kg lies below that of each mix. Cutting sticks finer lowers it too, since
 * every shape of the coarser frame is one of the finer (with an even force along a segment: the
 * least of it is taken). */
bool sway_frames_above(const struct run *run, const struct sway_wide *wide,
                       const struct mix *const *mixes, size_t count, double factor) {
    struct arena_mark mark = arena_mark(run->arena);
    struct worst_forces worst = {.axial = NULL};
    bool fits = wide && count > 0;
    for (size_t k = 0; fits && k < count; k++) {
        fits = sway_frames_alike(run, wide->like, mixes[k]);
        if (fits)
            add_forces(run, mixes[k], wide->crept, &worst);
    }
    for (size_t s = 0; fits && s < run->model->segment_count; s++)
        fits = worst.cuts[s] <= wide->cuts[s];
    if (fits)
        fits =
            sway_count_with(run->arena, wide->frame, (const double(*)[2])worst.axial, factor) == 0;
    arena_rewind(run->arena, mark);
    return fits;
}
