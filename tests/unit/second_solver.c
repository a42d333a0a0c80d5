#include "second_solver.h"

#include "second_stick.h"

#include <lapacke.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* ---- who is on which stick, who is host ---- */

struct on_stick {
    int joint;
    double at;
};

static int by_place(const void *left, const void *right) {
    const struct on_stick *a = left, *b = right;
    return (a->at > b->at) - (a->at < b->at);
}

static size_t joints_on(const struct second *second, int m, struct on_stick *list) {
    const struct frame *frame = second->frame;
    const struct second_stick *stick = &second->sticks[m];
    const struct member *member = &frame->members.items[m];
    size_t count = 0;
    for (size_t j = 0; j < frame->joints.count; j++) {
        double r[3], along = 0.0, off = 0.0;
        for (int k = 0; k < 3; k++)
            r[k] = frame->joints.items[j].at[k] - frame->joints.items[member->from].at[k];
        for (int k = 0; k < 3; k++)
            along += r[k] * stick->axes[0][k];
        for (int k = 0; k < 3; k++)
            off += (r[k] - along * stick->axes[0][k]) * (r[k] - along * stick->axes[0][k]);
        if ((int)j == member->from)
            along = 0.0;
        else if ((int)j == member->to)
            along = stick->length;
        else if (sqrt(off) > 0.001 || along <= 0.0 || along >= stick->length)
            continue;
        list[count++] = (struct on_stick){(int)j, along};
    }
    qsort(list, count, sizeof *list, by_place);
    return count;
}

static void cut(struct second *second) {
    size_t room = 0, joints = second->frame->joints.count;
    struct on_stick *list = ARENA_ARRAY(second->arena, struct on_stick, joints);
    for (int pass = 0; pass < 2; pass++) {
        if (pass)
            second->segments = ARENA_ARRAY(second->arena, struct second_segment, room);
        for (size_t m = 0; m < second->frame->members.count; m++) {
            size_t on = joints_on(second, (int)m, list);
            if (!pass) {
                room += on - 1;
                continue;
            }
            second->sticks[m].first = second->segment_count;
            second->sticks[m].count = on - 1;
            for (size_t k = 0; k + 1 < on; k++)
                second->segments[second->segment_count++] =
                    (struct second_segment){.member = (int)m,
                                            .joints = {list[k].joint, list[k + 1].joint},
                                            .start = list[k].at,
                                            .length = list[k + 1].at - list[k].at};
        }
    }
}

/* 0 not there, 1 ends there, 2 runs through */
static int meets(const struct second *second, size_t m, int joint) {
    const struct second_stick *stick = &second->sticks[m];
    const struct member *member = &second->frame->members.items[m];
    if (member->from == joint || member->to == joint)
        return 1;
    for (size_t s = stick->first; s + 1 < stick->first + stick->count; s++)
        if (second->segments[s].joints[1] == joint)
            return 2;
    return 0;
}

static const struct connection *fastened_by(const struct frame *frame, size_t m, int end) {
    int named = frame->members.items[m].ends[end];
    if (named < 0)
        named = frame->default_connection;
    return named < 0 ? NULL : &frame->connections.items[named];
}

static void find_hosts(struct second *second) {
    const struct frame *frame = second->frame;
    for (size_t j = 0; j < frame->joints.count; j++) {
        int through = -1, ending = -1, ends = 0;
        bool all_pinned = true;
        for (size_t m = 0; m < frame->members.count; m++) {
            int how = meets(second, m, (int)j);
            if (how == 2 && through < 0)
                through = (int)m;
            if (how == 1 && ending < 0)
                ending = (int)m;
            ends += how == 1;
        }
        int host = through >= 0 ? through : ending;
        if (frame->joints.items[j].host >= 0)
            host = frame->joints.items[j].host;
        second->host[j] = host;
        for (size_t m = 0; m < frame->members.count; m++)
            for (int end = 0; end < 2; end++) {
                int at = end ? frame->members.items[m].to : frame->members.items[m].from;
                const struct connection *by = fastened_by(frame, m, end);
                if (at == (int)j && (int)m != host && by && by->type != CONNECTION_PINNED)
                    all_pinned = false;
            }
        bool acted_on = false;
        for (size_t k = 0; k < frame->supports.count; k++)
            for (int c = 3; c < 6; c++)
                acted_on |=
                    frame->supports.items[k].joint == (int)j && frame->supports.items[k].held[c];
        for (size_t k = 0; k < frame->loads.count; k++)
            for (int c = 0; c < 3; c++)
                acted_on |= frame->loads.items[k].type == LOAD_JOINT &&
                            frame->loads.items[k].joint == (int)j &&
                            frame->loads.items[k].moment[c] != 0.0;
        second->hinge[j] = through < 0 && ends >= 2 && all_pinned && !acted_on;
    }
}

