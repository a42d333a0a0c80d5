#include "fold/tightens.h"

#include "base/vector.h"

#include <gsl/gsl_eigen.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

enum { MOST_ROWS = 300 };
#define NO_STRESS 1e-9 /* singular value of B' that counts as zero */

/* Self-stresses: rows of the result, each as long as there are strain rows. Returns how many. */
static size_t self_stresses(struct arena *arena, const struct straight *straight,
                            double **stresses) {
    size_t rows = straight->rows.count, joints = straight->model->frame->joints.count;
    size_t tall = 3 * joints > rows ? 3 * joints : rows;
    double *a = ARENA_ARRAY(arena, double, tall *rows);
    for (size_t r = 0; r < rows; r++) {
        const struct strain_row *row = &straight->rows.items[r];
        for (int k = 0; k < row->count; k++)
            for (int c = 0; c < 3; c++) {
                int joint = row->joints[k];
                bool held = straight->model->slots[straight->model->move_slot[joint]].held[c];
                if (!held)
                    a[(3 * (size_t)joint + (size_t)c) * rows + r] += row->factors[k][c];
            }
    }
    double *v = ARENA_ARRAY(arena, double, rows *rows);
    double *s = ARENA_ARRAY(arena, double, rows), *work = ARENA_ARRAY(arena, double, rows);
    gsl_matrix_view A = gsl_matrix_view_array(a, tall, rows);
    gsl_matrix_view V = gsl_matrix_view_array(v, rows, rows);
    gsl_vector_view S = gsl_vector_view_array(s, rows), W = gsl_vector_view_array(work, rows);
    if (gsl_linalg_SV_decomp(&A.matrix, &V.matrix, &S.vector, &W.vector) != GSL_SUCCESS)
        return 0;
    size_t count = 0;
    *stresses = ARENA_ARRAY(arena, double, rows *rows);
    for (size_t k = 0; k < rows; k++)
        if (s[k] < NO_STRESS) {
            for (size_t r = 0; r < rows; r++)
                (*stresses)[count * rows + r] = v[r * rows + k];
            count++;
        }
    return count;
}

static double length_of(const struct model *model, const struct strain_row *row) {
    double apart[3];
    return vector_between(model->frame->joints.items[row->joints[0]].at,
                          model->frame->joints.items[row->joints[1]].at, apart);
}

/* How a self-stress stiffens the ways: Q, ways x ways. */
static void stiffening(const struct straight *straight, const struct fold_ways *ways,
                       const double *stress, double *Q) {
    size_t m = ways->count;
    for (size_t r = 0; r < straight->rows.count; r++) {
        const struct strain_row *row = &straight->rows.items[r];
        double share = stress[r] / length_of(straight->model, row);
        for (size_t i = 0; i < m; i++)
            for (size_t j = 0; j < m; j++) {
                double one[3], other[3];
                vector_between(ways->moves[i][row->joints[0]], ways->moves[i][row->joints[1]], one);
                vector_between(ways->moves[j][row->joints[0]], ways->moves[j][row->joints[1]],
                               other);
                Q[i * m + j] += share * vector_dot(one, other);
            }
    }
}

static void release_eigen(void *workspace) {
    gsl_eigen_symm_free(workspace);
}

/* All eigenvalues of one sign and none near zero? */
static bool definite(struct arena *arena, const double *Q, size_t m) {
    gsl_eigen_symm_workspace *workspace = gsl_eigen_symm_alloc(m);
    if (!workspace)
        arena_exhausted(arena);
    arena_defer(arena, release_eigen, workspace);
    double *copy = ARENA_ARRAY(arena, double, m *m), *values = ARENA_ARRAY(arena, double, m);
    for (size_t k = 0; k < m * m; k++)
        copy[k] = Q[k];
    gsl_matrix_view matrix = gsl_matrix_view_array(copy, m, m);
    gsl_vector_view eigen = gsl_vector_view_array(values, m);
    if (gsl_eigen_symm(&matrix.matrix, &eigen.vector, workspace) != GSL_SUCCESS)
        return false;
    double least = INFINITY, most = 0.0;
    bool positive = values[0] > 0.0, same = true;
    for (size_t k = 0; k < m; k++) {
        same &= (values[k] > 0.0) == positive;
        least = fmin(least, fabs(values[k]));
        most = fmax(most, fabs(values[k]));
    }
    return same && least > 1e-6 * most;
}

bool fold_tightens(struct arena *arena, const struct model *model, const struct bar *bars,
                   size_t bar_count, const struct fold_ways *ways) {
    if (!ways->count || !ways->self_stress_known || !ways->self_stress)
        return false;
    struct straight straight = straight_build(arena, model, bars, bar_count);
    size_t rows = straight.rows.count, m = ways->count;
    if (rows > MOST_ROWS)
        return false;
    double *stresses;
    size_t count = self_stresses(arena, &straight, &stresses);
    double *together = ARENA_ARRAY(arena, double, m *m);
    for (size_t k = 0; k < count; k++) {
        double *Q = ARENA_ARRAY(arena, double, m *m), trace = 0.0;
        stiffening(&straight, ways, &stresses[k * rows], Q);
        if (definite(arena, Q, m))
            return true;
        for (size_t i = 0; i < m; i++)
            trace += Q[i * m + i];
        for (size_t i = 0; i < m * m; i++)
            together[i] += trace < 0.0 ? -Q[i] : Q[i];
    }
    return count > 1 && definite(arena, together, m);
}
