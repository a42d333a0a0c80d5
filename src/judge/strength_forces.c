#include "judge/strength.h"

#include <string.h>

/* Does any mix use the column? Patterns of trays and feet that never lift are in none. */
static bool mixed(const struct run *run, const struct response *response, size_t column) {
    enum stiffness stiffness = response->system->stiffness;
    for (size_t x = 0; x < run->mix_count; x++)
        if (run->mixes[x].weights[stiffness][column] != 0.0)
            return true;
    return false;
}

struct column_forces strength_tabulate(const struct stick_work *work,
                                       const struct response *response,
                                       const struct segment_forces *at) {
    struct arena *arena = work->run->arena;
    struct column_forces forces = {.table = ARENA_ARRAY(arena, double *, response->live_count)};
    for (size_t k = 0; k < work->stick->segment_count; k++)
        forces.places += at[k].count;
    double *weights = ARENA_ARRAY(arena, double, response->live_count);
    for (size_t c = 0; c < response->live_count; c++) {
        if (!mixed(work->run, response, c))
            continue;
        forces.table[c] = ARENA_ARRAY(arena, double, FORCE_COUNT *forces.places);
        weights[c] = 1.0;
        double *out = forces.table[c];
        for (size_t k = 0; k < work->stick->segment_count; k++) {
            struct stick_state state = stick_state(arena, response, at[k].segment, weights);
            for (size_t i = 0; i < at[k].count; i++, out += FORCE_COUNT)
                stick_forces(&state, at[k].stations[i].x, at[k].stations[i].after, out);
        }
        weights[c] = 0.0;
    }
    return forces;
}

void strength_mix(const struct column_forces *columns, size_t column_count, const double *weights,
                  double (*out)[FORCE_COUNT]) {
    double *sum = out[0];
    memset(sum, 0, FORCE_COUNT * columns->places * sizeof *sum);
    for (size_t c = 0; c < column_count; c++) {
        double weight = weights[c];
        const double *column = columns->table[c];
        for (size_t i = 0; weight != 0.0 && i < FORCE_COUNT * columns->places; i++)
            sum[i] += weight * column[i];
    }
}
