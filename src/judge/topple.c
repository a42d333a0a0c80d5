#include "bracing/cells.h"
#include "fold/words.h"
#include "judge/standing.h"
#include "judge/steps.h"

/* The whole frame turns about the edge. */
static double (*turning(const struct run *run, const struct tip_edge *edge))[3] {
    double(*moves)[3] = arena_take(run->arena, run->frame->joints.count, sizeof *moves);
    for (size_t j = 0; j < run->frame->joints.count; j++)
        edge_movement(edge, run->frame->joints.items[j].at, moves[j]);
    return moves;
}

static struct motion topple(const struct run *run, int edge) {
    struct motion motion = {
        .sentence = "Part of it tips by its own weight: no set of its feet holds it up by pushing "
                    "alone.",
        .tips = true};
    if (edge < 0)
        return motion;
    const struct tip_edge *over = &run->footprint->edges[edge];
    motion = fold_motion(run->arena, cells_find(run->arena, run->model),
                         (const double(*)[3])turning(run, over));
    motion.sentence = arena_print(run->arena,
                                  "It tips %s: the middle of its own weight lies "
                                  "beyond.",
                                  footprint_over(run->arena, run->footprint, over));
    motion.tips = true;
    return motion;
}

bool judge_keeps_its_feet(struct run *run) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    int self = response_column(response, SET_SELF, LEAN_NONE);
    if (self < 0 || run->footprint->feet == 0)
        return true;
    struct mix mix = {.stands = true, .edge = -1};
    mix.weights[STIFFNESS_MIDDLE] = ARENA_ARRAY(run->arena, double, response->column_count);
    mix.weights[STIFFNESS_MIDDLE][self] = 1.0;
    standing_settle(run, STIFFNESS_MIDDLE, &mix);
    if (!mix.tips)
        return true;
    struct motion *motion = ARENA_NEW(run->arena, struct motion);
    *motion = topple(run, mix.edge);
    run->result->folding.motions = motion;
    run->result->folding.motion_count = 1;
    return false;
}
