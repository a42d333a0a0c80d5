#include "sway/sway.h"

#include "check/sag.h"
#include "judge/steps.h"
#include "solve/slack.h"
#include "sway/second_order.h"

#include <math.h>
#include <string.h>

struct sway_found {
    bool known;
    double factor; /* SWAY_MOST where it does not buckle */
    int combination;
    bool crept;
    int bowing;                     /* stick that bows the most; -1 the joints move more */
    const struct sway_frame *first; /* lends its elastic part to the combinations after it */
};

static struct sway_setting setting_of(const struct run *run, enum stiffness stiffness, bool crept) {
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

static struct sway_frame *prepare(struct run *run, enum stiffness stiffness, int combination,
                                  bool crept, const struct sway_frame *like) {
    enum stiffness solved = run_uses(run, stiffness) ? stiffness : STIFFNESS_MIDDLE;
    const struct response *response = run->responses[solved];
    double *weights = ARENA_ARRAY(run->arena, double, response->column_count);
    struct sway_input input = {.setting = setting_of(run, stiffness, crept), .like = like};
    run_weights(run, response, combination, SHARE_ALL, weights);
    if (run->has_ties) { /* only ties that pull count */
        bool *slack = ARENA_ARRAY(run->arena, bool, run->model->member_count);
        slack_settle(run->arena, response, weights, slack);
        input.setting.excluded = slack;
    }
    input.axial = (const double(*)[2])sway_axial(run->arena, response, weights);
    return sway_prepare(run->arena, &input);
}

/* Does what stands for long make up at least half of the downward load? */
static bool long_standing(const struct run *run, int combination) {
    const struct load_combination *in = &run->loads->combinations[combination];
    double standing = 0.0, all = 0.0;
    for (size_t t = 0; t < in->term_count; t++) {
        const struct load_case *load_case = &run->loads->cases[in->terms[t].load_case];
        for (int k = 0; k < load_case->set_count; k++) {
            double weight = in->terms[t].factor * loads_weight(run->loads, load_case->sets[k]);
            all += weight;
            if (run_stands_for_long(run->loads, load_case->sets[k], in))
                standing += weight;
        }
    }
    return all > 0.0 && standing >= 0.5 * all;
}

static bool solved(const struct run *run, int combination) {
    for (size_t x = 0; x < run->mix_count; x++)
        if (run->mixes[x].combination == combination && !run->mixes[x].solved)
            return false;
    return true;
}

/* The factor of one combination; where only the lowest is wanted, only if it lies below the lowest
 * so far, which one count of pivots tells. */
static double factor_of(struct run *run, int combination, bool crept, struct sway_found *lowest) {
    struct arena_mark mark = arena_mark(run->arena);
    struct sway_frame *frame = prepare(run, STIFFNESS_LOW, combination, crept, lowest->first);
    if (!lowest->first) {
        lowest->first = frame;
        mark = arena_mark(run->arena);
    }
    double factor = NAN;
    bool higher = lowest->known && !run->options->every_factor &&
                  sway_count_below(run->arena, frame, lowest->factor) == 0;
    if (!higher) {
        struct sway_result result = sway_factor(run->arena, frame);
        factor = result.factor;
        double value = isnan(factor) ? SWAY_MOST : factor;
        /* of combinations that buckle alike the first is told; Lanczos settles to 1e-7 */
        if (!lowest->known || value < lowest->factor * (1.0 - 1e-6))
            *lowest =
                (struct sway_found){true, value, combination, crept, result.bowing, lowest->first};
    }
    arena_rewind(run->arena, mark);
    return factor;
}

/* The combination with the most weight first: it is likely the lowest. */
static int heaviest(const struct run *run) {
    int best = 0;
    double most = -INFINITY;
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        double weight = 0.0;
        const struct load_combination *in = &run->loads->combinations[c];
        for (size_t t = 0; t < in->term_count; t++) {
            const struct load_case *load_case = &run->loads->cases[in->terms[t].load_case];
            for (int k = 0; k < load_case->set_count; k++)
                weight += in->terms[t].factor * loads_weight(run->loads, load_case->sets[k]);
        }
        if (weight > most) {
            most = weight;
            best = (int)c;
        }
    }
    return best;
}

static void judge_combination(struct run *run, int combination, struct sway_found *lowest) {
    struct combination_result *result = &run->result->combinations.items[combination];
    if (!solved(run, combination))
        return;
    bool crept = long_standing(run, combination);
    if (crept)
        result->buckling_factor_crept = factor_of(run, combination, true, lowest);
    /* softer is lower: without creep it cannot be the lowest */
    if (crept && !run->options->every_factor)
        return;
    result->buckling_factor = factor_of(run, combination, false, lowest);
}