/* ---- unknowns ---- */

static void number_joints(struct second *second) {
    const struct frame *frame = second->frame;
    for (size_t j = 0; j < frame->joints.count; j++) {
        bool held[6] = {false, frame->plane, false, frame->plane, false, frame->plane};
        for (size_t k = 0; k < frame->supports.count; k++)
            for (int c = 0; c < 6; c++)
                held[c] |=
                    frame->supports.items[k].joint == (int)j && frame->supports.items[k].held[c];
        for (int c = 0; c < 3; c++) {
            second->move[j][c] = held[c] ? -1 : (int)second->count++;
            second->turn[j][c] = held[3 + c] || second->hinge[j] ? -1 : (int)second->count++;
        }
    }
}

/* A local component of a movement given by three unknowns in global directions. */
static struct second_dof along_axis(const int triple[3], const double axis[3]) {
    struct second_dof dof = {0};
    for (int c = 0; c < 3; c++)
        if (triple[c] >= 0 && axis[c] != 0.0) {
            dof.unknowns[dof.count] = triple[c];
            dof.factors[dof.count++] = axis[c];
        }
    return dof;
}

static void tie_end(struct second *second, struct second_segment *segment, int end,
                    const double springs[6]) {
    const struct second_stick *stick = &second->sticks[segment->member];
    int joint = segment->joints[end];
    segment->on_joint[end] = !second->hinge[joint];
    for (int c = 0; c < 6; c++) {
        const int *triple = c < 3 ? second->move[joint] : second->turn[joint];
        struct second_dof tied = along_axis(triple, stick->axes[c % 3]);
        struct second_dof *dof = &segment->dofs[6 * end + c];
        if (isinf(springs[c])) {
            *dof = tied;
            continue;
        }
        *dof = (struct second_dof){1, {(int)second->count++}, {1.0}};
        if (springs[c] > 0.0) {
            second->springs[second->spring_count].unknown = dof->unknowns[0];
            second->springs[second->spring_count].dof = tied;
            second->springs[second->spring_count++].k = springs[c];
        }
    }
}

static void own_turning(struct second *second, struct second_segment *segment, int end,
                        const int turning[3]) {
    const struct second_stick *stick = &second->sticks[segment->member];
    segment->on_joint[end] = false;
    for (int c = 0; c < 3; c++) {
        segment->dofs[6 * end + c] = along_axis(second->move[segment->joints[end]], stick->axes[c]);
        segment->dofs[6 * end + 3 + c] = along_axis(turning, stick->axes[c]);
    }
}

static void number_ends(struct second *second) {
    static const double rigid[6] = {INFINITY, INFINITY, INFINITY, INFINITY, INFINITY, INFINITY};
    static const double pin[6] = {INFINITY, INFINITY, INFINITY, 0.0, 0.0, 0.0};
    second->springs =
        arena_take(second->arena, 12 * second->frame->members.count, sizeof *second->springs);
    for (size_t m = 0; m < second->frame->members.count; m++) {
        const struct second_stick *stick = &second->sticks[m];
        for (size_t s = stick->first; s < stick->first + stick->count; s++)
            for (int end = 0; end < 2; end++) {
                struct second_segment *segment = &second->segments[s];
                int joint = segment->joints[end];
                bool last = end ? s + 1 == stick->first + stick->count : s == stick->first;
                if (second->host[joint] == (int)m) {
                    tie_end(second, segment, end, second->hinge[joint] ? pin : rigid);
                } else if (last) {
                    double springs[6];
                    second_springs(fastened_by(second->frame, m, end), stick,
                                   &second->sticks[second->host[joint]], second_wet(second->frame),
                                   second->range, springs);
                    tie_end(second, segment, end, springs);
                } else if (end == 1) {
                    int turning[3];
                    for (int c = 0; c < 3; c++)
                        turning[c] = second->frame->plane && c != 1 ? -1 : (int)second->count++;
                    own_turning(second, segment, 1, turning);
                    own_turning(second, segment + 1, 0, turning);
                }
            }
    }
}

