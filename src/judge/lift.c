#include "judge/ground.h"
#include "judge/standing.h"

#include "check/ground.h"

#include <math.h>
#include <string.h>

struct worst_lift {
    bool found;
    double pull; /* N by which it must be held down */
    const struct variant *variant;
};

/* What each foot is pulled with in a variant; not over 0: it presses. Where the frame stands on
 * fewer feet, or on none, the pull that would keep a lifted one down is that with every foot held.
 * A hold-down that is there is pulled by what the others leave to it. */
static void pulls_of(struct ground_work *work, enum stiffness stiffness,
                     const struct variant *variant, double *pulls) {
    struct run *run = work->run;
    struct response *response = run->responses[stiffness];
    size_t size = response->column_count * sizeof(double);
    double *held = ARENA_ARRAY(run->arena, double, response->column_count);
    struct mix mix = {.stands = true, .edge = -1};
    mix.weights[stiffness] = ARENA_ARRAY(run->arena, double, response->column_count);
    memcpy(held, variant->weights, size);
    memcpy(mix.weights[stiffness], variant->weights, size);
    if (run->has_ties)
        stance_settle(run->arena, response, FEET_HOLD, held, NULL);
    standing_settle(run, stiffness, &mix);
    if (!mix.stands) { /* its ties do not hold it, feet or not */
        memset(pulls, 0, run->frame->supports.count * sizeof *pulls);
        return;
    }
    if (mix.tips && mix.edge < 0 && !work->part &&
        run_wants_combination(run, "tip/part", variant->mix->combination))
        work->part = variant;
    const bool *lifted = mix.stances[stiffness].lifted;
    for (size_t k = 0; k < run->frame->supports.count; k++) {
        const struct support *support = &run->frame->supports.items[k];
        const double *weights = support_lifts(support) ? held : mix.weights[stiffness];
        bool lifts = mix.tips || !support_lifts(support) || (lifted && lifted[k]);
        pulls[k] = support->foot && lifts
                       ? not_below_zero(-standing_pressure(run, stiffness, weights, k))
                       : 0.0;
    }
}

static const char *id_of(const struct run *run, size_t support) {
    return arena_print(run->arena, "lift/%s",
                       run->frame->joints.items[run->frame->supports.items[support].joint].name);
}

static void look(struct ground_work *work, enum stiffness stiffness, struct worst_lift *worst) {
    struct run *run = work->run;
    size_t supports = run->frame->supports.count;
    double *pulls = ARENA_ARRAY(run->arena, double, supports);
    for (size_t v = 0; v < work->variant_count; v++) {
        const struct variant *variant = &work->variants[v];
        pulls_of(work, stiffness, variant, pulls);
        for (size_t k = 0; k < supports; k++) {
            if (pulls[k] <= 0.0)
                continue;
            work->needs[k] = fmax(work->needs[k], pulls[k]);
            if (!run_wants_combination(run, id_of(run, k), variant->mix->combination) ||
                (worst[k].found && !ratio_worse(pulls[k], worst[k].pull)))
                continue;
            worst[k] = (struct worst_lift){true, pulls[k], variant};
        }
    }
}

/* A group of feet that all lift: how unlike they are, by the largest and the least of them. */
struct likeness {
    bool all_lift;
    double largest, least;
};

static struct likeness likeness_of(const struct ground_work *work, const struct foot_group *group) {
    struct likeness like = {true, 0.0, INFINITY};
    for (size_t k = 0; k < work->run->frame->supports.count; k++) {
        if (!group->in[k])
            continue;
        like.all_lift &= work->needs[k] > 0.0;
        like.largest = fmax(like.largest, work->needs[k]);
        like.least = fmin(like.least, work->needs[k]);
    }
    return like;
}

/* All feet, or those of the foot's own side that are most alike, or the foot alone: what a builder
 * holds down alike. */
static struct foot_group fellows(const struct ground_work *work, size_t support, double *force) {
    const struct run *run = work->run;
    const double alike = 0.9, more = 0.01;
    struct foot_group best = ground_group(run, support, SIDE_COUNT);
    double share = alike;
    *force = work->needs[support];
    for (int side = -1; side < SIDE_COUNT; side++) {
        struct foot_group group = ground_group(run, support, side);
        struct likeness like = likeness_of(work, &group);
        if (group.in[support] && like.all_lift && like.least / like.largest > share + more) {
            best = group;
            share = like.least / like.largest;
            *force = like.largest;
        }
    }
    return best;
}

static const char *advice(const struct ground_work *work, size_t support) {
    double force;
    struct foot_group group = fellows(work, support, &force);
    return arena_print(work->run->arena,
                       "%s: a stake, a strap or ballast tied to it; what is there is written as "
                       "hold-down under supports",
                       ground_needs(work->run, &group, force));
}

static void add_line(struct ground_work *work, size_t support, const struct worst_lift *worst) {
    struct run *run = work->run;
    const struct support *foot = &run->frame->supports.items[support];
    const char *joint = run->frame->joints.items[foot->joint].name;
    struct working *working = run_working(run, id_of(run, support));
    struct rating rating = check_lift(worst->found ? worst->pull : 0.0,
                                      foot->hold_down.given ? foot->hold_down.value : 0.0, working);
    const char *combination = "";
    if (worst->found) {
        rating.governs = worst->variant->pattern;
        combination = run->loads->combinations[worst->variant->mix->combination].name;
    }
    run_add_check(run, "lift", joint, combination, rating,
                  arena_print(run->arena, "foot %s", joint),
                  worst->found ? advice(work, support) : "", working);
}

void judge_lift(struct ground_work *work) {
    struct run *run = work->run;
    struct worst_lift *worst =
        ARENA_ARRAY(run->arena, struct worst_lift, run->frame->supports.count);
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        if (run_uses(run, s))
            look(work, s, worst);
    for (size_t k = 0; k < run->frame->supports.count; k++) {
        const struct support *support = &run->frame->supports.items[k];
        if (support->foot && (worst[k].found || !support_lifts(support)))
            add_line(work, k, &worst[k]);
    }
}
