#include "bracing/cells.h"
#include "fold/readable.h"
#include "fold/ways.h"
#include "fold/words.h"
#include "judge/steps.h"
#include "lean/lean.h"

#include <math.h>

/* Joints that move under movements of the slots. */
static double (*joint_moves(const struct run *run, const double *slots))[3] {
    double(*moves)[3] = arena_take(run->arena, run->frame->joints.count, sizeof *moves);
    for (size_t j = 0; j < run->frame->joints.count; j++)
        for (int c = 0; c < 3; c++)
            moves[j][c] = slots[3 * run->model->move_slot[j] + c];
    return moves;
}

void judge_ways(struct run *run) {
    struct folding *folding = &run->result->folding;
    struct fold_ways bare = fold_ways(run->arena, run->model, NULL, 0);
    struct bar *bars;
    size_t count =
        bracing_bars(run->arena, run->model, run->sheets, STIFFNESS_MIDDLE, true, &bars, NULL);
    folding->known = true;
    folding->ways = folding->ways_with_panels = (int)bare.count;
    folding->self_stress_known = bare.self_stress_known;
    folding->self_stress = (int)bare.self_stress;
    if (count)
        folding->ways_with_panels = (int)fold_ways(run->arena, run->model, bars, count).count;
    size_t sure = run->bar_counts[STIFFNESS_MIDDLE];
    run->ways = ARENA_NEW(run->arena, struct fold_ways);
    *run->ways = sure ? fold_ways(run->arena, run->model, run->bars[STIFFNESS_MIDDLE], sure) : bare;
    if (run->ways->count && run->model->has_screws)
        run_caution(run, arena_print(run->arena,
                                     "only the screws keep it square: with hinges for joints the "
                                     "frame could fold in %zu way%s; batten brace says how, and "
                                     "where diagonals go",
                                     run->ways->count, run->ways->count == 1 ? "" : "s"));
}

void judge_mark_sway(struct run *run) {
    static const int pushes[] = {SET_PUSH_X, SET_PUSH_Y};
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    double *limits = lean_limits(run->arena, run->model);
    for (size_t k = 0; k < run->ways->count; k++)
        holding_mark_sway(run->model, run->holding, (const double(*)[3])run->ways->moves[k]);
    for (int axis = 0; axis < 2; axis++) {
        int column = response_column(response, pushes[axis], LEAN_NONE);
        if (column < 0 || !response->solvable[column])
            continue;
        const double *slots = response->slots[column];
        if (!(lean_worst(run->model, limits, slots).ratio <= 1.0))
            holding_mark_sway(run->model, run->holding,
                              (const double(*)[3])joint_moves(run, slots));
    }
}

static void add_motions(struct run *run, double (*const *moves)[3], size_t count) {
    struct cells *cells = cells_find(run->arena, run->model);
    struct motion *motions = ARENA_ARRAY(run->arena, struct motion, count);
    for (size_t k = 0; k < count; k++)
        motions[k] = fold_motion(run->arena, cells, (const double(*)[3])moves[k]);
    run->result->folding.motions = motions;
    run->result->folding.motion_count = count;
}

/* The ways to fold as fastened, readable. */
static struct fold_ways modes_of(const struct run *run) {
    const struct system *system = run->systems[STIFFNESS_MIDDLE];
    struct fold_ways modes = {.count = system->mode_count};
    modes.moves = arena_take(run->arena, modes.count, sizeof *modes.moves);
    for (size_t k = 0; k < system->mode_count; k++)
        modes.moves[k] = joint_moves(run, system->modes[k].slots);
    fold_readable(run->arena, run->model, &modes);
    return modes;
}

void judge_fold(struct run *run) {
    struct fold_ways modes = modes_of(run);
    add_motions(run, modes.moves, modes.count);
}

void judge_idle_modes(struct run *run) {
    struct fold_ways modes = modes_of(run);
    struct cells *cells = modes.count ? cells_find(run->arena, run->model) : NULL;
    for (size_t k = 0; k < modes.count; k++) {
        struct motion motion = fold_motion(run->arena, cells, (const double(*)[3])modes.moves[k]);
        run_caution(run, arena_print(run->arena,
                                     "%s No load here drives it, so the rest could be solved; the "
                                     "smallest other load will",
                                     motion.sentence));
    }
}

void judge_fall(struct run *run, const double *shape) {
    double(*moves)[3] = arena_take(run->arena, run->frame->joints.count, sizeof *moves);
    for (size_t j = 0; j < run->frame->joints.count; j++)
        for (int c = 0; c < 3; c++)
            moves[j][c] = shape[3 * j + c];
    double(*list[1])[3] = {moves};
    add_motions(run, list, 1);
}
