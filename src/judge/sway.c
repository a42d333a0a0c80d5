#include "sway/sway.h"

#include "check/sag.h"
#include "judge/patterns.h"
#include "judge/standing.h"
#include "judge/steps.h"
#include "judge/sway_frames.h"
#include "sway/second_order.h"

#include <math.h>
#include <string.h>

struct sway_found {
    bool known;
    double factor; /* SWAY_MOST where it does not buckle */
    int combination;
    bool crept;
    const char *pattern;            /* of the trays; "" all full */
    int bowing;                     /* stick that bows the most; -1 the joints move more */
    const struct sway_frame *first; /* lends its elastic part to the combinations after it */
};

static struct sway_frame *prepare(struct run *run, enum stiffness stiffness, const struct mix *mix,
                                  bool crept, const struct sway_frame *like) {
    struct sway_input input = sway_frames_input(run, stiffness, mix, crept);
    input.like = like;
    return sway_prepare(run->arena, &input);
}

/* Does what stands for long make up at least half of the downward load? */
static bool long_standing(const struct run *run, int combination) {
    const struct load_combination *in = &run->loads->combinations[combination];
    double standing = 0.0, all = 0.0;
    for (size_t t = 0; t < in->term_count; t++) {
        const struct load_case *load_case = &run->loads->cases[in->terms[t].load_case];
        for (int k = 0; k < load_case->set_count; k++) {
            double weight = in->terms[t].factor * loads_set_share(in, load_case->sets[k]) *
                            loads_weight(run->loads, load_case->sets[k]);
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

/* Of combinations that buckle alike the first is told; Lanczos settles to 1e-7. */
static double clearly_lower(const struct sway_found *lowest) {
    return lowest->factor * (1.0 - 1e-6);
}

/* A mix in hand. */
struct sway_question {
    const struct mix *mix;
    const char *pattern;          /* of its trays; "" all full */
    bool crept, asked;            /* asked: the factor is wanted whatever it is */
    const struct sway_wide *wide; /* where it may be counted; NULL: nowhere */
};

/* The factor of one mix; unless it is asked for, only where it lies below the lowest so far. */
static double factor_of(struct run *run, const struct sway_question *question,
                        struct sway_found *lowest) {
    const struct mix *mix = question->mix;
    bool only_lower = lowest->known && !question->asked;
    if (only_lower && sway_frames_above(run, question->wide, &mix, 1, clearly_lower(lowest)))
        return NAN;
    struct arena_mark mark = arena_mark(run->arena);
    struct sway_frame *frame = prepare(run, STIFFNESS_LOW, mix, question->crept, lowest->first);
    if (!lowest->first) {
        lowest->first = frame;
        mark = arena_mark(run->arena);
    }
    double factor = NAN;
    if (!only_lower || sway_count_below(run->arena, frame, clearly_lower(lowest)) > 0) {
        struct sway_result result = sway_factor(run->arena, frame);
        factor = result.factor;
        double value = isnan(factor) ? SWAY_MOST : factor;
        if (!lowest->known || value < clearly_lower(lowest)) {
            lowest->known = true;
            lowest->factor = value;
            lowest->combination = mix->combination;
            lowest->crept = question->crept;
            lowest->pattern = question->pattern;
            lowest->bowing = result.bowing;
        }
    }
    arena_rewind(run->arena, mark);
    return factor;
}

/* Downward load of a combination, N. */
static double weight_of(const struct run *run, size_t combination) {
    const struct load_combination *in = &run->loads->combinations[combination];
    double weight = 0.0;
    for (size_t t = 0; t < in->term_count; t++) {
        const struct load_case *load_case = &run->loads->cases[in->terms[t].load_case];
        for (int k = 0; k < load_case->set_count; k++)
            weight += in->terms[t].factor * loads_set_share(in, load_case->sets[k]) *
                      loads_weight(run->loads, load_case->sets[k]);
    }
    return weight;
}

/* The combination with the most weight first: it is likely the lowest. */
static size_t heaviest(const struct run *run) {
    size_t best = 0;
    double most = -INFINITY;
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        double weight = weight_of(run, c);
        if (weight > most) {
            most = weight;
            best = c;
        }
    }
    return best;
}

static void judge_combination(struct run *run, int combination, const struct sway_wide *wide,
                              struct sway_found *lowest) {
    struct combination_result *result = &run->result->combinations.items[combination];
    bool crept = long_standing(run, combination), every = run->options->every_factor;
    struct sway_question question = {&run->upright[combination], "", crept, every, wide};
    double factor = factor_of(run, &question, lowest);
    if (!crept) {
        result->buckling_factor = factor;
        return;
    }
    result->buckling_factor_crept = factor;
    /* softer is lower: without creep it cannot be the lowest */
    question.crept = false;
    if (every)
        result->buckling_factor = factor_of(run, &question, lowest);
}

/* Combinations that are open, creep alike and stand alike. */
struct sway_group {
    const struct mix **mixes, **light; /* light: with less than half of the most weight */
    size_t count, light_count;
    bool crept;
};

static struct sway_group group_of(const struct run *run, size_t like, const bool *open,
                                  double most) {
    size_t count = run->loads->combination_count;
    struct sway_group group = {.mixes = ARENA_ARRAY(run->arena, const struct mix *, count),
                               .light = ARENA_ARRAY(run->arena, const struct mix *, count),
                               .crept = long_standing(run, (int)like)};
    for (size_t c = like; c < count; c++) {
        if (!open[c] || long_standing(run, (int)c) != group.crept ||
            !sway_frames_alike(run, &run->upright[like], &run->upright[c]))
            continue;
        group.mixes[group.count++] = &run->upright[c];
        if (weight_of(run, c) < most / 2.0)
            group.light[group.light_count++] = &run->upright[c];
    }
    return group;
}

static void close_all(const struct mix *const *mixes, size_t count, bool *open) {
    for (size_t k = 0; k < count; k++)
        open[mixes[k]->combination] = false;
}

/* Close what is shown at once to lie above the lowest so far: all of a group where a single heavy
 * one speaks for the rest, else the light ones. */
static void close_higher(const struct run *run, const struct sway_group *group,
                         const struct sway_wide *wide, const struct sway_found *lowest,
                         bool *open) {
    double lower = clearly_lower(lowest);
    if (group->count <= group->light_count + 1 &&
        sway_frames_above(run, wide, group->mixes, group->count, lower))
        close_all(group->mixes, group->count, open);
    else if (group->light_count < group->count &&
             sway_frames_above(run, wide, group->light, group->light_count, lower))
        close_all(group->light, group->light_count, open);
}

/* Per combination: the frame in which it may be counted, shared by those that stand alike. */
static const struct sway_wide **share_frames(struct run *run, double most,
                                             const struct sway_found *lowest, bool *open) {
    size_t count = run->loads->combination_count;
    const struct sway_wide **wides = ARENA_ARRAY(run->arena, const struct sway_wide *, count);
    bool *grouped = ARENA_ARRAY(run->arena, bool, count);
    for (size_t c = 0; c < count; c++) {
        if (!open[c] || grouped[c])
            continue;
        struct sway_group group = group_of(run, c, open, most);
        const struct sway_wide *wide = sway_frames_wide(run, group.mixes, group.count, group.crept);
        for (size_t k = 0; k < group.count; k++) {
            wides[group.mixes[k]->combination] = wide;
            grouped[group.mixes[k]->combination] = true;
        }
        close_higher(run, &group, wide, lowest, open);
    }
    return wides;
}

/* All combinations that are asked for, the heaviest first. */
static void judge_combinations(struct run *run, struct sway_found *lowest) {
    size_t count = run->loads->combination_count, first = heaviest(run);
    struct arena_mark mark = arena_mark(run->arena);
    bool *open = ARENA_ARRAY(run->arena, bool, count);
    const struct sway_wide **wides = NULL;
    for (size_t c = 0; c < count; c++)
        open[c] = run_wants_combination(run, "sway/frame", (int)c) && solved(run, (int)c);
    if (open[first])
        judge_combination(run, (int)first, NULL, lowest);
    open[first] = false;
    if (lowest->known && !run->options->every_factor)
        wides = share_frames(run, weight_of(run, first), lowest, open);
    for (size_t c = 0; c < count; c++)
        if (open[c])
            judge_combination(run, (int)c, wides ? wides[c] : NULL, lowest);
    lowest->first = NULL;
    arena_rewind(run->arena, mark);
}

/* A combination with one pattern of trays in the place of full ones. False where that cannot be
 * solved, or is the same, or does not stand. */
static bool pattern_mix(struct run *run, const struct mix *full, size_t pattern, struct mix *mix) {
    enum stiffness low = run_uses(run, STIFFNESS_LOW) ? STIFFNESS_LOW : STIFFNESS_MIDDLE;
    size_t columns = run->responses[low]->column_count;
    *mix = (struct mix){.combination = full->combination, .stands = true, .edge = -1};
    mix->weights[low] = ARENA_ARRAY(run->arena, double, columns);
    for (size_t c = 0; c < columns; c++)
        if (run->responses[low]->columns[c].set >= 0)
            mix->weights[low][c] = full->weights[low][c];
    if (!pattern_matters(run, mix->weights[low]) || !pattern_apply(run, pattern, mix->weights[low]))
        return false;
    standing_settle(run, low, mix);
    response_need_ends(run->arena, run->responses[low], mix->weights[low]);
    return mix->stands;
}

/* Shelves that are not all full, in the combination that is the worst with full ones: their sticks
 * carry less, but not always where it helps. Where full shelves are far from swaying over (under
 * half of the limit), nothing is looked for. */
static void judge_patterns(struct run *run, struct sway_found *lowest) {
    if (lowest->factor > 2.0 * table_constant("sway-limit").value)
        return;
    const struct mix *full = &run->upright[lowest->combination];
    struct mix *mixes = ARENA_ARRAY(run->arena, struct mix, run->loads->pattern_count);
    const struct mix **standing =
        ARENA_ARRAY(run->arena, const struct mix *, run->loads->pattern_count);
    size_t count = 0;
    for (size_t p = 0; p < run->loads->pattern_count; p++)
        if (pattern_mix(run, full, p, &mixes[p]))
            standing[count++] = &mixes[p];
    struct arena_mark mark = arena_mark(run->arena); /* answers are all there by now */
    struct sway_question question = {.crept = lowest->crept};
    question.wide = sway_frames_wide(run, standing, count, question.crept);
    bool above = sway_frames_above(run, question.wide, standing, count, clearly_lower(lowest));
    for (size_t k = 0; !above && k < count; k++) {
        question.mix = standing[k];
        question.pattern = run->loads->patterns[standing[k] - mixes].words;
        factor_of(run, &question, lowest);
    }
    arena_rewind(run->arena, mark);
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

static const char *governs(struct arena *arena, const struct sway_found *lowest) {
    const char *crept = lowest->crept ? "after creep" : "";
    return arena_print(arena, "%s%s%s", crept, *crept && *lowest->pattern ? ", " : "",
                       lowest->pattern);
}

void judge_sway(struct run *run) {
    struct sway_found lowest = {0};
    if (!run->loads->combination_count)
        return;
    judge_combinations(run, &lowest);
    if (!lowest.known)
        return;
    judge_patterns(run, &lowest);
    struct working *working = run_working(run, "sway/frame");
    note_working(run, working, &lowest);
    struct cited wanted = table_constant("sway-limit");
    struct rating rating = rating_of(wanted.value, lowest.factor, QUANTITY_NUMBER,
                                     "elastic critical load, limit by trade practice [trade]",
                                     governs(run->arena, &lowest));
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
    struct arena_mark mark = arena_mark(run->arena);
    struct sway_frame *frame =
        prepare(run, STIFFNESS_MIDDLE, &run->upright[combination], false, NULL);
    if (sway_count_below(run->arena, frame, 1.0) == 0) {
        arena_rewind(run->arena, mark);
        return true;
    }
    struct sway_result result = sway_factor(run->arena, frame);
    if (!(result.factor < 1.0))
        return true;
    if (result.shape) /* a frame that folds without any load has none */
        judge_fall(run, result.shape);
    return false;
}

/* The weights of a mix without those that undo slack ties and lifted feet: there the ties are left
 * out and the feet let go for good. */
static double *of_loads(const struct run *run, const struct mix *mix, enum stiffness stiffness) {
    const struct response *response = run->responses[stiffness];
    double *weights = ARENA_ARRAY(run->arena, double, response->column_count);
    for (size_t c = 0; c < response->live_count; c++)
        weights[c] = response->columns[c].set >= 0 ? mix->weights[stiffness][c] : 0.0;
    return weights;
}

static struct second_order *room_for(struct run *run, const struct mix *mix) {
    enum stiffness stiffness = run_uses(run, STIFFNESS_LOW) ? STIFFNESS_LOW : STIFFNESS_MIDDLE;
    const struct stance *stance = &mix->stances[stiffness];
    struct second_order_input input = {.setting = sway_frames_setting(run, STIFFNESS_LOW, false),
                                       .response = run->responses[stiffness],
                                       .weights = of_loads(run, mix, stiffness)};
    input.setting.excluded = stance->slack;
    input.setting.held = standing_held(run, stance);
    return second_order_room(run->arena, &input);
}

/* All mixes that stand on the same feet and ties as this one, on one frame, which is given back. */
static void fill_alike(struct run *run, size_t first, bool *filled) {
    struct arena_mark mark = arena_mark(run->arena);
    const struct second_order_frame *frame =
        second_order_prepare(run->arena, &run->mixes[first].second->setting);
    for (size_t x = first; x < run->mix_count; x++) {
        struct second_order *second = run->mixes[x].second;
        if (filled[x] || !second || !second_order_serves(frame, &second->setting))
            continue;
        second_order_fill(run->arena, frame, second);
        filled[x] = true;
    }
    arena_rewind(run->arena, mark);
}

void judge_second_order(struct run *run) {
    bool *filled = ARENA_ARRAY(run->arena, bool, run->mix_count);
    for (size_t x = 0; x < run->mix_count; x++)
        if (run->mixes[x].solved)
            run->mixes[x].second = room_for(run, &run->mixes[x]);
    for (size_t x = 0; x < run->mix_count; x++)
        if (run->mixes[x].second && !filled[x])
            fill_alike(run, x, filled);
    for (size_t x = 0; x < run->mix_count; x++) {
        const struct mix *mix = &run->mixes[x];
        if (!mix->second || mix->second->stands)
            continue;
        run_caution(run, arena_print(run->arena,
                                     "under %s the frame falls over by itself when its joints are "
                                     "as soft as they may be; forces along its sticks are then "
                                     "those before it moves",
                                     run->loads->combinations[mix->combination].name));
        break;
    }
}
