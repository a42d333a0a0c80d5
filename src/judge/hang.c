#include "base/vector.h"
#include "check/shear.h"
#include "fixing/fixing.h"
#include "judge/answers.h"
#include "judge/steps.h"

#include <math.h>

/* One of the two sticks of a lap, hanging on the lap's screws near its end. */
struct hanging {
    size_t member;
    const struct model_member *stick;
    double breadth, depth; /* m: along the screws; across the grain in the plane of the lap */
    double reach;          /* m across the grain from the middle of the group to its outermost */
    double to_end;         /* m from the middle of the group to the stick's end */
    double across[3];      /* direction across the grain in the plane, global */
};

/* The stick that ends: it runs past the joint to the outer face of its host. */
static struct hanging ending_of(const struct fixing *fixing) {
    const struct model_member *ending = fixing->fastening.ending;
    struct hanging hanging = {.member = fixing->member,
                              .stick = ending,
                              .breadth = fixing->plane.thick_ending,
                              .depth = fixing->plane.width_ending,
                              .reach = fixing->line / 2.0 * fabs(sin(fixing->slopes[0])),
                              .to_end =
                                  member_extent(fixing->fastening.host, ending->axes[0]) / 2.0};
    for (int i = 0; i < 3; i++)
        hanging.across[i] = ending->axes[fixing->plane.across][i];
    return hanging;
}

/* The host: it runs past a joint at its end by half of the stick there. */
static struct hanging host_of_lap(const struct run *run, const struct fixing *fixing) {
    const struct model *model = run->model;
    const struct model_member *host = fixing->fastening.host, *ending = fixing->fastening.ending;
    struct hanging hanging = {.member = fixing->host,
                              .stick = host,
                              .breadth = fixing->plane.thick_host,
                              .depth = fixing->plane.width_host,
                              .reach = fixing->line / 2.0 * fabs(cos(fixing->slopes[0])),
                              .to_end = INFINITY};
    for (size_t k = model->along.first[fixing->host]; k < model->along.first[fixing->host + 1]; k++)
        if (model->along.joints[k].joint == fixing->joint) {
            double at = model->along.joints[k].at;
            hanging.to_end =
                fmin(at, host->length - at) + member_extent(ending, host->axes[0]) / 2.0;
        }
    vector_cross(host->axes[0], ending->axes[fixing->plane.normal], hanging.across);
    vector_unit(hanging.across);
    return hanging;
}

/* Force of the fastening across the grain of the stick. */
static double force_across(const struct fixing *fixing, const struct hanging *hanging,
                           const double ends[6]) {
    double force = 0.0;
    for (int a = 0; a < 3; a++)
        force += ends[a] * vector_dot(fixing->fastening.ending->axes[a], hanging->across);
    return force;
}

static void judge_hanging(struct run *run, const struct fixing *fixing,
                          const struct hanging *hanging, const struct answers *answers) {
    const char *joint = run->frame->joints.items[fixing->joint].name;
    const char *name = run->frame->members.items[hanging->member].name;
    const char *with = run->frame->members.items[fixing->member].name;
    bool ending = hanging->member == fixing->member;
    const char *where = ending ? arena_print(run->arena, "%s/%s", joint, name)
                               : arena_print(run->arena, "%s/%s/%s", joint, name, with);
    const char *id = arena_print(run->arena, "hang/%s", where);
    if (!(hanging->to_end < table_constant("hang-depths").value * hanging->depth))
        return;
    /* which edge the screws push towards changes with the load: half the depth and their reach */
    struct hang_input input = {.lumber = &hanging->stick->lumber,
                               .conditions = {.wet = run->model->wet},
                               .breadth = hanging->breadth,
                               .depth = hanging->depth,
                               .effective =
                                   fmin(hanging->depth, hanging->depth / 2.0 + hanging->reach),
                               .to_end = hanging->to_end};
    const struct answer *worst = NULL;
    struct hang_input worst_input = input;
    struct rating worst_rating = {0};
    for (size_t a = 0; a < answers->count; a++) {
        const struct answer *answer = &answers->items[a];
        if ((answer->slack && answer->slack[fixing->member]) ||
            !run_wants_combination(run, id, answer->mix->combination))
            continue;
        double ends[6];
        answer_at_end(run, answer, fixing->member, fixing->end, ends);
        input.force = force_across(fixing, hanging, ends);
        input.conditions.duration = run->loads->combinations[answer->mix->combination].duration;
        struct rating rating = check_hang(&input, NULL);
        if (worst && !rating_is_worse(&rating, &worst_rating))
            continue;
        worst = answer;
        worst_input = input;
        worst_rating = rating;
    }
    if (!worst || (!worst_rating.covered && input.lumber->basis == LUMBER_OWN))
        return;
    struct working *working = run_working(run, id);
    check_hang(&worst_input, working);
    run_add_check(run, "hang", where, run->loads->combinations[worst->mix->combination].name,
                  worst_rating, arena_print(run->arena, "%s at %s", name, joint),
                  "let the stick run on past its screws, sit it on a cleat, or use a deeper one",
                  working);
}

void judge_hang(struct run *run) {
    struct answers answers = answers_of(run);
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct fixing fixing;
            if (!fixing_of(run->model, m, end, &fixing) || fixing.plane.parallel ||
                fixing.connection->type != CONNECTION_SCREWED_LAP)
                continue;
            struct hanging ending = ending_of(&fixing), host = host_of_lap(run, &fixing);
            judge_hanging(run, &fixing, &ending, &answers);
            judge_hanging(run, &fixing, &host, &answers);
        }
}
