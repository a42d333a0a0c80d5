#include "fold/straight.h"

#include "base/vector.h"

#include <math.h>

static void add_row(struct arena *arena, struct straight *straight, struct strain_row row) {
    ARRAY_PUSH(arena, &straight->rows, row);
}

static struct strain_row elongation(int one, int other, const double n[3]) {
    struct strain_row row = {.joints = {one, other}, .count = 2};
    for (int c = 0; c < 3; c++) {
        row.factors[0][c] = -n[c];
        row.factors[1][c] = n[c];
    }
    return row;
}

/* The middle of three joints stays on the line of the other two. */
static struct strain_row straightness(const struct along_joint *on, const double lateral[3]) {
    double share = (on[1].at - on[0].at) / (on[2].at - on[0].at);
    struct strain_row row = {.joints = {on[0].joint, on[1].joint, on[2].joint}, .count = 3};
    for (int c = 0; c < 3; c++) {
        row.factors[0][c] = -(1.0 - share) * lateral[c];
        row.factors[1][c] = lateral[c];
        row.factors[2][c] = -share * lateral[c];
    }
    return row;
}

/* Directions in which a support that holds some turning keeps a stick from swinging: the held axes,
 * less what a free turn of the stick about itself can make up for. Returns how many. */
static int swing_directions(const double axis[3], const bool held[3], double out[3][3]) {
    double rows[3][3];
    int count = 0, pivot = -1;
    for (int c = 0; c < 3; c++)
        if (held[c]) {
            for (int k = 0; k < 3; k++)
                rows[count][k] = k == c;
            count++;
        }
    for (int r = 0; r < count; r++)
        if (fabs(vector_dot(rows[r], axis)) > 1e-9 &&
            (pivot < 0 || fabs(vector_dot(rows[r], axis)) > fabs(vector_dot(rows[pivot], axis))))
            pivot = r;
    int kept = 0;
    for (int r = 0; r < count; r++) {
        if (r == pivot)
            continue;
        double turn[3];
        double share = pivot < 0 ? 0.0 : vector_dot(rows[r], axis) / vector_dot(rows[pivot], axis);
        for (int k = 0; k < 3; k++)
            turn[k] = rows[r][k] - (pivot < 0 ? 0.0 : share * rows[pivot][k]);
        /* a turn about `turn` swings the stick along turn x axis */
        vector_cross(turn, axis, out[kept]);
        if (vector_length(out[kept]) > 1e-9) {
            vector_unit(out[kept]);
            kept++;
        }
    }
    return kept;
}

static void add_clamps(struct arena *arena, struct straight *straight) {
    const struct model *model = straight->model;
    for (size_t k = 0; k < model->frame->supports.count; k++) {
        const struct support *support = &model->frame->supports.items[k];
        int host = model->host[support->joint];
        if (host < 0 || !(support->held[3] || support->held[4] || support->held[5]))
            continue;
        size_t first = model->along.first[host], last = model->along.first[host + 1] - 1,
               at = first;
        while (at < last && model->along.joints[at].joint != support->joint)
            at++;
        size_t next = at < last ? at + 1 : at - 1;
        double directions[3][3];
        int count = swing_directions(model->members[host].axes[0], &support->held[3], directions);
        for (int d = 0; d < count; d++)
            add_row(arena, straight,
                    elongation(model->along.joints[at].joint, model->along.joints[next].joint,
                               directions[d]));
    }
}

struct straight straight_build(struct arena *arena, const struct model *model,
                               const struct bar *bars, size_t bar_count) {
    struct straight straight = {.model = model};
    for (size_t m = 0; m < model->member_count; m++) {
        const struct model_member *member = &model->members[m];
        const struct along_joint *on = &model->along.joints[model->along.first[m]];
        for (size_t k = 0; k < member->segment_count; k++)
            add_row(arena, &straight, elongation(on[k].joint, on[k + 1].joint, member->axes[0]));
        for (size_t k = 0; k + 1 < member->segment_count; k++)
            for (int way = 1; way < 3; way++)
                add_row(arena, &straight, straightness(&on[k], member->axes[way]));
    }
    add_clamps(arena, &straight);
    for (size_t b = 0; b < bar_count; b++) {
        double n[3];
        vector_between(model->frame->joints.items[bars[b].joints[0]].at,
                       model->frame->joints.items[bars[b].joints[1]].at, n);
        vector_unit(n);
        add_row(arena, &straight, elongation(bars[b].joints[0], bars[b].joints[1], n));
    }
    return straight;
}

double strain_of(const struct strain_row *row, const double (*moves)[3]) {
    double strain = 0.0;
    for (int k = 0; k < row->count; k++)
        strain += vector_dot(row->factors[k], moves[row->joints[k]]);
    return strain;
}
