#include "judge/eccentric.h"

#include "base/vector.h"
#include "model/fastening.h"

#include <math.h>

static bool lapped(const struct run *run, size_t member, int end) {
    const struct member_end *at = &run->model->members[member].ends[end];
    if (at->host || at->connection < 0)
        return false;
    enum connection_type type = run->frame->connections.items[at->connection].type;
    return type == CONNECTION_SCREWED_LAP || type == CONNECTION_GLUED_LAP;
}

static struct eccentric_lap lap_of(const struct run *run, size_t member, int end) {
    const struct model_member *ending = &run->model->members[member];
    const struct member_end *at = &ending->ends[end];
    const struct model_member *host = &run->model->members[run->model->host[at->joint]];
    struct fastening fastening = {.connection = &run->frame->connections.items[at->connection],
                                  .ending = ending,
                                  .host = host,
                                  .wet = run->model->wet};
    struct lap_plane plane = fastening_plane(&fastening);
    struct eccentric_lap lap = {.ending = member,
                                .end = end,
                                .joint = at->joint,
                                .arm = (plane.thick_ending + plane.thick_host) / 2.0};
    double about[3];
    vector_cross(ending->axes[plane.normal], host->axes[0], about);
    lap.share_y = fabs(vector_dot(about, host->axes[1]));
    lap.share_z = fabs(vector_dot(about, host->axes[2]));
    for (int a = 0; a < 3; a++)
        lap.along[a] = vector_dot(ending->axes[a], host->axes[0]);
    return lap;
}

struct eccentric_laps eccentric_laps(const struct run *run) {
    size_t count = run->model->member_count, total = 0;
    struct eccentric_laps laps = {.first = ARENA_ARRAY(run->arena, size_t, count + 1)};
    for (size_t m = 0; m < count; m++)
        for (int end = 0; end < 2; end++)
            if (lapped(run, m, end)) {
                laps.first[run->model->host[run->model->members[m].ends[end].joint] + 1]++;
                total++;
            }
    for (size_t m = 0; m < count; m++)
        laps.first[m + 1] += laps.first[m];
    laps.items = ARENA_ARRAY(run->arena, struct eccentric_lap, total);
    size_t *next = ARENA_ARRAY(run->arena, size_t, count);
    for (size_t m = 0; m < count; m++)
        for (int end = 0; end < 2; end++)
            if (lapped(run, m, end)) {
                size_t host = (size_t)run->model->host[run->model->members[m].ends[end].joint];
                laps.items[laps.first[host] + next[host]++] = lap_of(run, m, end);
            }
    return laps;
}

static void worsen(double *moment, double by) {
    *moment += copysign(by, *moment);
}

void eccentric_add(const struct run *run, const struct eccentric_laps *laps, size_t member,
                   const struct answer *answer, struct segment_forces *at) {
    const struct model_member *host = &run->model->members[member];
    for (size_t k = laps->first[member]; k < laps->first[member + 1]; k++) {
        const struct eccentric_lap *lap = &laps->items[k];
        double ends[6], along = 0.0;
        if (answer->slack && answer->slack[lap->ending])
            continue;
        answer_at_end(run, answer, lap->ending, lap->end, ends);
        for (int a = 0; a < 3; a++)
            along += ends[a] * lap->along[a];
        double moment = fabs(along) * lap->arm;
        for (size_t s = 0; s < host->segment_count; s++)
            for (int side = 0; side < 2; side++) {
                if (run->model->segments[host->first_segment + s].joints[side] != lap->joint)
                    continue;
                double *forces = at[s].forces[side ? at[s].count - 1 : 0];
                worsen(&forces[FORCE_MY], moment * lap->share_y);
                worsen(&forces[FORCE_MZ], moment * lap->share_z);
            }
    }
}