/* ---- matrices ---- */

/* Flexibility of the far end of a cantilever, u v w about-x about-y about-z. */
static void cantilever(const struct second_stick *stick, double L, double F[6][6]) {
    memset(F, 0, 36 * sizeof F[0][0]);
    F[0][0] = L / (stick->E * stick->A);
    F[3][3] = L / (stick->G * stick->J);
    F[1][1] = L * L * L / (3.0 * stick->E * stick->Iz);
    F[2][2] = L * L * L / (3.0 * stick->E * stick->Iy);
    if (stick->Ay > 0.0)
        F[1][1] += L / (stick->G * stick->Ay);
    if (stick->Az > 0.0)
        F[2][2] += L / (stick->G * stick->Az);
    F[5][5] = L / (stick->E * stick->Iz);
    F[4][4] = L / (stick->E * stick->Iy);
    F[1][5] = F[5][1] = L * L / (2.0 * stick->E * stick->Iz);
    F[2][4] = F[4][2] = -L * L / (2.0 * stick->E * stick->Iy);
}

static void invert_pair(const double F[6][6], int a, int b, double k[6][6]) {
    double det = F[a][a] * F[b][b] - F[a][b] * F[a][b];
    k[a][a] = F[b][b] / det;
    k[b][b] = F[a][a] / det;
    k[a][b] = k[b][a] = -F[a][b] / det;
}

static void far_stiffness(const struct second_stick *stick, double L, double k[6][6]) {
    double F[6][6];
    cantilever(stick, L, F);
    memset(k, 0, 36 * sizeof k[0][0]);
    k[0][0] = 1.0 / F[0][0];
    k[3][3] = 1.0 / F[3][3];
    invert_pair(F, 1, 5, k);
    invert_pair(F, 2, 4, k);
}

/* Movement of the far end against the near one: B u. */
static void against_near(double L, double B[6][12]) {
    memset(B, 0, 72 * sizeof B[0][0]);
    for (int c = 0; c < 6; c++) {
        B[c][c] = -1.0;
        B[c][6 + c] = 1.0;
    }
    B[1][5] = -L;
    B[2][4] = L;
}

static void segment_stiffness(const struct second *second, struct second_segment *segment) {
    double k[6][6], B[6][12];
    far_stiffness(&second->sticks[segment->member], segment->length, k);
    against_near(segment->length, B);
    for (int i = 0; i < 12; i++)
        for (int j = 0; j < 12; j++)
            for (int a = 0; a < 6; a++)
                for (int b = 0; b < 6; b++)
                    segment->k[i][j] += B[a][i] * k[a][b] * B[b][j];
}

static void add_pair(struct second *second, const struct second_dof *a, const struct second_dof *b,
                     double value) {
    for (int i = 0; i < a->count; i++)
        for (int j = 0; j < b->count; j++)
            second->K[(size_t)a->unknowns[i] * second->count + b->unknowns[j]] +=
                a->factors[i] * b->factors[j] * value;
}

static void assemble(struct second *second) {
    second->K = ARENA_ARRAY(second->arena, double, second->count * second->count);
    for (size_t s = 0; s < second->segment_count; s++) {
        struct second_segment *segment = &second->segments[s];
        segment_stiffness(second, segment);
        for (int i = 0; i < 12; i++)
            for (int j = 0; j < 12; j++)
                add_pair(second, &segment->dofs[i], &segment->dofs[j], segment->k[i][j]);
    }
    for (size_t k = 0; k < second->spring_count; k++) {
        struct second_dof own = {1, {second->springs[k].unknown}, {1.0}};
        const struct second_dof *joint = &second->springs[k].dof;
        add_pair(second, &own, &own, second->springs[k].k);
        add_pair(second, joint, joint, second->springs[k].k);
        add_pair(second, &own, joint, -second->springs[k].k);
        add_pair(second, joint, &own, -second->springs[k].k);
    }
}

