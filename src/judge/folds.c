#include "fold/ways.h"
#include "fold/words.h"
#include "judge/steps.h"

/* How many ways there are with every fastening taken as a hinge. */
void judge_ways(struct run *run) {
    struct fold_ways ways = fold_ways(run->arena, run->model, NULL, 0);
    run->result->folding = (struct folding){.known = true,
                                            .ways = (int)ways.count,
                                            .ways_with_panels = (int)ways.count,
                                            .self_stress_known = ways.self_stress_known,
                                            .self_stress = (int)ways.self_stress};
}

/* The ways in which the frame folds as it is fastened, in words and as movements. */
void judge_fold(struct run *run) {
    const struct system *system = run->systems[STIFFNESS_MIDDLE];
    struct motion *motions = ARENA_ARRAY(run->arena, struct motion, system->mode_count);
    for (size_t k = 0; k < system->mode_count; k++) {
        double(*moves)[3] = arena_take(run->arena, run->frame->joints.count, sizeof *moves);
        for (size_t j = 0; j < run->frame->joints.count; j++)
            for (int c = 0; c < 3; c++)
                moves[j][c] = system->modes[k].slots[3 * run->model->move_slot[j] + c];
        motions[k] = fold_motion(run->arena, run->frame, (const double(*)[3])moves);
    }
    run->result->folding.motions = motions;
    run->result->folding.motion_count = system->mode_count;
}
