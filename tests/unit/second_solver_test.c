/* Random frames: the program against the second solver of the tests. */
#include "second_solver.h"

#include "judge/judge.h"
#include "near.h"
#include "second_frame.h"
#include "solve/stations.h"
#include "solve/trust.h"

#define AGREE 1e-9

/* How far two lists are apart, over the largest entry; NAN and infinity count as far. */
struct gap {
    double largest, off;
};

static void widen(struct gap *gap, double got, double want) {
    gap->largest = fmax(gap->largest, fabs(want));
    double off = fabs(got - want);
    if (!(off <= gap->off))
        gap->off = isfinite(off) ? off : INFINITY;
}

static double share(const struct gap *gap, double least) {
    return gap->off == 0.0 ? 0.0 : gap->off / fmax(gap->largest, least);
}

static void same_movements(const struct second *second, const struct second_answer *want,
                           const double (*got)[6], const char *which) {
    size_t joints = second->frame->joints.count;
    struct gap move = {0}, turn = {0};
    double *apart = ARENA_ARRAY(second->arena, double, 3 * joints);
    for (size_t j = 0; j < joints; j++)
        for (int c = 0; c < 3; c++) {
            widen(&move, got[j][c], want->joints[j][c]);
            turn.largest = fmax(turn.largest, fabs(want->joints[j][3 + c]));
            apart[3 * j + c] = got[j][3 + c] - want->joints[j][3 + c];
        }
    second_leave_out_spins(second, apart);
    for (size_t k = 0; k < 3 * joints; k++)
        if (!(fabs(apart[k]) <= turn.off))
            turn.off = isfinite(apart[k]) ? fabs(apart[k]) : INFINITY;
    cr_assert(share(&move, 1e-15) <= AGREE, "%s: movements off by %.17g of %.17g m", which,
              move.off, move.largest);
    cr_assert(share(&turn, fmax(move.largest, 1e-12)) <= AGREE,
              "%s: turnings off by %.17g of %.17g", which, turn.off, turn.largest);
}

static void same_reactions(const struct second *second, const struct second_answer *want,
                           const double (*got)[6], const char *which) {
    struct gap force = {0}, moment = {0};
    for (size_t k = 0; k < second->frame->supports.count; k++)
        for (int c = 0; c < 6; c++)
            widen(c < 3 ? &force : &moment, got[k][c], want->reactions[k][c]);
    cr_assert(share(&force, 1e-6) <= AGREE, "%s: reactions off by %.17g of %.17g N", which,
              force.off, force.largest);
    cr_assert(share(&moment, force.largest) <= AGREE, "%s: moments of supports off by %.17g", which,
              moment.off);
}

static void same_stations(const struct second *second, const struct second_answer *want,
                          int load_case, const struct case_result *got, const char *which) {
    struct gap force = {0}, moment = {0};
    for (size_t m = 0; m < second->frame->members.count; m++) {
        const struct second_stick *stick = &second->sticks[m];
        const struct stations *at = &got->members[m];
        size_t s = stick->first, in_segment = 0;
        for (size_t i = 0; i < at->count; i++, in_segment++) {
            const struct second_segment *segment = &second->segments[s];
            double x = at->at[i] - segment->start, out[6];
            NEAR_ABS(in_segment ? 0.0 : x, 0.0, 1e-9);
            bool after = in_segment > 0 && at->at[i] == at->at[i - 1];
            bool pair = i + 1 < at->count && at->at[i] == at->at[i + 1];
            bool ends = x > segment->length - 1e-9;
            /* the two sides of a load share one place */
            double side = after ? 1e-12 : pair && !ends ? -1e-12 : 0.0;
            second_forces(second, want, load_case, s, x + side, true, out);
            const double *lists[6] = {at->N, at->Vy, at->Vz, at->T, at->My, at->Mz};
            for (int c = 0; c < 6; c++)
                widen(c < 3 ? &force : &moment, lists[c][i], out[c]);
            if (ends && i + 1 < at->count) {
                s++;
                in_segment = (size_t)-1;
            }
        }
        cr_assert(s + 1 == stick->first + stick->count, "%s: stations of stick %zu", which, m);
    }
    cr_assert(share(&force, 1e-6) <= AGREE, "%s: forces along sticks off by %.17g of %.17g N",
              which, force.off, force.largest);
    cr_assert(share(&moment, fmax(force.largest, 1e-6)) <= AGREE,
              "%s: moments along sticks off by %.17g of %.17g N-m", which, moment.off,
              moment.largest);
}