/* ---- solution ---- */

/* L x = b or L' x = b of the leading rank x rank part, in pivot order. */
static void leading(const struct second *second, char side, double *x) {
    LAPACKE_dtrtrs(LAPACK_COL_MAJOR, 'L', side, 'N', (int)second->rank, 1, second->factor,
                   (int)second->count, x, (int)second->rank);
}

static void find_free(struct second *second) {
    size_t n = second->count, r = second->rank;
    second->free_count = n - r;
    second->free = ARENA_ARRAY(second->arena, double *, n - r);
    for (size_t f = 0; f < n - r; f++) {
        double *x = ARENA_ARRAY(second->arena, double, n);
        double *top = ARENA_ARRAY(second->arena, double, r + 1);
        for (size_t i = 0; i < r; i++)
            top[i] = -second->factor[i * n + r + f];
        if (r)
            leading(second, 'T', top);
        for (size_t i = 0; i < r; i++)
            x[second->pivots[i] - 1] = top[i] * second->scale[second->pivots[i] - 1];
        x[second->pivots[r + f] - 1] = second->scale[second->pivots[r + f] - 1];
        double largest = 0.0, moves = 0.0;
        for (size_t i = 0; i < n; i++)
            largest = fmax(largest, fabs(x[i]));
        for (size_t j = 0; j < second->frame->joints.count; j++)
            for (int c = 0; c < 3; c++)
                if (second->move[j][c] >= 0)
                    moves = fmax(moves, fabs(x[second->move[j][c]]));
        for (size_t i = 0; i < n; i++)
            x[i] /= largest;
        second->folds |= moves > 1e-5 * largest;
        second->free[f] = x;
    }
}

static void factor(struct second *second) {
    size_t n = second->count;
    second->factor = ARENA_ARRAY(second->arena, double, n *n);
    second->scale = ARENA_ARRAY(second->arena, double, n);
    second->pivots = ARENA_ARRAY(second->arena, int, n);
    double *work = ARENA_ARRAY(second->arena, double, 2 * n);
    for (size_t i = 0; i < n; i++) {
        double own = second->K[i * n + i];
        second->scale[i] = own > 0.0 ? 1.0 / sqrt(own) : 1.0;
    }
    for (size_t i = 0; i < n; i++)
        for (size_t j = 0; j < n; j++)
            second->factor[i * n + j] = second->K[i * n + j] * second->scale[i] * second->scale[j];
    lapack_int rank = 0;
    LAPACKE_dpstrf_work(LAPACK_COL_MAJOR, 'L', (int)n, second->factor, (int)n, second->pivots,
                        &rank, 1e-12, work);
    second->rank = (size_t)rank;
    find_free(second);
}

struct second *second_build(struct arena *arena, const struct frame *frame, int range) {
    struct second *second = ARENA_NEW(arena, struct second);
    *second = (struct second){.arena = arena, .frame = frame, .range = range};
    size_t joints = frame->joints.count;
    second->sticks = ARENA_ARRAY(arena, struct second_stick, frame->members.count);
    for (size_t m = 0; m < frame->members.count; m++)
        second->sticks[m] = second_stick_of(frame, (int)m);
    second->host = ARENA_ARRAY(arena, int, joints);
    second->hinge = ARENA_ARRAY(arena, bool, joints);
    second->move = arena_take(arena, joints, sizeof *second->move);
    second->turn = arena_take(arena, joints, sizeof *second->turn);
    cut(second);
    find_hosts(second);
    number_joints(second);
    number_ends(second);
    assemble(second);
    factor(second);
    return second;
}

static void solve_once(const struct second *second, const double *b, double *x) {
    size_t r = second->rank;
    double *top = ARENA_ARRAY(second->arena, double, r + 1);
    for (size_t i = 0; i < r; i++)
        top[i] = b[second->pivots[i] - 1] * second->scale[second->pivots[i] - 1];
    if (r) {
        leading(second, 'N', top);
        leading(second, 'T', top);
    }
    for (size_t i = 0; i < r; i++)
        x[second->pivots[i] - 1] += top[i] * second->scale[second->pivots[i] - 1];
}

/* ---- loads ---- */

/* Free movement of the far end of a cantilever under a load, and the load's resultant at the near
 * end. `whole`: per metre over the whole length, else one force at a. Local directions. */
