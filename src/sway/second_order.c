#include "sway/second_order.h"

#include "base/vector.h"
#include "solve/sweep.h"
#include "sway/assemble.h"
#include "sway/pieces.h"

#include <math.h>
#include <string.h>

enum { MOST_PASSES = 50 };
#define SETTLED 1e-8
#define SLOW 0.3 /* a pass that leaves more of the change than this wants a factor of its own */

struct second_order_frame {
    struct sway_setting setting;
    const struct pieces *pieces;
    struct sparse elastic, factor; /* K and its L D L': the first pass of every mix, which has no
                                    forces yet */
    bool resists;                  /* every pivot of K is positive */
};

struct passes {
    struct arena *arena;
    const struct second_order_frame *frame;
    const struct pieces *pieces;
    struct second_order *out;
    double (*fixed)[ELEMENT_DOFS]; /* per segment: fixed-end forces of the loads on it */
    double *loads, *right;         /* per unknown: of the mix, and of one pass */
    struct sparse factor;          /* of K + Kg of the forces in `factored` */
    double (*factored)[2];         /* per segment, as second_order.axial */
};

/* Fixed-end forces of one segment under the mix. */
static void fix_ends(const struct passes *passes, const struct piece *piece,
                     double f[ELEMENT_DOFS]) {
    struct element element = {
        .length = piece->length, .phi_y = piece->phi[PLANE_XY], .phi_z = piece->phi[PLANE_XZ]};
    struct element_load *loads;
    size_t count = stick_loads(passes->arena, passes->out->response, (size_t)piece->segment,
                               passes->out->weights, &loads);
    for (size_t k = 0; k < count; k++)
        element_fixed_end(&element, &loads[k], f);
}

/* The columns that stand for slack ties and lifted feet act on no joint here: those are let go
 * themselves. */
static void add_joint_loads(const struct passes *passes) {
    const struct response *response = passes->out->response;
    const struct model *model = passes->pieces->setting->model;
    for (size_t c = 0; c < response->live_count; c++) {
        double weight = passes->out->weights[c];
        if (weight == 0.0 || response->columns[c].set < 0)
            continue;
        for (size_t j = 0; j < model->frame->joints.count; j++) {
            double load[6];
            response_joint_load(response, c, j, load);
            const int slots[2] = {model->move_slot[j], model->turn_slot[j]};
            for (int i = 0; i < 6; i++) {
                int slot = slots[i / 3];
                int unknown = slot < 0 ? -1 : passes->pieces->slot_unknown[3 * slot + i % 3];
                if (unknown >= 0)
                    passes->loads[unknown] += weight * load[i];
            }
        }
    }
}

/* What loads a stick that is left out goes to its joints by the lever rule. */
static void pass_to_joints(const struct passes *passes, size_t segment,
                           const struct element_load *load) {
    const struct model *model = passes->pieces->setting->model;
    const struct segment *cut = &model->segments[segment];
    const double(*axes)[3] = model->members[cut->member].axes;
    double whole = load->b > load->a ? load->b - load->a : 1.0;
    double far = (load->a + load->b) / 2.0 / cut->length;
    for (int end = 0; end < 2; end++)
        for (int c = 0; c < 3; c++) {
            int unknown = passes->pieces->slot_unknown[3 * cut->move[end] + c];
            for (int i = 0; i < 3 && unknown >= 0; i++)
                passes->loads[unknown] +=
                    (end ? far : 1.0 - far) * whole * load->force[i] * axes[i][c];
        }
}

static void gather_loads(const struct passes *passes) {
    add_joint_loads(passes);
    for (size_t s = 0; s < passes->pieces->setting->model->segment_count; s++) {
        if (passes->pieces->first[s] < passes->pieces->first[s + 1])
            continue;
        struct element_load *loads;
        size_t count =
            stick_loads(passes->arena, passes->out->response, s, passes->out->weights, &loads);
        for (size_t k = 0; k < count; k++)
            pass_to_joints(passes, s, &loads[k]);
    }
    for (size_t p = 0; p < passes->pieces->count; p++) {
        const struct piece *piece = &passes->pieces->items[p];
        double *f = passes->fixed[piece->segment];
        fix_ends(passes, piece, f);
        for (int i = 0; i < ELEMENT_DOFS; i++)
            for (int k = 0; k < piece->ends[i].count; k++)
                passes->loads[piece->ends[i].unknown[k]] -= piece->ends[i].share[k] * f[i];
    }
}

static void move_ends(const struct passes *passes, const double *x) {
    for (size_t p = 0; p < passes->pieces->count; p++) {
        const struct piece *piece = &passes->pieces->items[p];
        for (int i = 0; i < ELEMENT_DOFS; i++)
            passes->out->own[piece->segment][i] = reach_movement(&piece->ends[i], x);
    }
}

/* Forces at the ends of every stick, with the forces along the sticks that the pass started from.
 */
