#include "judge/steps.h"
#include "solve/stations.h"

#include "base/vector.h"

#include <math.h>
#include <string.h>

enum { PARTS = 12 }; /* of a segment */

static int combination_called(const struct run *run, const char *name) {
    for (size_t c = 0; c < run->loads->combination_count; c++)
        if (strcmp(run->loads->combinations[c].name, name) == 0)
            return (int)c;
    return -1;
}

/* The combination of the worst check that names one; else the last one: the fullest. */
static int telling_combination(const struct run *run) {
    for (size_t k = 0; k < run->result->checks.count; k++) {
        int found = combination_called(run, run->result->checks.items[k].combination);
        if (found >= 0)
            return found;
    }
    return (int)run->loads->combination_count - 1;
}

static struct bent_stick bent_stick(const struct run *run, size_t member, const double *weights) {
    const struct model_member *stick = &run->model->members[member];
    size_t room = (PARTS + 1) * stick->segment_count;
    struct bent_stick bent = {.at = ARENA_ARRAY(run->arena, double, room),
                              .by = arena_take(run->arena, room, sizeof *bent.by)};
    for (size_t k = 0; k < stick->segment_count; k++) {
        size_t segment = stick->first_segment + k;
        struct stick_state state =
            stick_state(run->arena, run->responses[STIFFNESS_MIDDLE], segment, weights);
        for (int part = 0; part <= PARTS; part++, bent.count++) {
            double local[3], x = state.length * part / PARTS;
            stick_movement(&state, x, local, NULL);
            bent.at[bent.count] = run->model->segments[segment].start + x;
            for (int c = 0; c < 3; c++)
                for (int axis = 0; axis < 3; axis++)
                    bent.by[bent.count][c] += local[axis] * stick->axes[axis][c];
        }
    }
    return bent;
}

void judge_bent(struct run *run) {
    const char *name = run->options->bent_under;
    if (!name)
        return;
    int combination = name[0] ? combination_called(run, name) : telling_combination(run);
    if (combination < 0)
        return;
    const struct mix *mix = &run->upright[combination];
    if (!mix->solved)
        return;
    struct bent_stick *members =
        ARENA_ARRAY(run->arena, struct bent_stick, run->model->member_count);
    struct bent *bent = &run->result->bent;
    for (size_t m = 0; m < run->model->member_count; m++) {
        members[m] = bent_stick(run, m, mix->weights[STIFFNESS_MIDDLE]);
        for (size_t k = 0; k < members[m].count; k++)
            bent->largest = fmax(bent->largest, vector_length(members[m].by[k]));
    }
    bent->members = members;
    bent->combination = run->loads->combinations[combination].name;
}
