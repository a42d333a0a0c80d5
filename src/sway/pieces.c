#include "sway/pieces.h"

#include <math.h>
#include <string.h>

/* One segment on its way to pieces. */
struct cutting {
    int cuts;
    bool torsion;    /* both ends hold it against turning about its axis */
    bool own[2][6];  /* parts of its ends that are unknowns of their own */
    bool idle[2][6]; /* parts that nothing holds and that bear nothing: left out */
    int node[2];     /* of its ends: the joint's, or its own */
    int inner;       /* first node between its pieces */
    int inner_size;  /* unknowns of such a node */
};

struct cutter {
    struct arena *arena;
    const struct sway_setting *setting;
    const struct model *model;
    struct pieces *pieces;
    struct cutting *cuttings; /* per segment */
    size_t nodes;
    int *size, *base; /* unknowns of a node, and the first of them */
};

static double creep(double divisor) {
    return divisor > 0.0 ? divisor : 1.0;
}

double pieces_stiffness(const struct sway_setting *setting, const struct model_member *member) {
    double E = setting->least_stiffness
                   ? lumber_least_stiffness(&member->lumber, setting->model->wet, NULL)
                   : member->E;
    return E / creep(setting->creep_sticks);
}

/* G follows E unless it is the user's own, which only creeps. */
static double shear_stiffness(const struct sway_setting *setting,
                              const struct model_member *member) {
    if (member->lumber.has_shear_modulus)
        return member->G / creep(setting->creep_sticks);
    return member->G * pieces_stiffness(setting, member) / member->E;
}

double pieces_least_inertia(const struct model *model, const struct model_member *member) {
    if (!model->frame->plane)
        return fmin(member->Iy, member->Iz);
    double y = member->axes[1][1], z = member->axes[2][1];
    return member->Iy * y * y + member->Iz * z * z;
}

double reach_movement(const struct reach *reach, const double *x) {
    double sum = 0.0;
    for (int k = 0; k < reach->count; k++)
        sum += reach->share[k] * x[reach->unknown[k]];
    return sum;
}

static bool excluded(const struct sway_setting *setting, int member) {
    return setting->excluded && setting->excluded[member];
}

static double inertia_of_turn(const struct model_member *member, int part) {
    return part == 4 ? member->Iy : member->Iz;
}

/* In a plane frame: is this part of a stick's end held, because it lies across the plane? */
static bool across_plane(const struct model *model, const struct model_member *member, int part) {
    if (!model->frame->plane)
        return false;
    double out_of_plane = fabs(member->axes[part % 3][1]);
    return part < 3 ? out_of_plane > 1.0 - 1e-9 : out_of_plane < 1e-9;
}

static void look_at_ends(struct cutter *cutter, size_t index) {
    const struct segment *segment = &cutter->model->segments[index];
    const struct model_member *member = &cutter->model->members[segment->member];
    struct cutting *cutting = &cutter->cuttings[index];
    cutting->torsion = true;
    for (int end = 0; end < 2; end++) {
        cutting->node[end] = segment->joints[end];
        if (!segment->sprung[end])
            continue;
        const double *spring = member->ends[end].springs[cutter->setting->stiffness].k;
        bool any = false;
        for (int part = 0; part < 6; part++) {
            if (isinf(spring[part]) || across_plane(cutter->model, member, part))
                continue;
            bool bears = part < 3 || (part > 3 && inertia_of_turn(member, part) > 0.0);
            cutting->idle[end][part] = spring[part] == 0.0 && !bears;
            cutting->own[end][part] = !cutting->idle[end][part];
            any |= cutting->own[end][part];
        }
        cutting->torsion &= spring[3] != 0.0;
        if (any)
            cutting->node[end] = (int)cutter->nodes++;
    }
}

static void look_at_segments(struct cutter *cutter, const int *cuts) {
    const struct model *model = cutter->model;
    cutter->nodes = model->frame->joints.count;
    for (size_t s = 0; s < model->segment_count; s++) {
        const struct model_member *member = &model->members[model->segments[s].member];
        struct cutting *cutting = &cutter->cuttings[s];
        if (excluded(cutter->setting, model->segments[s].member))
            continue;
        look_at_ends(cutter, s);
        cutting->cuts = pieces_least_inertia(model, member) > 0.0 && cuts[s] > 1 ? cuts[s] : 1;
        cutting->inner = (int)cutter->nodes;
        cutting->torsion &= member->J > 0.0;
        cutting->inner_size = model->frame->plane ? 3 : cutting->torsion ? 6 : 5;
        cutter->nodes += (size_t)cutting->cuts - 1;
    }
}

