#include "brace/brace.h"

#include "base/vector.h"
#include "brace/work.h"
#include "fold/readable.h"
#include "fold/tightens.h"
#include "fold/words.h"

#include <math.h>

static void note(struct work *work, const char *text) {
    ARRAY_PUSH(work->arena, &work->answer->notes, text);
}

size_t work_bars(const struct work *work, enum stiffness stiffness, bool clear_too,
                 struct bar **bars) {
    return bracing_bars(work->arena, work->model, work->sheets, stiffness, clear_too, bars, NULL);
}

struct pushed push_frame(const struct work *work, const struct model *model,
                         enum stiffness stiffness, const struct bar *bars, size_t bar_count) {
    static const int sets[] = {SET_PUSH_X, SET_PUSH_Y};
    struct pushed pushed = {0};
    pushed.system = system_build(work->arena, model, stiffness, bars, bar_count);
    struct response *response = response_solve(work->arena, pushed.system, work->loads, false);
    pushed.response = response;
    for (int axis = 0; axis < 2; axis++) {
        int column = response_column(response, sets[axis], LEAN_NONE);
        if (column < 0)
            continue;
        struct lean lean = {.joint = -1, .movement = NAN, .limit = NAN, .ratio = NAN};
        if (pushed.system->trusted && response->solvable[column])
            lean = lean_worst(model, work->limits, response->slots[column]);
        pushed.axes[pushed.count] = axis;
        pushed.lean[pushed.count++] = lean;
    }
    return pushed;
}

static void find_ways(struct work *work, const struct cells *cells) {
    struct brace_answer *answer = work->answer;
    struct bar *bars;
    size_t count = work_bars(work, STIFFNESS_MIDDLE, true, &bars);
    answer->ways = (int)fold_ways(work->arena, work->model, NULL, 0).count;
    answer->ways_with_panels = (int)fold_ways(work->arena, work->model, bars, count).count;
    count = work_bars(work, STIFFNESS_MIDDLE, false, &bars);
    work->ways = fold_ways(work->arena, work->model, bars, count);
    fold_readable(work->arena, work->model, &work->ways);
    bool tightens = fold_tightens(work->arena, work->model, bars, count, &work->ways);
    answer->motions = ARENA_ARRAY(work->arena, struct motion, work->ways.count);
    answer->motion_count = work->ways.count;
    for (size_t k = 0; k < work->ways.count; k++) {
        struct motion *motion = &answer->motions[k];
        *motion = fold_motion(work->arena, cells, (const double(*)[3])work->ways.moves[k]);
        motion->tightens = tightens;
        if (tightens)
            motion->sentence =
                arena_print(work->arena, "%s It gives a little, then the sticks tighten and hold.",
                            motion->sentence);
    }
}

static void find_soft(struct work *work, const struct pushed *pushed) {
    for (size_t k = 0; k < pushed->count; k++)
        if (isfinite(pushed->lean[k].ratio) && pushed->lean[k].ratio > 1.0)
            work->answer->soft[work->answer->soft_count++] =
                (struct soft_direction){.axis = pushed->axes[k],
                                        .lean = pushed->lean[k].movement,
                                        .limit = pushed->lean[k].limit};
}

/* Elongations that the ways give to each candidate. */
static double *elongations(const struct work *work, const struct bar *bars, size_t count) {
    size_t ways = work->ways.count;
    double *out = ARENA_ARRAY(work->arena, double, count *ways + 1);
    for (size_t k = 0; k < count; k++) {
        double n[3], apart[3];
        int a = bars[k].joints[0], b = bars[k].joints[1];
        vector_between(work->frame->joints.items[a].at, work->frame->joints.items[b].at, n);
        vector_unit(n);
        for (size_t w = 0; w < ways; w++) {
            vector_between(work->ways.moves[w][a], work->ways.moves[w][b], apart);
            out[k * ways + w] = vector_dot(apart, n);
        }
    }
    return out;
}

/* Which way each brace of the set stops: ways are handed out by elimination, each once. */
static void hand_out_ways(const struct work *work, const double *elongation, const int *set,
                          size_t count) {
    size_t ways = work->ways.count;
    double *rows = ARENA_ARRAY(work->arena, double, count *ways + 1);
    for (size_t k = 0; k < count; k++) {
        for (size_t w = 0; w < ways; w++)
            rows[k * ways + w] = elongation[(size_t)set[k] * ways + w];
        for (size_t r = 0; r < k; r++) {
            int way = work->answer->braces[r].stops;
            if (way < 0)
                continue;
            double share = rows[k * ways + (size_t)way] / rows[r * ways + (size_t)way];
            for (size_t w = 0; w < ways; w++)
                rows[k * ways + w] -= share * rows[r * ways + w];
        }
        double largest = 1e-6;
        work->answer->braces[k].stops = -1;
        for (size_t w = 0; w < ways; w++)
            if (fabs(rows[k * ways + w]) > largest) {
                largest = fabs(rows[k * ways + w]);
                work->answer->braces[k].stops = (int)w;
            }
    }
}

