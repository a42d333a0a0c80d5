#include "fold/rigid.h"

#include "base/vector.h"

/* x with A x = b for a symmetric A; turns that nothing measures (joints in one line) stay 0. */
static void solve_symmetric(double a[3][3], double b[3], double x[3]) {
    double scale = a[0][0] + a[1][1] + a[2][2];
    bool used[3] = {false};
    for (int c = 0; c < 3; c++)
        x[c] = 0.0;
    int order[3], count = 0;
    for (int step = 0; step < 3; step++) {
        int pivot = -1;
        for (int c = 0; c < 3; c++)
            if (!used[c] && a[c][c] > 1e-9 * scale && (pivot < 0 || a[c][c] > a[pivot][pivot]))
                pivot = c;
        if (pivot < 0)
            break;
        used[pivot] = true;
        order[count++] = pivot;
        for (int r = 0; r < 3; r++) {
            if (used[r])
                continue;
            double share = a[r][pivot] / a[pivot][pivot];
            for (int c = 0; c < 3; c++)
                a[r][c] -= share * a[pivot][c];
            b[r] -= share * b[pivot];
        }
    }
    for (int k = count - 1; k >= 0; k--) {
        double sum = b[order[k]];
        for (int later = k + 1; later < count; later++)
            sum -= a[order[k]][order[later]] * x[order[later]];
        x[order[k]] = sum / a[order[k]][order[k]];
    }
}

struct rigid rigid_fit(const struct frame *frame, const int *joints, size_t count,
                       const double (*moves)[3]) {
    struct rigid rigid = {0};
    double middle[3] = {0}, inertia[3][3] = {{0}}, moment[3] = {0};
    for (size_t k = 0; k < count; k++)
        for (int c = 0; c < 3; c++) {
            middle[c] += frame->joints.items[joints[k]].at[c] / (double)count;
            rigid.slide[c] += moves[joints[k]][c] / (double)count;
        }
    for (size_t k = 0; k < count; k++) {
        double r[3], turning[3];
        double length = vector_between(middle, frame->joints.items[joints[k]].at, r);
        rigid.radius = fmax(rigid.radius, length);
        vector_cross(r, moves[joints[k]], turning);
        for (int i = 0; i < 3; i++) {
            moment[i] += turning[i];
            for (int j = 0; j < 3; j++)
                inertia[i][j] += (i == j ? length * length : 0.0) - r[i] * r[j];
        }
    }
    solve_symmetric(inertia, moment, rigid.turn);
    for (size_t k = 0; k < count; k++) {
        double r[3], swing[3];
        vector_between(middle, frame->joints.items[joints[k]].at, r);
        vector_cross(rigid.turn, r, swing);
        for (int c = 0; c < 3; c++)
            rigid.off = fmax(rigid.off, fabs(moves[joints[k]][c] - rigid.slide[c] - swing[c]));
    }
    return rigid;
}