static void add_cantilever_load(const struct second_stick *stick, double L, bool whole, double a,
                                const double p[3], double q[6], double near[6]) {
    double EIz = stick->E * stick->Iz, EIy = stick->E * stick->Iy, EA = stick->E * stick->A;
    double GAy = stick->Ay > 0.0 ? stick->G * stick->Ay : INFINITY;
    double GAz = stick->Az > 0.0 ? stick->G * stick->Az : INFINITY;
    double sum = whole ? L : 1.0, arm = whole ? L * L / 2.0 : a;
    double pull = whole ? L * L / 2.0 : a;
    double bend = whole ? L * L * L * L / 8.0 : a * a * (3.0 * L - a) / 6.0;
    double slope = whole ? L * L * L / 6.0 : a * a / 2.0;
    q[0] += p[0] * pull / EA;
    q[1] += p[1] * (bend / EIz + pull / GAy);
    q[2] += p[2] * (bend / EIy + pull / GAz);
    q[5] += p[1] * slope / EIz;
    q[4] -= p[2] * slope / EIy;
    for (int c = 0; c < 3; c++)
        near[c] += p[c] * sum;
    near[4] -= p[2] * arm;
    near[5] += p[1] * arm;
}

struct piece_load {
    bool whole;
    double a;
    double p[3]; /* local */
};

/* The loads of a case on a segment. */
static size_t loads_on(const struct second *second, int load_case, size_t s,
                       struct piece_load *list) {
    const struct frame *frame = second->frame;
    const struct second_segment *segment = &second->segments[s];
    const struct second_stick *stick = &second->sticks[segment->member];
    size_t count = 0;
    if (load_case == CASE_SELF && frame->self_weight) {
        list[count] = (struct piece_load){.whole = true};
        for (int i = 0; i < 3; i++)
            list[count].p[i] = -stick->weight * stick->axes[i][2];
        count++;
    }
    for (size_t k = 0; k < frame->loads.count; k++) {
        const struct load *load = &frame->loads.items[k];
        if (load->load_case != load_case || load->type == LOAD_JOINT ||
            load->member != segment->member)
            continue;
        double at = load->at - segment->start;
        if (load->type == LOAD_POINT && !(at >= 0.0 && at < segment->length))
            continue;
        list[count] = (struct piece_load){.whole = load->type == LOAD_LINE, .a = at};
        for (int i = 0; i < 3; i++)
            for (int c = 0; c < 3; c++)
                list[count].p[i] += stick->axes[i][c] * load->force[c];
        count++;
    }
    return count;
}

static void fixed_ends(const struct second *second, int load_case, size_t s, double f[12]) {
    const struct second_segment *segment = &second->segments[s];
    const struct second_stick *stick = &second->sticks[segment->member];
    struct piece_load *list =
        ARENA_ARRAY(second->arena, struct piece_load, second->frame->loads.count + 1);
    double q[6] = {0}, near[6] = {0}, k[6][6], L = segment->length;
    size_t count = loads_on(second, load_case, s, list);
    for (size_t i = 0; i < count; i++)
        add_cantilever_load(stick, L, list[i].whole, list[i].a, list[i].p, q, near);
    far_stiffness(stick, L, k);
    for (int i = 0; i < 6; i++) {
        f[6 + i] = 0.0;
        for (int j = 0; j < 6; j++)
            f[6 + i] -= k[i][j] * q[j];
    }
    for (int i = 0; i < 6; i++)
        f[i] = -near[i] - f[6 + i];
    f[4] += L * f[6 + 2];
    f[5] -= L * f[6 + 1];
}

/* Somebody leans on it: 20 lb shared by the highest joints of uprights. */
static void push(const struct second *second, int axis, double (*loads)[6]) {
    const struct frame *frame = second->frame;
    double highest = -INFINITY;
    for (int pass = 0, count = 0; pass < 3; pass++)
        for (size_t j = 0; j < frame->joints.count; j++) {
            bool upright = false;
            for (size_t m = 0; m < frame->members.count; m++)
                upright |=
                    fabs(second->sticks[m].axes[0][2]) > sqrt(0.5) && meets(second, m, (int)j);
            double z = frame->joints.items[j].at[2];
            if (!upright || (pass && z < highest - 0.025))
                continue;
            if (pass == 0)
                highest = fmax(highest, z);
            else if (pass == 1)
                count++;
            else
                loads[j][axis] += 20.0 * 4.4482216152605 / count;
        }
}

