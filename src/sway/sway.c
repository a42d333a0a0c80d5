#include "sway/sway.h"

#include "solve/kernel.h"
#include "solve/sweep.h"
#include "sway/assemble.h"
#include "sway/lanczos.h"
#include "sway/pieces.h"

#include <math.h>
#include <string.h>

enum { PIECES = 4 };
/* A segment stays whole where N L2/EI is under this share of the largest in the frame. The frame
 * buckles before the largest passes 39.5 (a stick held fast at both ends), so the others stay under
 * 0.1 then, where one piece is right to a hundred-thousandth. */
#define SLIGHT (1.0 / 400.0)
/* A pivot of K under this share of its diagonal: nothing resists some movement. */
#define LOOSE 1e-12
/* How far below and above a factor pivots are counted to certify it. */
#define BESIDE 1e-6

struct sway_frame {
    const struct pieces *pieces;
    const int *cuts;                          /* per segment */
    struct sparse elastic, geometric, factor; /* factor of K */
    struct entries entries;                   /* of Kg */
    bool folds, compressed;
};

/* N L2/EI of the most compressed end; 0 where there is only pull. */
static double slenderness(const struct sway_input *input, size_t segment) {
    const struct model *model = input->setting.model;
    const struct segment *cut = &model->segments[segment];
    const struct model_member *member = &model->members[cut->member];
    double push = -fmin(input->axial[segment][0], input->axial[segment][1]);
    double EI = pieces_stiffness(&input->setting, member) * pieces_least_inertia(model, member);
    if (!(push > 0.0) || !(EI > 0.0))
        return 0.0;
    return push * cut->length * cut->length / EI;
}

int *sway_cuts(struct arena *arena, const struct sway_input *input) {
    const struct sway_setting *setting = &input->setting;
    size_t count = setting->model->segment_count;
    int *cuts = ARENA_ARRAY(arena, int, count);
    double *slender = ARENA_ARRAY(arena, double, count), largest = 0.0;
    for (size_t s = 0; s < count; s++) {
        if (!setting->excluded || !setting->excluded[setting->model->segments[s].member])
            slender[s] = slenderness(input, s);
        largest = fmax(largest, slender[s]);
    }
    for (size_t s = 0; s < count; s++) {
        bool matters = slender[s] > 0.0 && slender[s] >= SLIGHT * largest;
        cuts[s] = !matters ? 1 : input->pieces > 0 ? input->pieces : PIECES;
    }
    return cuts;
}

static bool any_compressed(const struct pieces *pieces, const double (*axial)[2]) {
    for (size_t p = 0; p < pieces->count; p++)
        if (!(piece_axial(pieces, &pieces->items[p], axial) >= 0.0))
            return true;
    return false;
}

/* Does nothing resist some movement? Its pivot is what round-off left. */
static bool loose(const struct sparse *elastic, const struct sparse *factor) {
    for (size_t i = 0; i < elastic->blocks->unknowns; i++)
        if (!(*sparse_diagonal(factor, i) > LOOSE * *sparse_diagonal(elastic, i)))
            return true;
    return false;
}

/* The same sticks are left out. */
static bool same_sticks(const struct sway_setting *a, const struct sway_setting *b) {
    if (!a->excluded || !b->excluded)
        return a->excluded == b->excluded;
    return memcmp(a->excluded, b->excluded, a->model->member_count * sizeof *a->excluded) == 0;
}

/* The same joints are held. */
static bool same_held(const struct sway_setting *a, const struct sway_setting *b) {
    if (!a->held || !b->held)
        return a->held == b->held;
    return memcmp(a->held, b->held, a->model->slot_count * sizeof *a->held) == 0;
}

bool sway_same_setting(const struct sway_setting *a, const struct sway_setting *b) {
    return a->model == b->model && a->stiffness == b->stiffness &&
           a->least_stiffness == b->least_stiffness && a->creep_sticks == b->creep_sticks &&
           a->creep_joints == b->creep_joints && a->bars == b->bars &&
           a->bar_count == b->bar_count && same_held(a, b) && same_sticks(a, b);
}

static bool serves(const struct sway_frame *other, const struct sway_input *input,
                   const int *cuts) {
    return other && sway_same_setting(other->pieces->setting, &input->setting) &&
           memcmp(other->cuts, cuts, input->setting.model->segment_count * sizeof *cuts) == 0;
}

