/* Joints that keep the frame from leaning: their moment against the worst screw. Said only where
 * the frame needs it, which is tried: with that connection a hinge it leans too far, sways or
 * folds. */
#include "check/pattern.h"
#include "fixing/fastener_input.h"
#include "judge/answers.h"
#include "judge/steps.h"

#include <math.h>
#include <string.h>

#define MOMENT_SOURCE "NDS 2018 12.3, elastic group"

/* Does a fastening of this type hold against turning by its screws or glue? */
static bool holds_turning(enum connection_type type) {
    switch (type) {
    case CONNECTION_SCREWED_LAP:
    case CONNECTION_SCREWED_BUTT:
    case CONNECTION_GLUED_LAP:
    case CONNECTION_BRACKET:
    case CONNECTION_GUSSET:
    case CONNECTION_NOTCHED:
        return true;
    default:
        return false;
    }
}

/* The frame with hinges in place of one connection (-1: of all that hold by screws or glue). */
static struct frame hinged(const struct run *run, int connection) {
    struct frame frame = *run->frame;
    size_t count = frame.connections.count;
    frame.connections.items = ARENA_ARRAY(run->arena, struct connection, count);
    memcpy(frame.connections.items, run->frame->connections.items,
           count * sizeof *frame.connections.items);
    for (size_t k = 0; k < count; k++)
        if (((int)k == connection || connection < 0) &&
            holds_turning(frame.connections.items[k].type))
            frame.connections.items[k].type = CONNECTION_PINNED;
    return frame;
}

static bool stays_upright_without(const struct run *run, int connection) {
    struct arena_mark mark = arena_mark(run->arena);
    struct frame frame = hinged(run, connection);
    bool upright = judge_stays_upright(run, &frame);
    arena_rewind(run->arena, mark);
    return upright;
}

/* Entries of connections that are tried one by one, each a solution of its own; of more, all count
 * as needed. */
enum { MOST_TRIED = 20 };

/* Per connection: the frame needs what it holds against turning. Where it stands without any one of
 * them and not without all, all are needed. */
static bool *needed(const struct run *run) {
    size_t count = run->frame->connections.count;
    bool *needed = ARENA_ARRAY(run->arena, bool, count),
         *used = ARENA_ARRAY(run->arena, bool, count);
    size_t kinds = 0;
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            int connection = run->model->members[m].ends[end].connection;
            if (connection < 0 || !holds_turning(run->frame->connections.items[connection].type))
                continue;
            kinds += !used[connection];
            used[connection] = true;
        }
    if (!kinds || stays_upright_without(run, -1))
        return needed;
    if (kinds == 1 || kinds > MOST_TRIED)
        return used;
    bool one_matters = false;
    for (size_t k = 0; k < count; k++) {
        needed[k] = used[k] && !stays_upright_without(run, (int)k);
        one_matters |= needed[k];
    }
    return one_matters ? needed : used;
}

/* What a group in a line carries of moment alone, and its working. */
static struct rating rate_line(const struct fixing *fixing, double moment, enum duration duration,
                               struct working *working) {
    double at[CONNECTION_MOST_FASTENERS][2];
    size_t count = (size_t)fixing->count;
    pattern_line(count, fixing->line, 0.0, at);
    double arm = pattern_moment_arm(&(struct pattern){count, (const double(*)[2])at});
    double plates = fixing->connection->type == CONNECTION_GUSSET ? fixing->connection->plates : 1;
    const struct fixing_load across = fixing_across(0.0, 0.0);
    struct dowel_values values;
    double least = INFINITY;
    for (int g = 0; g < fixing->group_count; g++) {
        struct screw_input input = fixing_input(fixing, g, &across, duration);
        dowel_values(input.dowel, &input.side, &input.main, &input.service, g == 0 ? working : NULL,
                     &values);
        if (*values.lateral_missing)
            return rating_missing(values.lateral_missing, MOMENT_SOURCE);
        least = fmin(least, values.lateral);
    }
    if (!(arm > 0.0))
        return rating_missing("turning against a single screw", MOMENT_SOURCE);
    working_heading(working, "The group of screws");
    working_given(working, "M", "moment that the joint passes on", moment, QUANTITY_MOMENT);
    working_given(working, "Za", "what one screw may carry sideways", least, QUANTITY_WEIGHT);
    working_given(working, "w", "sum of squared distances from the middle by the largest distance",
                  arm * plates, QUANTITY_LENGTH);
    working_step(working, "Ma", "moment that the worst screw allows", "Za * w",
                 least * arm * plates, QUANTITY_MOMENT, "");
    working_step(working, "r", "share of the limit", "M / Ma", moment / (least * arm * plates),
                 QUANTITY_NUMBER, "");
    return rating_of(moment, least * arm * plates, QUANTITY_MOMENT, MOMENT_SOURCE, "");
}