/* The same through the solver itself, for one stiffness: movements, reactions, end forces. */
static void same_response(struct arena *arena, const struct frame *frame, int range,
                          const char *which) {
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame, &problems);
    const struct loads *loads = loads_build(arena, model);
    const struct system *system = system_build(arena, model, (enum stiffness)range, NULL, 0);
    const struct response *response = response_solve(arena, system, loads, false);
    const struct second *second = second_build(arena, frame, range);
    cr_assert(second->segment_count == model->segment_count, "%s: segments", which);
    for (size_t k = 0; k < loads->case_count; k++) {
        int column = response_column(response, loads->cases[k].sets[0], LEAN_NONE);
        struct second_answer want = second_solve(second, loads->cases[k].frame_case);
        if (want.driven || loads->cases[k].set_count != 1 || column < 0)
            continue;
        double(*got)[6] = arena_take(arena, frame->joints.count, sizeof *got);
        for (size_t j = 0; j < frame->joints.count; j++)
            for (int c = 0; c < 3; c++) {
                got[j][c] = response->slots[column][3 * model->move_slot[j] + c];
                if (model->turn_slot[j] >= 0)
                    got[j][3 + c] = response->slots[column][3 * model->turn_slot[j] + c];
            }
        const char *label = arena_print(arena, "%s, %s stiffness, case %s", which,
                                        range == SECOND_LOW    ? "low"
                                        : range == SECOND_HIGH ? "high"
                                                               : "middle",
                                        loads->cases[k].name);
        same_movements(second, &want, (const double(*)[6])got, label);
        same_reactions(second, &want, (const double(*)[6])response->reactions[column], label);
        struct gap force = {0}, moment = {0};
        for (size_t s = 0; s < model->segment_count; s++)
            for (int i = 0; i < 12; i++)
                widen(i % 6 < 3 ? &force : &moment, response->ends[column][12 * s + i],
                      want.ends[s][i]);
        cr_assert(share(&force, 1e-6) <= AGREE, "%s: end forces off by %.17g of %.17g", label,
                  force.off, force.largest);
        cr_assert(share(&moment, fmax(force.largest, 1e-6)) <= AGREE,
                  "%s: end moments off by %.17g of %.17g", label, moment.off, moment.largest);
    }
}

static int case_number(const struct frame *frame, const char *name) {
    for (size_t k = 0; k < frame->cases.count; k++)
        if (strcmp(frame->cases.items[k], name) == 0)
            return (int)k;
    cr_assert_fail("case %s", name);
    return -1;
}

/* Rank of the free movements, seen at the joints' translations. */
static size_t fold_count(const struct second *second) {
    size_t joints = second->frame->joints.count, kept = 0;
    double **base = ARENA_ARRAY(second->arena, double *, second->free_count);
    for (size_t f = 0; f < second->free_count; f++) {
        double *v = ARENA_ARRAY(second->arena, double, 3 * joints);
        for (size_t k = 0; k < 3 * joints; k++)
            v[k] =
                second->move[k / 3][k % 3] < 0 ? 0.0 : second->free[f][second->move[k / 3][k % 3]];
        double size = 0.0;
        for (size_t b = 0; b < 2 * kept; b++) {
            double dot = 0.0;
            for (size_t k = 0; k < 3 * joints; k++)
                dot += v[k] * base[b % kept][k];
            for (size_t k = 0; k < 3 * joints; k++)
                v[k] -= dot * base[b % kept][k];
        }
        for (size_t k = 0; k < 3 * joints; k++)
            size += v[k] * v[k];
        size = sqrt(size);
        if (size < 1e-5)
            continue;
        for (size_t k = 0; k < 3 * joints; k++)
            v[k] /= size;
        base[kept++] = v;
    }
    return kept;
}