/* ---- numbering ---- */

static void count_sizes(struct cutter *cutter) {
    const struct model *model = cutter->model;
    for (size_t s = 0; s < model->slot_count; s++)
        for (int c = 0; c < 3; c++)
            cutter->size[model->slots[s].joint] += cutter->pieces->slot_unknown[3 * s + c] >= 0;
    for (size_t s = 0; s < model->segment_count; s++) {
        const struct cutting *cutting = &cutter->cuttings[s];
        for (int end = 0; end < 2; end++)
            for (int part = 0; part < 6; part++)
                if (cutting->own[end][part])
                    cutter->size[cutting->node[end]]++;
        for (int k = 0; k + 1 < cutting->cuts; k++)
            cutter->size[cutting->inner + k] = cutting->inner_size;
    }
}

struct pairs {
    int (*items)[2];
    size_t count;
};

static void add_pair(struct pairs *pairs, int a, int b) {
    if (a == b)
        return;
    pairs->items[pairs->count][0] = a;
    pairs->items[pairs->count++][1] = b;
}

/* The chord of a segment that stays straight couples its two ends. */
static void add_chord_pairs(struct pairs *pairs, const int *nodes, const int *joints) {
    add_pair(pairs, nodes[0], nodes[1]);
    add_pair(pairs, nodes[0], joints[1]);
    add_pair(pairs, joints[0], nodes[1]);
    add_pair(pairs, joints[0], joints[1]);
}

/* Neighbours: along the pieces of a segment, and each end node with its joint. An end node and its
 * joint move the same piece together, so both are neighbours of what is behind it. */
static struct pairs list_pairs(const struct cutter *cutter) {
    const struct model *model = cutter->model;
    struct pairs pairs = {0};
    size_t room = cutter->setting->bar_count;
    for (size_t s = 0; s < model->segment_count; s++)
        room += 8 + (size_t)cutter->cuttings[s].cuts;
    pairs.items = arena_take(cutter->arena, room, sizeof *pairs.items);
    for (size_t s = 0; s < model->segment_count; s++) {
        const struct cutting *cutting = &cutter->cuttings[s];
        if (cutting->cuts == 0)
            continue;
        const int *joints = model->segments[s].joints;
        bool whole = cutting->cuts == 1;
        int behind[2] = {whole ? cutting->node[1] : cutting->inner,
                         whole ? cutting->node[0] : cutting->inner + cutting->cuts - 2};
        for (int k = 0; k + 2 < cutting->cuts; k++)
            add_pair(&pairs, cutting->inner + k, cutting->inner + k + 1);
        for (int end = 0; end < 2; end++) {
            add_pair(&pairs, cutting->node[end], joints[end]);
            add_pair(&pairs, joints[end], behind[end]);
            if (cutting->node[end] != joints[end])
                add_pair(&pairs, cutting->node[end], behind[end]);
        }
        if (whole)
            add_pair(&pairs, joints[0], joints[1]);
        else if (model->frame->members.items[model->segments[s].member].held_along)
            add_chord_pairs(&pairs, cutting->node, joints);
    }
    for (size_t b = 0; b < cutter->setting->bar_count; b++)
        add_pair(&pairs, cutter->setting->bars[b].joints[0], cutter->setting->bars[b].joints[1]);
    return pairs;
}

static void number_slots(struct cutter *cutter) {
    const struct model *model = cutter->model;
    struct pieces *pieces = cutter->pieces;
    int *next = ARENA_ARRAY(cutter->arena, int, cutter->nodes);
    memcpy(next, cutter->base, cutter->nodes * sizeof *next);
    for (size_t s = 0; s < model->slot_count; s++)
        for (int c = 0; c < 3; c++) {
            int *unknown = &pieces->slot_unknown[3 * s + c];
            if (*unknown < 0)
                continue;
            *unknown = next[model->slots[s].joint]++;
            pieces->turning[*unknown] = model->slots[s].turning;
        }
}