static void make_elastic(struct arena *arena, struct sway_frame *frame,
                         const struct sway_input *input, const int *cuts) {
    struct sway_setting *kept = ARENA_NEW(arena, struct sway_setting);
    *kept = input->setting;
    frame->cuts = cuts;
    frame->pieces = pieces_cut(arena, kept, cuts);
    frame->elastic = assemble_elastic(arena, frame->pieces);
    struct arena_mark mark = arena_mark(arena);
    frame->factor = sparse_copy(arena, &frame->elastic);
    struct pivots pivots = sparse_factor(arena, &frame->factor, NULL);
    frame->folds = !pivots_positive(&pivots) || loose(&frame->elastic, &frame->factor);
    if (input->axial)
        return;
    arena_rewind(arena, mark);
    frame->factor.items = NULL;
}

struct sway_frame *sway_prepare(struct arena *arena, const struct sway_input *input) {
    struct sway_frame *frame = ARENA_NEW(arena, struct sway_frame);
    const int *cuts = input->cuts ? input->cuts : sway_cuts(arena, input);
    if (serves(input->like, input, cuts))
        *frame = *input->like;
    else
        make_elastic(arena, frame, input, cuts);
    if (!input->axial)
        return frame;
    frame->geometric = assemble_geometric(arena, frame->pieces, input->axial);
    frame->compressed = any_compressed(frame->pieces, input->axial);
    return frame;
}

bool sway_folds(const struct sway_frame *frame) {
    return frame->folds;
}

void sway_matrices(const struct sway_frame *frame, const struct sparse **elastic,
                   const struct sparse **geometric) {
    *elastic = &frame->elastic;
    *geometric = &frame->geometric;
}

/* L D L' of K + factor Kg into `out`; a pivot that comes out as zero is stepped aside from. */
static size_t count_with(struct arena *arena, const struct sway_frame *frame, double factor,
                         const struct sparse *out) {
    enum { TRIES = 8 };
    double nudge = 1e-12;
    for (int k = 0; k < TRIES; k++, nudge *= 8.0) {
        sparse_sum(out, &frame->elastic, factor, &frame->geometric);
        struct pivots pivots = sparse_factor(arena, out, NULL);
        if (pivots.sound)
            return pivots.negative;
        factor *= 1.0 + nudge;
    }
    return 1; /* cannot be counted: never a pass */
}

size_t sway_count_below(struct arena *arena, const struct sway_frame *frame, double factor) {
    if (frame->folds)
        return 1;
    struct sparse work = sparse_room(arena, frame->pieces->blocks);
    return count_with(arena, frame, factor, &work);
}

size_t sway_count_with(struct arena *arena, const struct sway_frame *frame,
                       const double (*axial)[2], double factor) {
    if (frame->folds)
        return 1;
    struct arena_mark mark = arena_mark(arena);
    struct sparse matrix = sparse_copy(arena, &frame->elastic);
    assemble_add_geometric(&matrix, frame->pieces, axial, factor);
    struct pivots pivots = sparse_factor(arena, &matrix, NULL);
    arena_rewind(arena, mark);
    return pivots.sound ? pivots.negative : 1;
}

/* The smallest factor by halving: low has none below it and is close to high, which has. */
static double halve(struct arena *arena, const struct sway_frame *frame, double high,
                    const struct sparse *work) {
    double low = high / 2.0;
    while (low > 0.0 && count_with(arena, frame, low, work) > 0) {
        high = low;
        low /= 2.0;
    }
    for (int k = 0; k < 60 && high - low > BESIDE / 2.0 * high; k++) {
        double middle = low + (high - low) / 2.0;
        if (count_with(arena, frame, middle, work) > 0)
            high = middle;
        else
            low = middle;
    }
    return high;
}

/* Inverse iteration with the factor of K + below Kg, `below` close under the critical factor: the
 * shape into x. Returns the factor from its energies; NAN where they make no sense. */
static double refine(struct arena *arena, const struct sway_frame *frame, double below,
                     const struct sparse *factor, double *x) {
    enum { PASSES = 3 };
    size_t count = factor->blocks->unknowns;
    double *load = ARENA_ARRAY(arena, double, count), *next = ARENA_ARRAY(arena, double, count);
    double found = NAN;
    for (size_t i = 0; i < count; i++)
        x[i] = 1.0 + 0.5 * sin((double)i); /* no symmetry: not orthogonal to any shape */
    for (int pass = 0; pass < PASSES; pass++) {
        entries_multiply(&frame->entries, x, load); /* its sign only turns the shape about */
        memcpy(x, load, count * sizeof *x);
        sweep_all(arena, factor, 1, &x);
        entries_multiply(&frame->entries, x, next);
        double work = kernel_products(x, load, count), softening = kernel_products(x, next, count);
        found = below - work / softening;
        double largest = 0.0;
        for (size_t i = 0; i < count; i++)
            largest = fmax(largest, fabs(x[i]));
        if (!(largest > 0.0) || !isfinite(largest))
            return NAN;
        for (size_t i = 0; i < count; i++)
            x[i] /= largest;
    }
    return found;
}