static double (*joint_loads(const struct second *second, int load_case))[6] {
    const struct frame *frame = second->frame;
    double(*loads)[6] = arena_take(second->arena, frame->joints.count, sizeof *loads);
    if (load_case == CASE_PUSH_X || load_case == CASE_PUSH_Y)
        push(second, load_case - CASE_PUSH_X, loads);
    for (size_t k = 0; k < frame->loads.count; k++) {
        const struct load *load = &frame->loads.items[k];
        for (int c = 0; load->type == LOAD_JOINT && load->load_case == load_case && c < 3; c++) {
            loads[load->joint][c] += load->force[c];
            loads[load->joint][3 + c] += load->moment[c];
        }
    }
    return loads;
}

static void gather(const struct second *second, int load_case, double *b) {
    double(*loads)[6] = joint_loads(second, load_case);
    for (size_t j = 0; j < second->frame->joints.count; j++)
        for (int c = 0; c < 3; c++) {
            if (second->move[j][c] >= 0)
                b[second->move[j][c]] += loads[j][c];
            if (second->turn[j][c] >= 0)
                b[second->turn[j][c]] += loads[j][3 + c];
        }
    for (size_t s = 0; s < second->segment_count; s++) {
        double f[12];
        fixed_ends(second, load_case, s, f);
        for (int i = 0; i < 12; i++) {
            const struct second_dof *dof = &second->segments[s].dofs[i];
            for (int c = 0; c < dof->count; c++)
                b[dof->unknowns[c]] -= dof->factors[c] * f[i];
        }
    }
}

static void recover(const struct second *second, int load_case, const double *x,
                    struct second_answer *answer) {
    for (size_t s = 0; s < second->segment_count; s++) {
        const struct second_segment *segment = &second->segments[s];
        double u[12] = {0}, f[12];
        fixed_ends(second, load_case, s, f);
        for (int i = 0; i < 12; i++)
            for (int c = 0; c < segment->dofs[i].count; c++)
                u[i] += segment->dofs[i].factors[c] * x[segment->dofs[i].unknowns[c]];
        for (int i = 0; i < 12; i++) {
            answer->ends[s][i] = f[i];
            for (int j = 0; j < 12; j++)
                answer->ends[s][i] += segment->k[i][j] * u[j];
        }
    }
}

static void react(const struct second *second, int load_case, struct second_answer *answer) {
    const struct frame *frame = second->frame;
    double(*loads)[6] = joint_loads(second, load_case);
    for (size_t k = 0; k < frame->supports.count; k++) {
        const struct support *support = &frame->supports.items[k];
        double sum[6] = {0};
        for (size_t s = 0; s < second->segment_count; s++) {
            const struct second_segment *segment = &second->segments[s];
            const double(*axes)[3] = (const double(*)[3])second->sticks[segment->member].axes;
            for (int end = 0; end < 2; end++)
                for (int i = 0; segment->joints[end] == support->joint && i < 3; i++)
                    for (int c = 0; c < 3; c++) {
                        sum[c] += axes[i][c] * answer->ends[s][6 * end + i];
                        if (segment->on_joint[end])
                            sum[3 + c] += axes[i][c] * answer->ends[s][6 * end + 3 + i];
                    }
        }
        for (int c = 0; c < 6; c++)
            sum[c] -= loads[support->joint][c];
        for (int c = 0; c < 6; c++)
            answer->reactions[k][c] = support->held[c] ? sum[c] : 0.0;
    }
}