static void number_unknowns(struct cutter *cutter) {
    const struct model *model = cutter->model;
    struct pieces *pieces = cutter->pieces;
    pieces->slot_unknown = ARENA_ARRAY(cutter->arena, int, 3 * model->slot_count);
    for (size_t s = 0; s < model->slot_count; s++) {
        const bool *held = cutter->setting->held ? cutter->setting->held[s] : model->slots[s].held;
        for (int c = 0; c < 3; c++)
            pieces->slot_unknown[3 * s + c] = held[c] ? -1 : 0;
    }
    cutter->size = ARENA_ARRAY(cutter->arena, int, cutter->nodes);
    cutter->base = ARENA_ARRAY(cutter->arena, int, cutter->nodes);
    count_sizes(cutter);
    struct pairs pairs = list_pairs(cutter);
    struct graph graph =
        graph_of_pairs(cutter->arena, cutter->nodes, (const int(*)[2])pairs.items, pairs.count);
    pieces->blocks = blocks_of_graph(cutter->arena, &graph, cutter->size, cutter->base);
    pieces->unknowns = pieces->blocks->unknowns;
    pieces->turning = ARENA_ARRAY(cutter->arena, bool, pieces->unknowns);
    number_slots(cutter);
}

/* ---- pieces ---- */

/* The part of a triple of global movements along an axis. */
static struct reach along_axis(const double axis[3], const int unknown[3]) {
    struct reach reach = {0};
    for (int c = 0; c < 3; c++)
        if (unknown[c] >= 0 && axis[c] != 0.0) {
            reach.unknown[reach.count] = unknown[c];
            reach.share[reach.count++] = axis[c];
        }
    return reach;
}

static struct reach of_joint(const struct cutter *cutter, const struct segment *segment, int end,
                             int part) {
    int slot = part < 3 ? segment->move[end] : segment->turn[end];
    if (slot < 0)
        return (struct reach){0};
    return along_axis(cutter->model->members[segment->member].axes[part % 3],
                      &cutter->pieces->slot_unknown[3 * slot]);
}

/* An end of the stick in its own unknowns, with the springs that tie them to the joint. */
static void reach_end(struct cutter *cutter, size_t index, int end, struct reach out[6]) {
    const struct segment *segment = &cutter->model->segments[index];
    const struct cutting *cutting = &cutter->cuttings[index];
    const double *stiffness =
        cutter->model->members[segment->member].ends[end].springs[cutter->setting->stiffness].k;
    struct pieces *pieces = cutter->pieces;
    int unknown = cutter->base[cutting->node[end]];
    for (int part = 0; part < 6; part++) {
        out[part] = (struct reach){0};
        if (cutting->idle[end][part])
            continue;
        struct reach joint = of_joint(cutter, segment, end, part);
        out[part] = joint;
        if (!cutting->own[end][part])
            continue;
        pieces->turning[unknown] = part >= 3;
        out[part] = (struct reach){.count = 1, .unknown = {unknown}, .share = {1.0}};
        if (stiffness[part] > 0.0) {
            struct spring *spring = &pieces->springs[pieces->spring_count++];
            *spring =
                (struct spring){.stiffness = stiffness[part] / creep(cutter->setting->creep_joints),
                                .count = joint.count + 1};
            for (int k = 0; k < joint.count; k++) {
                spring->unknown[k] = joint.unknown[k];
                spring->share[k] = -joint.share[k];
            }
            spring->unknown[joint.count] = unknown;
            spring->share[joint.count] = 1.0;
        }
        unknown++;
    }
}

/* A node between two pieces. */
static void reach_inner(struct cutter *cutter, size_t index, int node, struct reach out[6]) {
    const struct cutting *cutting = &cutter->cuttings[index];
    int unknown = cutter->base[node];
    if (cutter->model->frame->plane) {
        const double(*axes)[3] = cutter->model->members[cutter->model->segments[index].member].axes;
        const int move[3] = {unknown, -1, unknown + 1}, turn[3] = {-1, unknown + 2, -1};
        cutter->pieces->turning[unknown + 2] = true;
        for (int part = 0; part < 6; part++)
            out[part] = along_axis(axes[part % 3], part < 3 ? move : turn);
        return;
    }
    for (int part = 0; part < 6; part++) {
        out[part] = (struct reach){0};
        if (part == 3 && !cutting->torsion)
            continue;
        cutter->pieces->turning[unknown] = part >= 3;
        out[part] = (struct reach){.count = 1, .unknown = {unknown}, .share = {1.0}};
        unknown++;
    }
}