/* How far a piece bows in its middle, from the movements of its ends. */
static double piece_middle(const struct piece *piece, const double *x) {
    double u[ELEMENT_DOFS];
    for (int i = 0; i < ELEMENT_DOFS; i++)
        u[i] = reach_movement(&piece->ends[i], x);
    double L = piece->length;
    double v = (u[1] + u[7]) / 2.0 + (u[5] - u[11]) * L / 8.0;
    double w = (u[2] + u[8]) / 2.0 - (u[4] - u[10]) * L / 8.0;
    return hypot(v, w);
}

static void tell_shape(struct arena *arena, const struct sway_frame *frame, const double *x,
                       struct sway_result *result) {
    const struct pieces *pieces = frame->pieces;
    const struct model *model = pieces->setting->model;
    size_t joints = model->frame->joints.count;
    result->shape = ARENA_ARRAY(arena, double, 3 * joints);
    double largest = 0.0, bow = 0.0;
    for (size_t j = 0; j < joints; j++)
        for (int c = 0; c < 3; c++) {
            int unknown = pieces->slot_unknown[3 * model->move_slot[j] + c];
            result->shape[3 * j + c] = unknown < 0 ? 0.0 : x[unknown];
            largest = fmax(largest, fabs(result->shape[3 * j + c]));
        }
    for (size_t p = 0; p < pieces->count; p++) {
        double middle = piece_middle(&pieces->items[p], x);
        if (middle > bow) {
            bow = middle;
            result->bowing = model->segments[pieces->items[p].segment].member;
        }
    }
    if (!(bow > 2.0 * largest))
        result->bowing = -1;
    bool still = !(largest > 1e-9 * bow);
    for (size_t k = 0; k < 3 * joints; k++)
        result->shape[k] = still ? 0.0 : result->shape[k] / largest;
}

struct sway_result sway_factor(struct arena *arena, const struct sway_frame *frame) {
    struct sway_result result = {.factor = NAN, .bowing = -1};
    if (frame->folds) {
        result.factor = 0.0;
        result.folds = true;
        return result;
    }
    if (!frame->compressed) {
        result.certified = true;
        return result;
    }
    size_t count = frame->pieces->unknowns;
    struct sparse work = sparse_room(arena, frame->pieces->blocks);
    struct sway_frame with = *frame;
    with.entries = entries_of(arena, &frame->geometric);
    double largest = count ? lanczos_largest(arena, &frame->factor, &with.entries) : 0.0;
    double guess = 1.0 / largest;
    if (!(largest > 0.0 && guess <= SWAY_MOST)) {
        result.certified = count_with(arena, frame, SWAY_MOST, &work) == 0;
        if (result.certified)
            return result;
        guess = halve(arena, frame, SWAY_MOST, &work);
    }
    double below = guess * (1.0 - BESIDE);
    size_t lower = count_with(arena, frame, below, &work);
    if (lower > 0) {
        guess = halve(arena, frame, guess, &work);
        below = guess * (1.0 - BESIDE);
        lower = count_with(arena, frame, below, &work);
    }
    double *x = ARENA_ARRAY(arena, double, count);
    double found = refine(arena, &with, below, &work, x);
    /* Factors that lie very close together may have been mixed; the count then has the last word.
     */
    result.factor = found > below && found < guess * (1.0 + BESIDE) ? found : guess;
    tell_shape(arena, frame, x, &result);
    result.certified =
        lower == 0 && count_with(arena, frame, result.factor * (1.0 + BESIDE), &work) > 0;
    return result;
}

struct sway_result sway_critical(struct arena *arena, const struct sway_input *input) {
    return sway_factor(arena, sway_prepare(arena, input));
}

double (*sway_axial(struct arena *arena, const struct response *response,
                    const double *weights))[2] {
    size_t segments = response->loads->model->segment_count;
    double(*axial)[2] = arena_take(arena, segments, sizeof *axial);
    for (size_t c = 0; c < response->live_count; c++)
        for (size_t s = 0; s < segments && weights[c] != 0.0; s++) {
            axial[s][0] -= weights[c] * response->ends[c][ELEMENT_DOFS * s];
            axial[s][1] += weights[c] * response->ends[c][ELEMENT_DOFS * s + 6];
        }
    return axial;
}