static void recover(const struct passes *passes) {
    for (size_t p = 0; p < passes->pieces->count; p++) {
        const struct piece *piece = &passes->pieces->items[p];
        double k[ELEMENT_DOFS][ELEMENT_DOFS], g[ELEMENT_DOFS][ELEMENT_DOFS];
        piece_elastic(piece, k);
        piece_geometric(
            piece, piece_axial(passes->pieces, piece, (const double(*)[2])passes->out->axial), g);
        double *own = passes->out->own[piece->segment], *ends = passes->out->ends[piece->segment];
        for (int i = 0; i < ELEMENT_DOFS; i++) {
            ends[i] = passes->fixed[piece->segment][i];
            for (int j = 0; j < ELEMENT_DOFS; j++)
                ends[i] += (k[i][j] + g[i][j]) * own[j];
        }
    }
}

/* The forces along the sticks alone, which is all that the next pass wants. */
static void take_axial(const struct passes *passes) {
    for (size_t p = 0; p < passes->pieces->count; p++) {
        const struct piece *piece = &passes->pieces->items[p];
        const double *own = passes->out->own[piece->segment];
        const double *fixed = passes->fixed[piece->segment];
        double along = piece->EA / piece->length;
        passes->out->axial[piece->segment][0] = -(fixed[0] + along * own[0] - along * own[6]);
        passes->out->axial[piece->segment][1] = fixed[6] - along * own[0] + along * own[6];
    }
}

/* The largest change by the largest movement; turns count by what they move over the frame. */
static double change_of(const struct passes *passes, const double *x, const double *before) {
    double change = 0.0, largest = 0.0;
    for (size_t i = 0; i < passes->pieces->unknowns; i++) {
        double arm = passes->pieces->turning[i] ? passes->pieces->setting->model->size : 1.0;
        change = fmax(change, arm * fabs(x[i] - before[i]));
        largest = fmax(largest, arm * fabs(x[i]));
    }
    return change > 0.0 ? change / largest : 0.0;
}

/* Factored in place: is every pivot positive? */
static bool resists(struct arena *arena, const struct sparse *matrix) {
    struct pivots pivots = sparse_factor(arena, matrix, NULL);
    return pivots_positive(&pivots);
}

/* K + Kg of the forces of the last pass, factored; false where nothing is left to resist with. */
static bool factor_anew(const struct passes *passes) {
    const double(*axial)[2] = (const double(*)[2])passes->out->axial;
    memcpy(passes->factor.items, passes->frame->elastic.items,
           passes->factor.blocks->numbers * sizeof *passes->factor.items);
    assemble_add_geometric(&passes->factor, passes->pieces, axial, 1.0);
    memcpy(passes->factored, axial, passes->pieces->setting->model->segment_count * sizeof *axial);
    return resists(passes->arena, &passes->factor);
}

/* out -= Kg x, for the forces that the factor does not know of. */
static void take_off_turned(const struct passes *passes, const double *x, double *out) {
    for (size_t p = 0; p < passes->pieces->count; p++) {
        const struct piece *piece = &passes->pieces->items[p];
        const double *now = passes->out->axial[piece->segment];
        const double *then = passes->factored[piece->segment];
        double g[ELEMENT_DOFS][ELEMENT_DOFS], own[ELEMENT_DOFS];
        piece_geometric(piece, (now[0] + now[1] - then[0] - then[1]) / 2.0, g);
        for (int i = 0; i < ELEMENT_DOFS; i++)
            own[i] = reach_movement(&piece->ends[i], x);
        for (int i = 0; i < ELEMENT_DOFS; i++) {
            double force = 0.0;
            for (int j = 0; j < ELEMENT_DOFS; j++)
                force += g[i][j] * own[j];
            for (int k = 0; k < piece->ends[i].count; k++)
                out[piece->ends[i].unknown[k]] -= piece->ends[i].share[k] * force;
        }
    }
}

/* x from its value in the last pass. The forces change little from the second pass on: its factor
 * serves the later ones too, as long as the change shrinks fast enough. */
static bool solve_pass(const struct passes *passes, bool anew, double *x) {
    const struct sparse *factor = &passes->factor;
    size_t bytes = passes->pieces->unknowns * sizeof *x;
    if (passes->out->passes == 1) {
        factor = &passes->frame->factor;
        if (!passes->frame->resists)
            return false;
    } else if (anew && !factor_anew(passes))
        return false;
    memcpy(passes->right, passes->loads, bytes);
    if (passes->out->passes > 1 && !anew)
        take_off_turned(passes, x, passes->right);
    memcpy(x, passes->right, bytes);
    sweep_all(passes->arena, factor, 1, &x);
    return true;
}