/* Glue with nothing but a moment on it. */
static struct rating rate_glue(const struct fixing *fixing, double moment,
                               struct working *working) {
    struct glue_input glue = fixing_glue(fixing, (const double[6]){0});
    glue.moment = moment;
    struct rating rating = check_glue(&glue, working);
    return rating.covered ? rating_of(moment, glue_moment(&glue), QUANTITY_MOMENT, rating.source,
                                      rating.governs)
                          : rating;
}

static struct rating rate(const struct fixing *fixing, double moment, enum duration duration,
                          struct working *working) {
    const char *missing = "turning against screws in end grain";
    if (*fixing->missing)
        return rating_missing(fixing->missing, MOMENT_SOURCE);
    if (fixing->connection->type == CONNECTION_GLUED_LAP)
        return rate_glue(fixing, moment, working);
    if (fixing->connection->type == CONNECTION_SCREWED_LAP ||
        fixing->connection->type == CONNECTION_GUSSET)
        return rate_line(fixing, moment, duration, working);
    if (fixing->connection->type == CONNECTION_BRACKET)
        missing = "turning against a thin bracket";
    if (fixing->connection->type == CONNECTION_NOTCHED)
        missing = "turning in a notch";
    return rating_missing(missing, MOMENT_SOURCE);
}

/* The largest moment for each duration of load decides; of all the worst ratio. */
static void judge_joint(struct run *run, const struct fixing *fixing,
                        const struct answers *answers) {
    const char *where = fixing_where(run->arena, fixing);
    const char *id = arena_print(run->arena, "joint-moment/%s", where);
    double most[DURATION_COUNT] = {0};
    const struct answer *by[DURATION_COUNT] = {0};
    for (size_t a = 0; a < answers->count; a++) {
        const struct answer *answer = &answers->items[a];
        int combination = answer->mix->combination;
        enum duration duration = run->loads->combinations[combination].duration;
        double ends[6];
        if ((answer->slack && answer->slack[fixing->member]) ||
            !run_wants_combination(run, id, combination))
            continue;
        answer_at_end(run, answer, fixing->member, fixing->end, ends);
        double moment = fixing_moment(fixing, ends);
        if (!by[duration] || ratio_worse(moment, most[duration])) {
            most[duration] = moment;
            by[duration] = answer;
        }
    }
    int worst = -1;
    struct rating rating = {0};
    for (int d = 0; d < DURATION_COUNT; d++) {
        if (!by[d])
            continue;
        struct rating now = rate(fixing, most[d], (enum duration)d, NULL);
        now.demand = most[d];
        now.quantity = QUANTITY_MOMENT;
        bool larger = worst >= 0 && !now.covered && !rating.covered && now.demand > rating.demand;
        if (worst < 0 || larger || rating_is_worse(&now, &rating)) {
            worst = d;
            rating = now;
        }
    }
    if (worst < 0)
        return;
    struct working *working = run_working(run, id);
    rate(fixing, most[worst], (enum duration)worst, working);
    run_add_check(
        run, "joint-moment", where, run->loads->combinations[by[worst]->mix->combination].name,
        rating, fixing_place(run->arena, fixing),
        "the frame leans on this joint: put in a diagonal, or a plywood back, so that it need not",
        working);
}

void judge_joint_moments(struct run *run) {
    bool *matters = needed(run);
    struct answers answers = answers_of(run);
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            int connection = run->model->members[m].ends[end].connection;
            struct fixing fixing;
            bool brace = run->frame->members.items[m].acts_as != ACTS_AS_MEMBER;
            if (!brace && connection >= 0 && matters[connection] &&
                fixing_of(run->model, m, end, &fixing) && !fixing.own_material)
                judge_joint(run, &fixing, &answers);
        }
}