static struct piece piece_of(const struct cutter *cutter, size_t index) {
    const struct segment *segment = &cutter->model->segments[index];
    const struct model_member *member = &cutter->model->members[segment->member];
    double E = pieces_stiffness(cutter->setting, member);
    double G = shear_stiffness(cutter->setting, member);
    struct piece piece = {.segment = (int)index,
                          .length = segment->length / cutter->cuttings[index].cuts,
                          .alone = cutter->cuttings[index].cuts == 1,
                          .EA = E * member->A,
                          .GJ = cutter->cuttings[index].torsion ? G * member->J : 0.0,
                          .EI = {E * member->Iz, E * member->Iy}};
    bool held = cutter->model->frame->members.items[segment->member].held_along;
    /* it cannot buckle across its smaller side; of a square one, across local y */
    piece.straight[PLANE_XY] = held && member->size_y <= member->size_z;
    piece.straight[PLANE_XZ] = held && member->size_y > member->size_z;
    double square = piece.length * piece.length;
    if (member->Ay > 0.0)
        piece.phi[PLANE_XY] = 12.0 * piece.EI[PLANE_XY] / (G * member->Ay * square);
    if (member->Az > 0.0)
        piece.phi[PLANE_XZ] = 12.0 * piece.EI[PLANE_XZ] / (G * member->Az * square);
    return piece;
}

static void cut_segment(struct cutter *cutter, size_t index) {
    const struct cutting *cutting = &cutter->cuttings[index];
    struct pieces *pieces = cutter->pieces;
    struct reach at[6];
    reach_end(cutter, index, 0, at);
    for (int k = 0; k < cutting->cuts; k++) {
        struct piece *piece = &pieces->items[pieces->count++];
        *piece = piece_of(cutter, index);
        piece->start = k * piece->length;
        memcpy(piece->ends, at, sizeof at);
        if (k + 1 < cutting->cuts)
            reach_inner(cutter, index, cutting->inner + k, at);
        else
            reach_end(cutter, index, 1, at);
        memcpy(piece->ends + 6, at, sizeof at);
    }
}

static void add_bar(struct cutter *cutter, const struct bar *bar) {
    const struct model *model = cutter->model;
    double n[3];
    bar_direction(model, bar, n);
    struct pieces *pieces = cutter->pieces;
    struct spring *spring = &pieces->springs[pieces->spring_count++];
    *spring = (struct spring){.stiffness = bar->stiffness};
    for (int end = 0; end < 2; end++) {
        const int *unknown = &pieces->slot_unknown[3 * model->move_slot[bar->joints[end]]];
        for (int c = 0; c < 3; c++)
            if (unknown[c] >= 0) {
                spring->unknown[spring->count] = unknown[c];
                spring->share[spring->count++] = end ? n[c] : -n[c];
            }
    }
}

struct pieces *pieces_cut(struct arena *arena, const struct sway_setting *setting,
                          const int *cuts) {
    const struct model *model = setting->model;
    struct pieces *pieces = ARENA_NEW(arena, struct pieces);
    *pieces = (struct pieces){.setting = setting};
    struct cutter cutter = {.arena = arena,
                            .setting = setting,
                            .model = model,
                            .pieces = pieces,
                            .cuttings = ARENA_ARRAY(arena, struct cutting, model->segment_count)};
    look_at_segments(&cutter, cuts);
    number_unknowns(&cutter);
    size_t count = 0, springs = setting->bar_count;
    for (size_t s = 0; s < model->segment_count; s++) {
        count += (size_t)cutter.cuttings[s].cuts;
        for (int part = 0; part < 6; part++)
            springs += (size_t)cutter.cuttings[s].own[0][part] + cutter.cuttings[s].own[1][part];
    }
    pieces->items = ARENA_ARRAY(arena, struct piece, count);
    pieces->springs = ARENA_ARRAY(arena, struct spring, springs);
    pieces->first = ARENA_ARRAY(arena, size_t, model->segment_count + 1);
    for (size_t s = 0; s < model->segment_count; s++) {
        pieces->first[s] = pieces->count;
        if (cutter.cuttings[s].cuts)
            cut_segment(&cutter, s);
    }
    pieces->first[model->segment_count] = pieces->count;
    for (size_t b = 0; b < setting->bar_count; b++)
        add_bar(&cutter, &setting->bars[b]);
    return pieces;
}
