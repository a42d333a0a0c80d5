#include "fixing/fastener_input.h"
#include "judge/answers.h"
#include "judge/steps.h"

#include <math.h>
#include <string.h>

struct worst_screw {
    bool found;
    struct rating rating;
    const char *words;        /* in which group: "in the stick"; "" */
    struct screw_input input; /* of screws */
    struct fixing_load load;
    struct glue_input glue; /* of a glued lap */
    const struct answer *answer;
};

/* What one fastener of each group holds, for each duration of load; made when first asked for. Of
 * those to which the grain matters: across it, which is least. */
struct known_values {
    bool made[2][DURATION_COUNT];
    struct dowel_values values[2][DURATION_COUNT];
};

static const struct dowel_values *known_values(const struct fixing *fixing,
                                               struct known_values *known, int group,
                                               enum duration duration) {
    struct dowel_values *values = &known->values[group][duration];
    if (!known->made[group][duration]) {
        const struct fixing_load across = fixing_across(0.0, 0.0);
        struct screw_input input = fixing_input(fixing, group, &across, duration);
        dowel_values(input.dowel, &input.side, &input.main, &input.service, NULL, values);
        known->made[group][duration] = true;
    }
    return values;
}

/* Of two loads without a value the larger is told. */
static bool worse(const struct rating *now, const struct worst_screw *worst) {
    if (!worst->found)
        return true;
    if (!now->covered && !worst->rating.covered)
        return now->demand > worst->rating.demand * (1.0 + 1e-9);
    return rating_is_worse(now, &worst->rating);
}

static void look_at(const struct fixing *fixing, int group, const struct dowel_values *values,
                    const struct fixing_load *load, enum duration duration,
                    const struct answer *answer, struct worst_screw *worst) {
    const struct screw_input input = fixing_input(fixing, group, load, duration);
    struct rating rating = screw_rating(&input, values);
    if (fixing->by_angle && worse(&rating, worst)) {
        struct dowel_values exact;
        dowel_values(input.dowel, &input.side, &input.main, &input.service, NULL, &exact);
        rating = screw_rating(&input, &exact);
    }
    if (worse(&rating, worst))
        *worst = (struct worst_screw){.found = true,
                                      .rating = rating,
                                      .words = fixing->groups[group].words,
                                      .input = input,
                                      .load = *load,
                                      .answer = answer};
}

static void look_at_groups(const struct fixing *fixing, struct known_values *known,
                           const double ends[6], enum duration duration,
                           const struct answer *answer, struct worst_screw *worst) {
    struct fixing_load loads[FIXING_LOADS];
    for (int g = 0; g < fixing->group_count; g++) {
        const struct dowel_values *values = known_values(fixing, known, g, duration);
        int count = fixing_loads(fixing, g, ends, loads);
        for (int k = 0; k < count; k++)
            look_at(fixing, g, values, &loads[k], duration, answer, worst);
    }
}

static void look_at_glue(const struct fixing *fixing, const double ends[6],
                         const struct answer *answer, struct worst_screw *worst) {
    struct glue_input glue = fixing_glue(fixing, ends);
    struct rating rating = check_glue(&glue, NULL);
    if (worse(&rating, worst))
        *worst = (struct worst_screw){
            .found = true, .rating = rating, .words = "", .glue = glue, .answer = answer};
}

static void look(const struct run *run, const struct fixing *fixing, const char *id,
                 const struct answers *answers, struct worst_screw *worst) {
    struct known_values known = {0};
    for (size_t a = 0; a < answers->count; a++) {
        const struct answer *answer = &answers->items[a];
        int combination = answer->mix->combination;
        double ends[6];
        if ((answer->slack && answer->slack[fixing->member]) ||
            !run_wants_combination(run, id, combination))
            continue;
        answer_at_end(run, answer, fixing->member, fixing->end, ends);
        if (fixing->group_count)
            look_at_groups(fixing, &known, ends, run->loads->combinations[combination].duration,
                           answer, worst);
        else
            look_at_glue(fixing, ends, answer, worst);
    }
}