static void take_set(struct work *work, const struct trial *trial,
                     const struct candidates *candidates, const double *elongation,
                     const struct search_result *found) {
    struct brace_answer *answer = work->answer;
    size_t count = found->number;
    double *forces = ARENA_ARRAY(work->arena, double, 2 * count + 1);
    struct trial_result result = trial_run(work->arena, trial, found->set, count, forces);
    answer->fewest = (int)count;
    answer->braces = ARENA_ARRAY(work->arena, struct brace_choice, count);
    answer->brace_count = count;
    for (size_t k = 0; k < count; k++) {
        const struct candidate *candidate = &candidates->items[found->set[k]];
        struct brace_choice *brace = &answer->braces[k];
        *brace = (struct brace_choice){
            .from = candidate->from, .to = candidate->to, .where = candidate->where, .stops = -1};
        brace->screws_hold =
            brace_screws_hold(work, brace_stick(work), candidate->from, candidate->to);
        for (size_t p = 0; p < trial->loads; p++)
            brace->force = fmax(brace->force, fabs(forces[p * count + k]));
    }
    hand_out_ways(work, elongation, found->set, count);
    for (size_t row = 0; row < answer->lean_count; row++)
        for (size_t p = 0; p < trial->loads; p++)
            if (trial->axes[p] == answer->lean[row].axis) {
                answer->lean[row].with_braces = result.lean[p].movement;
                answer->lean[row].over_braced = !(result.lean[p].ratio <= 1.0);
            }
}

static void search(struct work *work, const struct pushed *base, const struct candidates *all) {
    int stick = brace_stick(work);
    work->answer->brace_stick = work->frame->sticks.items[stick].name;
    struct bar *bars = ARENA_ARRAY(work->arena, struct bar, all->count);
    bool *allowed = ARENA_ARRAY(work->arena, bool, all->count);
    bool any_closed = false;
    for (size_t k = 0; k < all->count; k++) {
        bars[k] = brace_bar(work, stick, all->items[k].from, all->items[k].to);
        allowed[k] = !all->items[k].closed_off;
        any_closed |= all->items[k].closed_off;
    }
    double *pushes[2];
    for (size_t p = 0; p < base->count; p++) {
        pushes[p] = ARENA_ARRAY(work->arena, double, 3 * work->model->slot_count);
        response_gather(work->arena, base->response,
                        (size_t)response_column(base->response,
                                                base->axes[p] ? SET_PUSH_Y : SET_PUSH_X, LEAN_NONE),
                        pushes[p]);
    }
    struct trial *trial = trial_prepare(work->arena, base->system, bars, all->count, pushes,
                                        base->axes, base->count, work->limits);
    double *elongation = elongations(work, bars, all->count);
    struct search_input input = {
        .trial = trial, .ways = work->ways.count, .elongations = elongation, .allowed = allowed};
    struct search_result found = search_fewest(work->arena, &input);
    work->answer->proved = found.proved;
    if (found.found) {
        take_set(work, trial, all, elongation, &found);
        return;
    }
    note(work, found.holds ? "diagonals in the bays tried stop every way to fold, but some "
                             "direction stays softer than its limit"
                           : "diagonals in the bays tried do not stop every way to fold");
    if (!any_closed)
        return;
    for (size_t k = 0; k < all->count; k++)
        allowed[k] = true;
    if (search_fewest(work->arena, &input).found)
        note(work, "with a diagonal in a face that opens or is to be kept open it could be done");
}

/* Movements with joints at low, middle and high stiffness, with and without sheets. */
static void lean_table(struct work *work) {
    struct brace_answer *answer = work->answer;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        struct bar *bars;
        size_t count = work_bars(work, s, true, &bars);
        struct pushed bare = push_frame(work, work->model, s, NULL, 0);
        struct pushed sheeted = count ? push_frame(work, work->model, s, bars, count) : bare;
        answer->lean_count = bare.count;
        for (size_t k = 0; k < bare.count; k++) {
            struct lean_row *row = &answer->lean[k];
            row->axis = bare.axes[k];
            row->without_panels[s] = bare.lean[k].movement;
            row->with_panels[s] = sheeted.lean[k].movement;
            if (s != STIFFNESS_MIDDLE)
                continue;
            row->limit = isfinite(bare.lean[k].limit) ? bare.lean[k].limit : sheeted.lean[k].limit;
            row->over_without = !(bare.lean[k].ratio <= 1.0);
            row->over_with = !(sheeted.lean[k].ratio <= 1.0);
            row->with_braces = NAN;
        }
    }
}

static void remark_sheets(struct work *work) {
    size_t count = work->frame->panels.count;
    work->answer->sheets = ARENA_ARRAY(work->arena, struct sheet_remark, count);
    work->answer->sheet_count = count;
    for (size_t k = 0; k < count; k++)
        work->answer->sheets[k] = (struct sheet_remark){
            (int)k, work->sheets[k].braces, work->sheets[k].reason, work->sheets[k].clear};
}

struct brace_answer *brace_find(struct arena *arena, const struct frame *frame) {
    struct brace_answer *answer = ARENA_NEW(arena, struct brace_answer);
    struct work work = {.arena = arena, .frame = frame, .answer = answer};
    answer->frame = frame;
    answer->problems = problems_new(arena);
    if (!frame->members.count) {
        note(&work, "no frame is described, so there is nothing to brace");
        return answer;
    }
    work.model = model_build(arena, frame, &answer->problems);
    if (!work.model)
        return answer;
    work.loads = loads_build(arena, work.model);
    work.limits = lean_limits(arena, work.model);
    work.sheets = bracing_sheets(arena, work.model);
    struct cells *cells = cells_find(arena, work.model);
    remark_sheets(&work);
    find_ways(&work, cells);
    struct bar *bars;
    size_t count = work_bars(&work, STIFFNESS_MIDDLE, false, &bars);
    struct pushed base = push_frame(&work, work.model, STIFFNESS_MIDDLE, bars, count);
    find_soft(&work, &base);
    lean_table(&work);
    answer->proved = true;
    if (work.ways.count || answer->soft_count) {
        struct candidates candidates = candidates_of(arena, cells);
        answer->fewest = -1;
        search(&work, &base, &candidates);
        try_alternatives(&work, cells);
    }
    return answer;
}