static void iterate(const struct passes *passes, double *x) {
    double *before = ARENA_ARRAY(passes->arena, double, passes->pieces->unknowns);
    double change = INFINITY;
    bool anew = true;
    struct arena_mark mark = arena_mark(passes->arena);
    for (int pass = 1; pass <= MOST_PASSES; pass++) {
        arena_rewind(passes->arena, mark);
        memcpy(before, x, passes->pieces->unknowns * sizeof *x);
        passes->out->passes = pass;
        if (!solve_pass(passes, anew, x))
            return;
        move_ends(passes, x);
        double last = change;
        change = change_of(passes, x, before);
        if (pass > 1 && change <= SETTLED) {
            recover(passes);
            passes->out->stands = true;
            return;
        }
        anew = pass == 1 || (pass > 2 && !(change <= SLOW * last));
        take_axial(passes);
    }
}

static void tell_joints(const struct passes *passes, const double *x) {
    const struct model *model = passes->pieces->setting->model;
    for (size_t j = 0; j < model->frame->joints.count; j++)
        for (int c = 0; c < 3; c++) {
            int unknown = passes->pieces->slot_unknown[3 * model->move_slot[j] + c];
            passes->out->joints[3 * j + c] = unknown < 0 ? 0.0 : x[unknown];
        }
}

struct second_order_frame *second_order_prepare(struct arena *arena,
                                                const struct sway_setting *setting) {
    struct second_order_frame *frame = ARENA_NEW(arena, struct second_order_frame);
    size_t segments = setting->model->segment_count;
    int *whole = ARENA_ARRAY(arena, int, segments);
    for (size_t s = 0; s < segments; s++)
        whole[s] = 1;
    frame->setting = *setting;
    frame->pieces = pieces_cut(arena, &frame->setting, whole);
    frame->elastic = assemble_elastic(arena, frame->pieces);
    frame->factor = sparse_copy(arena, &frame->elastic);
    frame->resists = resists(arena, &frame->factor);
    return frame;
}

bool second_order_serves(const struct second_order_frame *frame,
                         const struct sway_setting *setting) {
    return sway_same_setting(&frame->setting, setting);
}

struct second_order *second_order_room(struct arena *arena,
                                       const struct second_order_input *input) {
    const struct model *model = input->setting.model;
    size_t segments = model->segment_count;
    struct second_order *out = ARENA_NEW(arena, struct second_order);
    *out = (struct second_order){
        .response = input->response,
        .weights = input->weights,
        .setting = input->setting,
        .joints = ARENA_ARRAY(arena, double, 3 * model->frame->joints.count),
        .own = arena_take(arena, segments, sizeof *out->own),
        .ends = arena_take(arena, segments, sizeof *out->ends),
        .axial = arena_take(arena, segments, sizeof *out->axial),
    };
    return out;
}

void second_order_fill(struct arena *arena, const struct second_order_frame *frame,
                       struct second_order *out) {
    struct arena_mark scratch = arena_mark(arena);
    size_t segments = out->setting.model->segment_count, unknowns = frame->pieces->unknowns;
    struct passes passes = {.arena = arena,
                            .out = out,
                            .frame = frame,
                            .pieces = frame->pieces,
                            .fixed = arena_take(arena, segments, sizeof *passes.fixed),
                            .loads = ARENA_ARRAY(arena, double, unknowns),
                            .right = ARENA_ARRAY(arena, double, unknowns),
                            .factor = sparse_room(arena, frame->pieces->blocks),
                            .factored = arena_take(arena, segments, sizeof *passes.factored)};
    gather_loads(&passes);
    double *x = ARENA_ARRAY(arena, double, unknowns);
    iterate(&passes, x);
    tell_joints(&passes, x);
    arena_rewind(arena, scratch);
}

struct second_order *second_order_solve(struct arena *arena,
                                        const struct second_order_input *input) {
    struct second_order *out = second_order_room(arena, input);
    struct arena_mark scratch = arena_mark(arena);
    second_order_fill(arena, second_order_prepare(arena, &input->setting), out);
    arena_rewind(arena, scratch);
    return out;
}

struct stick_state second_order_state(struct arena *arena, const struct second_order *solved,
                                      size_t segment) {
    const struct model *model = solved->setting.model;
    const struct segment *cut = &model->segments[segment];
    struct stick_state state = {.member = &model->members[cut->member], .length = cut->length};
    state.load_count = stick_loads(arena, solved->response, segment, solved->weights, &state.loads);
    memcpy(state.ends, solved->ends[segment], sizeof state.ends);
    memcpy(state.own, solved->own[segment], sizeof state.own);
    double N = (solved->axial[segment][0] + solved->axial[segment][1]) / 2.0;
    for (int plane = 1; plane <= 2; plane++) {
        double across = N * (state.own[6 + plane] - state.own[plane]) / state.length;
        state.ends[plane] += across;
        state.ends[6 + plane] -= across;
    }
    for (int end = 0; end < 2; end++)
        for (int i = 0; i < 3; i++)
            state.joints[end][i] =
                vector_dot(state.member->axes[i], &solved->joints[3 * cut->joints[end]]);
    return state;
}
