#include "judge/answers.h"

#include "sway/second_order.h"

#include <string.h>

struct answer answer_first_order(const struct run *run, const struct mix *mix,
                                 enum stiffness stiffness) {
    static const char *const how[STIFFNESS_COUNT] = {"joints as soft as they may be",
                                                     "joints at their middle stiffness",
                                                     "joints as stiff as they may be"};
    return (struct answer){.mix = mix,
                           .how = run->model->has_screws ? how[stiffness] : "",
                           .response = run->responses[stiffness],
                           .weights = mix->solved ? mix->weights[stiffness] : NULL,
                           .slack = mix->stances[stiffness].slack};
}

struct answer answer_second_order(const struct run *run, const struct mix *mix) {
    enum stiffness low = run_uses(run, STIFFNESS_LOW) ? STIFFNESS_LOW : STIFFNESS_MIDDLE;
    bool stands = mix->solved && mix->second && mix->second->stands;
    return (struct answer){.mix = mix,
                           .how = "second order, joints as soft as they may be",
                           .second = stands ? mix->second : NULL,
                           .slack = mix->stances[low].slack};
}

struct answers answers_of(const struct run *run) {
    struct answers answers = {
        .items = ARENA_ARRAY(run->arena, struct answer, (STIFFNESS_COUNT + 1) * run->mix_count)};
    for (int s = 0; s < STIFFNESS_COUNT; s++)
        for (size_t x = 0; run_uses(run, s) && x < run->mix_count; x++) {
            struct answer answer = answer_first_order(run, &run->mixes[x], s);
            if (answer.weights)
                answers.items[answers.count++] = answer;
        }
    for (size_t x = 0; x < run->mix_count; x++) {
        struct answer answer = answer_second_order(run, &run->mixes[x]);
        if (answer.second)
            answers.items[answers.count++] = answer;
    }
    return answers;
}

void answer_at_end(const struct run *run, const struct answer *answer, size_t member, int end,
                   double out[6]) {
    const struct model_member *stick = &run->model->members[member];
    size_t segment = stick->first_segment + (end ? stick->segment_count - 1 : 0);
    memset(out, 0, 6 * sizeof *out);
    if (answer->second) {
        memcpy(out, &answer->second->ends[segment][6 * end], 6 * sizeof *out);
        return;
    }
    for (size_t c = 0; c < answer->response->live_count; c++) {
        double weight = answer->weights[c];
        if (weight == 0.0)
            continue;
        const double *ends = &answer->response->ends[c][12 * segment + 6 * (size_t)end];
        for (int k = 0; k < 6; k++)
            out[k] += weight * ends[k];
    }
}
