/* A post where a stick is let into it: bending of what the notch leaves (id
 * `bend/POST/JOINT`). */
#include "fixing/fixing.h"
#include "judge/answers.h"
#include "judge/strength.h"
#include "sway/second_order.h"

#include "base/vector.h"

#include <math.h>

/* The host of a notch with its section less the depth of the notch. */
static struct stick_work notched_host(struct run *run, const struct fixing *fixing) {
    const struct model_member *host = fixing->fastening.host;
    const struct member *member = &run->frame->members.items[fixing->host];
    const double *normal = fixing->fastening.ending->axes[fixing->plane.normal];
    bool along_y =
        fabs(vector_dot(host->axes[1], normal)) > fabs(vector_dot(host->axes[2], normal));
    double y = host->size_y - (along_y ? fixing->connection->depth : 0.0);
    double z = host->size_z - (along_y ? 0.0 : fixing->connection->depth);
    struct stick_work work = {.run = run,
                              .member = fixing->host,
                              .stick = host,
                              .section = section_rectangle(y, z),
                              .strong = z >= y ? 1 : 2,
                              .held_along = member->held_along,
                              .repetitive = member->repetitive};
    /* at a joint that holds it the whole section buckles, and what is left is crushed */
    int strong;
    struct section whole = judge_section(host, &run->frame->sticks.items[member->stick], &strong);
    bool turned = strong != work.strong;
    work.section.column_width = turned ? whole.column_thickness : whole.column_width;
    work.section.column_thickness = turned ? whole.column_width : whole.column_thickness;
    return work;
}

static struct bend_input input_at(const struct stick_work *work, size_t segment, double x,
                                  const struct answer *answer) {
    const struct run *run = work->run;
    double forces[FORCE_COUNT];
    struct arena_mark mark = arena_mark(run->arena);
    struct stick_state state =
        answer->second ? second_order_state(run->arena, answer->second, segment)
                       : stick_state(run->arena, answer->response, segment, answer->weights);
    stick_forces(&state, x, x == 0.0, forces);
    arena_rewind(run->arena, mark);
    struct bend_input input = strength_bend_input(
        work, segment, run->loads->combinations[answer->mix->combination].duration);
    input.N = forces[FORCE_N];
    input.edgewise = work->strong == 1 ? forces[FORCE_MY] : forces[FORCE_MZ];
    input.flatwise = work->strong == 1 ? forces[FORCE_MZ] : forces[FORCE_MY];
    return input;
}

static void judge_notch(struct run *run, const struct fixing *fixing,
                        const struct answers *answers) {
    struct stick_work work = notched_host(run, fixing);
    const char *name = run->frame->members.items[fixing->host].name;
    const char *joint = run->frame->joints.items[fixing->joint].name;
    const char *where = arena_print(run->arena, "%s/%s", name, joint);
    const char *id = arena_print(run->arena, "bend/%s", where);
    const struct answer *worst = NULL;
    struct bend_input worst_input = {0};
    struct rating worst_rating = {0};
    for (size_t k = 0; k < work.stick->segment_count; k++)
        for (int side = 0; side < 2; side++) {
            size_t segment = work.stick->first_segment + k;
            const struct segment *of = &run->model->segments[segment];
            if (of->joints[side] != fixing->joint)
                continue;
            for (size_t a = 0; a < answers->count; a++) {
                const struct answer *answer = &answers->items[a];
                if (!run_wants_combination(run, id, answer->mix->combination))
                    continue;
                struct bend_input input = input_at(&work, segment, side ? of->length : 0.0, answer);
                struct rating rating = check_bend(&input, NULL);
                if (worst && !rating_is_worse(&rating, &worst_rating))
                    continue;
                worst = answer;
                worst_input = input;
                worst_rating = rating;
            }
        }
    if (!worst || (!worst_rating.covered && work.stick->lumber.basis == LUMBER_OWN))
        return;
    struct working *working = run_working(run, id);
    check_bend(&worst_input, working);
    run_add_check(run, "bend", where, run->loads->combinations[worst->mix->combination].name,
                  worst_rating, arena_print(run->arena, "%s at the notch of %s", name, joint),
                  "notch it less deep, or sit the stick on a cleat instead", working);
}

void judge_notches(struct run *run) {
    struct answers answers = answers_of(run);
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct fixing fixing;
            if (fixing_of(run->model, m, end, &fixing) &&
                fixing.connection->type == CONNECTION_NOTCHED)
                judge_notch(run, &fixing, &answers);
        }
}