/* A frame that moves by a metre: nearly loose, and no number of it has nine good digits. */
static bool very_soft(const struct second *second) {
    for (size_t k = 0; k < second->frame->cases.count; k++) {
        struct second_answer answer = second_solve(second, (int)k);
        for (size_t j = 0; j < second->frame->joints.count; j++)
            for (int c = 0; c < 3; c++)
                if (!answer.driven && !(fabs(answer.joints[j][c]) < 1.0))
                    return true;
    }
    return false;
}

/* The program must know of a frame that is loose, in as many ways. */
static void finds_the_fold(struct arena *arena, const struct frame *frame,
                           const struct second *second, unsigned seed) {
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame, &problems);
    const struct system *system = system_build(arena, model, STIFFNESS_MIDDLE, NULL, 0);
    cr_assert(system->trusted, "seed %u: not trusted", seed);
    cr_assert(system->mode_count == fold_count(second), "seed %u: %zu ways to fold, are %zu", seed,
              system->mode_count, fold_count(second));
}

/* True where the frame stands and was compared. */
static bool compare_frame(struct random_frame how) {
    struct arena *arena = arena_new();
    const char *text = random_frame_text(arena, how);
    struct frame *frame = frame_of_text(arena, text);
    const struct second *second = second_build(arena, frame, SECOND_MIDDLE);
    bool compared = !second->folds && !very_soft(second);
    if (compared) {
        struct result result;
        struct judge_options options = {0};
        judge_frame(arena, frame, &options, &result);
        bool driven = false;
        for (size_t k = 0; k < frame->cases.count; k++)
            driven |= second_solve(second, (int)k).driven;
        for (size_t k = 0; k < result.cases.count; k++) {
            const struct case_result *got = &result.cases.items[k];
            int load_case = case_number(frame, got->name);
            struct second_answer want = second_solve(second, load_case);
            const char *which = arena_print(arena, "seed %u, case %s", how.seed, got->name);
            if (want.driven)
                continue;
            cr_assert(got->solved, "%s: not solved", which);
            same_movements(second, &want, (const double(*)[6])got->joints, which);
            same_reactions(second, &want, (const double(*)[6])got->reactions, which);
            same_stations(second, &want, load_case, got, which);
        }
        cr_assert(driven == (result.problems.count > 0), "seed %u: twist told %zu, is %d", how.seed,
                  result.problems.count, driven);
        cr_assert(result.cases.count >= 4, "seed %u: %zu cases, verdict %d, %s, errors %g %g",
                  how.seed, result.cases.count, (int)result.verdict,
                  result.trouble ? result.trouble : "", result.backward_error,
                  result.equilibrium_error);
        if (how.seed % 3 == 0) {
            same_response(arena, frame, SECOND_LOW, arena_print(arena, "seed %u", how.seed));
            same_response(arena, frame, SECOND_HIGH, arena_print(arena, "seed %u", how.seed));
        }
    }
    if (second->folds)
        finds_the_fold(arena, frame, second, how.seed);
    arena_free(arena);
    return compared;
}

static void compare_many(unsigned first, int wanted, bool plane) {
    int compared = 0, loose = 0;
    for (unsigned seed = first; compared < wanted && seed < first + 1000; seed++) {
        struct random_frame how = {
            .seed = seed, .us = seed % 2, .plane = plane, .combine = true, .factor = 1.0};
        if (compare_frame(how))
            compared++;
        else
            loose++;
    }
    cr_assert(compared == wanted, "%d of %d frames compared, %d are loose", compared, wanted,
              loose);
}

Test(second_solver, frames_in_space_1) {
    compare_many(0, 50, false);
}
Test(second_solver, frames_in_space_2) {
    compare_many(1000, 50, false);
}
Test(second_solver, frames_in_space_3) {
    compare_many(2000, 50, false);
}
Test(second_solver, frames_in_space_4) {
    compare_many(3000, 50, false);
}
Test(second_solver, plane_frames) {
    compare_many(4000, 20, true);
}