static const char *advice_no_value(const struct run *run, const struct worst_screw *worst,
                                   const struct dowel_values *values) {
    const struct screw_input *input = &worst->input;
    if (!values->penetrates && input->main.thickness >= values->penetration_needed)
        return arena_print(
            run->arena, "use screws that go at least %s into the wood behind",
            quantity_print_length(run->arena, values->penetration_needed, run->frame->units));
    if (!values->penetrates)
        return "turn the post so that its deeper side takes the screws, put a block behind it, or "
               "use a bolt with washers";
    if (input->main.end_grain)
        return "screws in end grain hold no pull: add a cleat, a bracket, or lap the sticks";
    return "fasten it another way: a lap, a cleat, a bolt with washers";
}

static struct working *head_working(struct run *run, const struct fixing *fixing, const char *id,
                                    const struct worst_screw *worst) {
    struct working *working = run_working(run, id);
    const struct answer *answer = worst->answer;
    if (working)
        working_heading(working,
                        arena_print(run->arena, "%s%s%s%s%s%s%s", fixing_place(run->arena, fixing),
                                    *worst->words ? ", " : "", worst->words,
                                    *answer->how ? ", " : "", answer->how,
                                    *answer->mix->lean ? ", frame " : "", answer->mix->lean));
    return working;
}

static void add_glue(struct run *run, const struct fixing *fixing, const char *where,
                     const char *id, const struct worst_screw *worst) {
    struct working *working = head_working(run, fixing, id, worst);
    check_glue(&worst->glue, working);
    run_add_check(run, "screw", where,
                  run->loads->combinations[worst->answer->mix->combination].name, worst->rating,
                  fixing_place(run->arena, fixing),
                  worst->glue.wet ? "glue of the workshop gives way where it is damp: screw it too "
                                    "and describe it as a screwed lap"
                                  : "screw or bolt it instead, or lap it over a wider face",
                  working);
}

static void add_screws(struct run *run, const struct fixing *fixing, const char *where,
                       const char *id, const struct worst_screw *worst) {
    struct working *working = head_working(run, fixing, id, worst);
    fixing_note_load(fixing, &worst->load, working);
    check_screw(&worst->input, working);
    struct dowel_values values;
    dowel_values(worst->input.dowel, &worst->input.side, &worst->input.main, &worst->input.service,
                 NULL, &values);
    const char *more = fixing->dowel.kind == DOWEL_BOLT
                           ? "use more or thicker bolts, or wider washers"
                           : "use more, thicker or longer screws, or a bolt with washers";
    const char *advice = worst->rating.covered ? more : advice_no_value(run, worst, &values);
    struct check *check = run_add_check(
        run, "screw", where, run->loads->combinations[worst->answer->mix->combination].name,
        worst->rating, fixing_place(run->arena, fixing), advice, working);
    if (worst->rating.covered || values.penetrates || isnan(values.lateral_reference))
        return;
    check->beside.words = "for information only, the yield limit equations would let it carry";
    check->beside.value = values.lateral_reference * values.lateral_factor;
    check->beside.kind = QUANTITY_WEIGHT;
}

static void judge_fixing(struct run *run, const struct fixing *fixing,
                         const struct answers *answers) {
    const char *where = fixing_where(run->arena, fixing);
    const char *id = arena_print(run->arena, "screw/%s", where);
    struct worst_screw worst = {0};
    if (*fixing->missing) {
        run_add_check(run, "screw", where, "", rating_missing(fixing->missing, "NDS 2018 12"),
                      fixing_place(run->arena, fixing), fixing->remedy, NULL);
        return;
    }
    look(run, fixing, id, answers, &worst);
    if (!worst.found)
        return;
    if (fixing->group_count)
        add_screws(run, fixing, where, id, &worst);
    else
        add_glue(run, fixing, where, id, &worst);
}

/* One line for all joints in wood of the user's own numbers. */
static void add_own_material(struct run *run, const struct fixing *first, size_t count) {
    const char *more = count > 1 ? arena_print(run->arena, " and %zu more", count - 1) : "";
    run_add_check(run, "screw", "own-material", "", rating_missing(first->missing, "NDS 2018 12"),
                  arena_print(run->arena, "%s%s", fixing_place(run->arena, first), more),
                  first->remedy, NULL);
}

void judge_screws(struct run *run) {
    struct answers answers = answers_of(run);
    struct fixing own = {0};
    size_t own_count = 0;
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct fixing fixing;
            if (!fixing_of(run->model, m, end, &fixing))
                continue;
            if (fixing.own_material && own_count++ == 0)
                own = fixing;
            if (!fixing.own_material)
                judge_fixing(run, &fixing, &answers);
        }
    if (own_count)
        add_own_material(run, &own, own_count);
}