struct second_answer second_solve(const struct second *second, int load_case) {
    const struct frame *frame = second->frame;
    struct arena *arena = second->arena;
    size_t n = second->count;
    struct second_answer answer = {
        .joints = arena_take(arena, frame->joints.count, sizeof(double[6])),
        .reactions = arena_take(arena, frame->supports.count, sizeof(double[6])),
        .ends = arena_take(arena, second->segment_count, sizeof(double[12]))};
    double *b = ARENA_ARRAY(arena, double, n), *x = ARENA_ARRAY(arena, double, n);
    double *rest = ARENA_ARRAY(arena, double, n);
    gather(second, load_case, b);
    double largest = 0.0;
    for (size_t i = 0; i < n; i++)
        largest = fmax(largest, fabs(b[i]));
    for (size_t f = 0; f < second->free_count; f++) {
        double work = 0.0;
        for (size_t i = 0; i < n; i++)
            work += second->free[f][i] * b[i];
        answer.driven |= fabs(work) > 1e-8 * largest;
    }
    for (int pass = 0; pass < 4; pass++) {
        double size = 0.0;
        for (size_t i = 0; i < n; i++) {
            long double sum = b[i];
            for (size_t j = 0; j < n; j++)
                sum -= (long double)second->K[i * n + j] * x[j];
            rest[i] = (double)sum;
        }
        double *change = ARENA_ARRAY(arena, double, n);
        solve_once(second, rest, change);
        answer.off = 0.0;
        for (size_t i = 0; i < n; i++) {
            x[i] += change[i];
            size = fmax(size, fabs(x[i]));
            answer.off = fmax(answer.off, fabs(change[i]));
        }
        answer.off = size > 0.0 ? answer.off / size : 0.0;
    }
    for (size_t j = 0; j < frame->joints.count; j++)
        for (int c = 0; c < 3; c++) {
            answer.joints[j][c] = second->move[j][c] < 0 ? 0.0 : x[second->move[j][c]];
            answer.joints[j][3 + c] = second->turn[j][c] < 0 ? 0.0 : x[second->turn[j][c]];
        }
    recover(second, load_case, x, &answer);
    react(second, load_case, &answer);
    return answer;
}

void second_forces(const struct second *second, const struct second_answer *answer, int load_case,
                   size_t segment, double x, bool after, double out[6]) {
    const double *f = answer->ends[segment];
    struct piece_load *list =
        ARENA_ARRAY(second->arena, struct piece_load, second->frame->loads.count + 1);
    size_t count = loads_on(second, load_case, segment, list);
    double sum[6];
    for (int c = 0; c < 6; c++)
        sum[c] = f[c];
    sum[4] += x * f[2];
    sum[5] -= x * f[1];
    for (size_t k = 0; k < count; k++) {
        double part = list[k].whole ? x : after ? (x >= list[k].a) : (x > list[k].a);
        double arm = list[k].whole ? x / 2.0 : x - list[k].a;
        for (int c = 0; c < 3; c++)
            sum[c] += list[k].p[c] * part;
        sum[4] += list[k].p[2] * part * arm;
        sum[5] -= list[k].p[1] * part * arm;
    }
    for (int c = 0; c < 6; c++)
        out[c] = -sum[c];
}

void second_leave_out_spins(const struct second *second, double *apart) {
    size_t joints = second->frame->joints.count, kept = 0;
    double **base = ARENA_ARRAY(second->arena, double *, second->free_count);
    for (size_t f = 0; f < second->free_count; f++) {
        double *v = ARENA_ARRAY(second->arena, double, 3 * joints), size = 0.0;
        for (size_t k = 0; k < 3 * joints; k++)
            v[k] =
                second->turn[k / 3][k % 3] < 0 ? 0.0 : second->free[f][second->turn[k / 3][k % 3]];
        for (int pass = 0; pass < 2; pass++)
            for (size_t b = 0; b < kept; b++) {
                double dot = 0.0;
                for (size_t k = 0; k < 3 * joints; k++)
                    dot += v[k] * base[b][k];
                for (size_t k = 0; k < 3 * joints; k++)
                    v[k] -= dot * base[b][k];
            }
        for (size_t k = 0; k < 3 * joints; k++)
            size += v[k] * v[k];
        size = sqrt(size);
        if (size < 1e-7)
            continue;
        for (size_t k = 0; k < 3 * joints; k++)
            v[k] /= size;
        base[kept++] = v;
    }
    for (int pass = 0; pass < 2; pass++)
        for (size_t b = 0; b < kept; b++) {
            double dot = 0.0;
            for (size_t k = 0; k < 3 * joints; k++)
                dot += apart[k] * base[b][k];
            for (size_t k = 0; k < 3 * joints; k++)
                apart[k] -= dot * base[b][k];
        }
}