static void note_working(struct run *run, struct working *working,
                         const struct sway_found *lowest) {
    if (!working)
        return;
    working_heading(working, "Smallest factor on all loads at which the frame, with its sticks cut "
                             "in four where pushed, resists some movement no longer (K + f Kg)");
    if (lowest->crept) {
        working_cited(working, "Kcr", "creep: E of the sticks is divided by it",
                      creep_factor(run->model->wet), QUANTITY_NUMBER);
        working_step(working, "Kj", "the joints are divided by this", "2 * Kcr - 1",
                     2.0 * creep_factor(run->model->wet).value - 1.0, QUANTITY_NUMBER,
                     "EN 1995-1-1 2.3.2.2 [memory]");
    }
    working_given(working, "f", "critical factor, joints as soft as they may be, least E",
                  lowest->factor, QUANTITY_NUMBER);
    working_cited(working, "fn", "factor that it must have", table_constant("sway-limit"),
                  QUANTITY_NUMBER);
    working_step(working, "r", "share of the limit", "fn / f",
                 table_constant("sway-limit").value / lowest->factor, QUANTITY_NUMBER, "");
}

void judge_sway(struct run *run) {
    struct sway_found lowest = {0};
    if (!run->loads->combination_count)
        return;
    const char *only = run->options->why_combination;
    bool one = only && run->options->why_id && strcmp(run->options->why_id, "sway/frame") == 0;
    int first = heaviest(run);
    if (!one || run_wants_combination(run, "sway/frame", first))
        judge_combination(run, first, &lowest);
    for (size_t c = 0; c < run->loads->combination_count; c++)
        if ((int)c != first && run_wants_combination(run, "sway/frame", (int)c))
            judge_combination(run, (int)c, &lowest);
    if (!lowest.known)
        return;
    struct working *working = run_working(run, "sway/frame");
    note_working(run, working, &lowest);
    struct cited wanted = table_constant("sway-limit");
    struct rating rating = rating_of(wanted.value, lowest.factor, QUANTITY_NUMBER,
                                     "elastic critical load, limit by trade practice [trade]",
                                     lowest.crept ? "after creep" : "");
    const char *place = lowest.bowing >= 0
                            ? arena_print(run->arena, "%s bows sideways",
                                          run->frame->members.items[lowest.bowing].name)
                            : "the whole frame sways";
    run_add_check(
        run, "sway", "frame", run->loads->combinations[lowest.combination].name, rating, place,
        lowest.bowing >= 0 ? "hold this stick in its middle, or use a thicker one"
                           : "put in a diagonal, or a plywood back; batten brace says where",
        working);
}

/* Under its own long-standing load, joints at their middle, no creep: does it stand at all? */
bool judge_stands(struct run *run) {
    int combination = -1;
    for (size_t c = 0; c < run->loads->combination_count; c++)
        if (strcmp(run->loads->combinations[c].name, "D+T") == 0 ||
            (combination < 0 && strcmp(run->loads->combinations[c].name, "D") == 0))
            combination = (int)c;
    if (combination < 0 || !solved(run, combination))
        return true;
    struct sway_frame *frame = prepare(run, STIFFNESS_MIDDLE, combination, false, NULL);
    if (sway_count_below(run->arena, frame, 1.0) == 0)
        return true;
    struct sway_result result = sway_factor(run->arena, frame);
    if (!(result.factor < 1.0))
        return true;
    if (result.shape) /* a frame that folds without any load has none */
        judge_fall(run, result.shape);
    return false;
}

/* The weights of a mix without those that undo slack ties: there the ties are left out for good. */
static double *without_ties(const struct run *run, const struct mix *mix,
                            enum stiffness stiffness) {
    const struct response *response = run->responses[stiffness];
    double *weights = ARENA_ARRAY(run->arena, double, response->column_count);
    for (size_t c = 0; c < response->column_count; c++)
        weights[c] = response->columns[c].tie < 0 ? mix->weights[stiffness][c] : 0.0;
    return weights;
}

void judge_second_order(struct run *run) {
    enum stiffness stiffness = run_uses(run, STIFFNESS_LOW) ? STIFFNESS_LOW : STIFFNESS_MIDDLE;
    size_t falling = 0;
    struct sway_setting shared = setting_of(run, STIFFNESS_LOW, false);
    struct second_order_frame *frame =
        run->has_ties ? NULL : second_order_prepare(run->arena, &shared);
    for (size_t x = 0; x < run->mix_count; x++) {
        struct mix *mix = &run->mixes[x];
        if (!mix->solved)
            continue;
        struct second_order_input input = {.setting = shared,
                                           .frame = frame,
                                           .response = run->responses[stiffness],
                                           .weights = without_ties(run, mix, stiffness)};
        input.setting.excluded = mix->slack[stiffness];
        mix->second = second_order_solve(run->arena, &input);
        if (!mix->second->stands && falling++ == 0)
            run_caution(run, arena_print(run->arena,
                                         "under %s the frame falls over by itself when its joints "
                                         "are as soft as they may be; forces along its sticks are "
                                         "then those before it moves",
                                         run->loads->combinations[mix->combination].name));
    }
}
