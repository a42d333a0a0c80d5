#include "judge/run.h"

#include "judge/standing.h"

#include <math.h>
#include <string.h>

bool run_uses(const struct run *run, enum stiffness stiffness) {
    bool in_hand = !run->only || *run->only == stiffness;
    return in_hand && (stiffness == STIFFNESS_MIDDLE || run->model->has_screws);
}

static bool asked(const struct run *run, const char *id) {
    return run->options->why_id && strcmp(run->options->why_id, id) == 0;
}

bool run_wants_combination(const struct run *run, const char *id, int combination) {
    const char *only = run->options->why_combination;
    if (!only || !asked(run, id))
        return true;
    return strcmp(run->loads->combinations[combination].name, only) == 0;
}

bool run_pushes(const struct run *run, int combination) {
    return loads_case_factor(run->loads, combination, CASE_PUSH_X) != 0.0 ||
           loads_case_factor(run->loads, combination, CASE_PUSH_Y) != 0.0;
}

struct working *run_working(const struct run *run, const char *id) {
    if (!run->options->all_working && !asked(run, id))
        return NULL;
    struct working *working = ARENA_NEW(run->arena, struct working);
    working->arena = run->arena;
    return working;
}

bool run_stands_for_long(const struct loads *loads, int set, const struct load_combination *in) {
    if (set == SET_TRAY_SHORT)
        return false;
    if (set == SET_SELF || set == SET_TRAY_LONG)
        return true;
    for (size_t c = 0; c < loads->case_count; c++)
        for (int k = 0; k < loads->cases[c].set_count; k++)
            if (loads->cases[c].sets[k] == set)
                return loads->cases[c].frame_case >= CASE_BUILT_IN &&
                       (in->duration == DURATION_PERMANENT || in->duration == DURATION_TEN_YEARS);
    return false;
}

bool run_weights(const struct run *run, const struct response *response, int combination,
                 enum share share, double *weights) {
    const struct load_combination *in = &run->loads->combinations[combination];
    if (weights)
        memset(weights, 0, response->live_count * sizeof *weights);
    bool solved = true;
    for (size_t t = 0; t < in->term_count; t++) {
        const struct load_case *load_case = &run->loads->cases[in->terms[t].load_case];
        for (int k = 0; k < load_case->set_count; k++) {
            int column = response_column(response, load_case->sets[k], LEAN_NONE);
            bool standing = run_stands_for_long(run->loads, load_case->sets[k], in);
            solved &= response->solvable[column];
            if (weights && (share == SHARE_ALL || (share == SHARE_STANDING) == standing))
                weights[column] += in->terms[t].factor * loads_set_share(in, load_case->sets[k]);
        }
    }
    return solved;
}

/* The same combination with its weight leaned 1.5 % along an axis. */
static bool lean_weights(const struct run *run, const struct response *response, int combination,
                         int axis, double sign, double *weights) {
    double share = table_constant("out-of-plumb").value;
    bool solved = run_weights(run, response, combination, SHARE_ALL, weights);
    for (size_t c = 0; c < response->live_count; c++) {
        const struct column *column = &response->columns[c];
        int upright = response_column(response, column->set, LEAN_NONE);
        if (column->lean != axis || weights[upright] == 0.0)
            continue;
        weights[c] = sign * share * weights[upright];
        solved &= response->solvable[c];
    }
    return solved;
}

/* One combination in one direction of lean (axis -1: upright), at every stiffness. */
static struct mix mix_of(struct run *run, int combination, int axis, double sign,
                         const char *lean) {
    struct mix made = {
        .combination = combination, .lean = lean, .solved = true, .stands = true, .edge = -1};
    struct mix *mix = &made;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        if (!run_uses(run, s))
            continue;
        const struct response *response = run->responses[s];
        mix->weights[s] = ARENA_ARRAY(run->arena, double, response->column_count);
        bool solved = axis < 0
                          ? run_weights(run, response, combination, SHARE_ALL, mix->weights[s])
                          : lean_weights(run, response, combination, axis, sign, mix->weights[s]);
        mix->solved &= solved;
        if (solved)
            standing_settle(run, s, mix);
    }
    mix->solved &= mix->stands;
    return made;
}

static void add_mix(struct run *run, int combination, int axis, double sign, const char *lean) {
    run->mixes[run->mix_count++] = mix_of(run, combination, axis, sign, lean);
}

void mixes_build(struct run *run) {
    static const char *const words[2][2] = {{"leaning right", "leaning left"},
                                            {"leaning back", "leaning to the front"}};
    size_t most = 4 * run->loads->combination_count;
    standing_prepare(run);
    run->mixes = ARENA_ARRAY(run->arena, struct mix, most);
    run->mix_count = 0;
    int axes = run->frame->plane ? 1 : 2;
    run->upright = ARENA_ARRAY(run->arena, struct mix, run->loads->combination_count);
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        run->upright[c] = mix_of(run, (int)c, -1, 0.0, "");
        if (!run->loads->combinations[c].out_of_plumb) {
            run->mixes[run->mix_count++] = run->upright[c];
            continue;
        }
        for (int axis = 0; axis < axes; axis++)
            for (int back = 0; back < 2; back++)
                add_mix(run, (int)c, axis, back ? -1.0 : 1.0, words[axis][back]);
    }
}

static enum verdict verdict_of(const struct rating *rating) {
    if (!rating->covered)
        return VERDICT_NOT_COVERED;
    if (rating->ratio <= table_constant("close-ratio").value)
        return VERDICT_OK;
    return rating->ratio <= 1.0 ? VERDICT_CLOSE : VERDICT_FAILS;
}

struct check *run_add_check(struct run *run, const char *kind, const char *where,
                            const char *combination, struct rating rating, const char *place,
                            const char *advice, struct working *working) {
    struct check check = {.id = arena_print(run->arena, "%s/%s", kind, where),
                          .kind = kind,
                          .where = where,
                          .combination = combination,
                          .demand = rating.demand,
                          .limit = rating.covered ? rating.limit : NAN,
                          .quantity = rating.quantity,
                          .ratio = rating.covered ? rating.ratio : NAN,
                          .verdict = verdict_of(&rating),
                          .beyond = !rating.covered && rating.beyond,
                          .source = rating.source,
                          .place = place,
                          .governs = rating.covered ? rating.governs : rating.missing,
                          .advice = "",
                          .working = working};
    check.beside.words = "";
    if (check.verdict != VERDICT_OK)
        check.advice = advice;
    ARRAY_PUSH(run->arena, &run->result->checks, check);
    return &run->result->checks.items[run->result->checks.count - 1];
}

void run_caution(struct run *run, const char *text) {
    ARRAY_PUSH(run->arena, &run->result->cautions, text);
}
