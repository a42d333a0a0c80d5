#include "judge/steps.h"
#include "solve/stations.h"

#include <math.h>
#include <string.h>

static void member_stations(struct run *run, size_t member, const double *weights,
                            struct stations *out) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    const struct model_member *stick = &run->model->members[member];
    struct station **places = ARENA_ARRAY(run->arena, struct station *, stick->segment_count);
    size_t *counts = ARENA_ARRAY(run->arena, size_t, stick->segment_count);
    size_t total = 0;
    for (size_t k = 0; k < stick->segment_count; k++)
        total += counts[k] =
            stations_of(run->arena, response, stick->first_segment + k, &places[k]);
    double *room = ARENA_ARRAY(run->arena, double, 7 * total);
    *out = (struct stations){.count = total,
                             .at = room,
                             .N = room + total,
                             .Vy = room + 2 * total,
                             .Vz = room + 3 * total,
                             .T = room + 4 * total,
                             .My = room + 5 * total,
                             .Mz = room + 6 * total};
    size_t i = 0;
    for (size_t k = 0; k < stick->segment_count; k++) {
        size_t segment = stick->first_segment + k;
        struct stick_state state = stick_state(run->arena, response, segment, weights);
        for (size_t p = 0; p < counts[k]; p++, i++) {
            double forces[FORCE_COUNT];
            stick_forces(&state, places[k][p].x, places[k][p].after, forces);
            out->at[i] = run->model->segments[segment].start + places[k][p].x;
            out->N[i] = forces[FORCE_N];
            out->Vy[i] = forces[FORCE_VY];
            out->Vz[i] = forces[FORCE_VZ];
            out->T[i] = forces[FORCE_T];
            out->My[i] = forces[FORCE_MY];
            out->Mz[i] = forces[FORCE_MZ];
        }
    }
}

static void joint_movements(const struct run *run, const double *weights, double (*joints)[6]) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    const struct model *model = run->model;
    for (size_t c = 0; c < response->live_count; c++) {
        if (weights[c] == 0.0)
            continue;
        for (size_t j = 0; j < run->frame->joints.count; j++)
            for (int i = 0; i < 3; i++) {
                joints[j][i] += weights[c] * response->slots[c][3 * model->move_slot[j] + i];
                if (model->turn_slot[j] >= 0)
                    joints[j][3 + i] +=
                        weights[c] * response->slots[c][3 * model->turn_slot[j] + i];
            }
    }
}

static void single_case(struct run *run, const struct load_case *load_case) {
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    struct case_result out = {.name = load_case->name, .solved = true};
    double *weights = ARENA_ARRAY(run->arena, double, response->column_count);
    for (int k = 0; k < load_case->set_count; k++) {
        int column = response_column(response, load_case->sets[k], LEAN_NONE);
        weights[column] = 1.0;
        out.solved &= response->solvable[column];
    }
    out.joints = arena_take(run->arena, run->frame->joints.count, sizeof *out.joints);
    out.reactions = arena_take(run->arena, run->frame->supports.count, sizeof *out.reactions);
    out.members = ARENA_ARRAY(run->arena, struct stations, run->model->member_count);
    if (out.solved) {
        joint_movements(run, weights, out.joints);
        for (size_t c = 0; c < response->live_count; c++)
            for (size_t s = 0; weights[c] != 0.0 && s < run->frame->supports.count; s++)
                for (int i = 0; i < 6; i++)
                    out.reactions[s][i] += weights[c] * response->reactions[c][s][i];
        for (size_t m = 0; m < run->model->member_count; m++)
            member_stations(run, m, weights, &out.members[m]);
    }
    ARRAY_PUSH(run->arena, &run->result->cases, out);
}

static void combinations(struct run *run) {
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        const struct load_combination *in = &run->loads->combinations[c];
        struct combination_part *parts =
            ARENA_ARRAY(run->arena, struct combination_part, in->term_count);
        for (size_t t = 0; t < in->term_count; t++)
            parts[t] = (struct combination_part){run->loads->cases[in->terms[t].load_case].name,
                                                 in->terms[t].factor};
        struct combination_result out = {.name = in->name,
                                         .parts = parts,
                                         .part_count = in->term_count,
                                         .duration_factor =
                                             table_duration_factor(in->duration).value,
                                         .solved = true,
                                         .buckling_factor = NAN,
                                         .buckling_factor_crept = NAN};
        for (size_t x = 0; x < run->mix_count; x++)
            if (run->mixes[x].combination == (int)c)
                out.solved &= run->mixes[x].solved;
        ARRAY_PUSH(run->arena, &run->result->combinations, out);
    }
}

void judge_cases(struct run *run) {
    for (size_t c = 0; c < run->loads->case_count; c++)
        single_case(run, &run->loads->cases[c]);
    combinations(run);
}
