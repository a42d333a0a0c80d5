#include "solve/slack.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

struct ties {
    size_t count;
    size_t *columns;
    int *members;
    double *forces; /* N: pull under the mix with every tie in; then pull of tie i for one N on tie
                       j at count + i * count + j */
};

static double pull(const struct response *response, size_t column, int member) {
    const struct model *model = response->system->model;
    const double *ends =
        &response->ends[column][ELEMENT_DOFS * model->members[member].first_segment];
    return (ends[6] - ends[0]) / 2.0;
}

static struct ties ties_of(struct arena *arena, const struct response *response,
                           const double *weights) {
    struct ties ties = {0};
    for (size_t c = 0; c < response->column_count; c++)
        ties.count += response->columns[c].tie >= 0;
    ties.columns = ARENA_ARRAY(arena, size_t, ties.count);
    ties.members = ARENA_ARRAY(arena, int, ties.count);
    ties.forces = ARENA_ARRAY(arena, double, ties.count *(ties.count + 1));
    size_t k = 0;
    for (size_t c = 0; c < response->column_count; c++)
        if (response->columns[c].tie >= 0) {
            ties.columns[k] = c;
            ties.members[k++] = response->columns[c].tie;
        }
    for (size_t i = 0; i < ties.count; i++) {
        for (size_t c = 0; c < response->column_count; c++)
            if (response->columns[c].tie < 0 && weights[c] != 0.0)
                ties.forces[i] += weights[c] * pull(response, c, ties.members[i]);
        for (size_t j = 0; j < ties.count; j++)
            ties.forces[ties.count + i * ties.count + j] =
                pull(response, ties.columns[j], ties.members[i]);
    }
    return ties;
}

/* Weights of the ties that are out: (1 - A) x = N. False where that cannot be solved: those ties
 * were all that held the frame. */
static bool undo(struct arena *arena, const struct ties *ties, const bool *out, double *x) {
    size_t n = 0;
    size_t *which = ARENA_ARRAY(arena, size_t, ties->count);
    for (size_t i = 0; i < ties->count; i++) {
        x[i] = 0.0;
        if (out[i])
            which[n++] = i;
    }
    if (n == 0)
        return true;
    double *a = ARENA_ARRAY(arena, double, n *n), *b = ARENA_ARRAY(arena, double, n);
    size_t *places = ARENA_ARRAY(arena, size_t, n);
    for (size_t i = 0; i < n; i++) {
        b[i] = ties->forces[which[i]];
        for (size_t j = 0; j < n; j++)
            a[i * n + j] = (i == j) - ties->forces[ties->count + which[i] * ties->count + which[j]];
    }
    gsl_matrix_view matrix = gsl_matrix_view_array(a, n, n);
    gsl_vector_view vector = gsl_vector_view_array(b, n);
    gsl_permutation order = {.size = n, .data = places};
    int sign;
    if (gsl_linalg_LU_decomp(&matrix.matrix, &order, &sign) != GSL_SUCCESS)
        return false;
    for (size_t i = 0; i < n; i++)
        if (!(fabs(a[i * n + i]) > 1e-9))
            return false;
    gsl_linalg_LU_svx(&matrix.matrix, &order, &vector.vector);
    for (size_t i = 0; i < n; i++)
        x[which[i]] = b[i];
    return true;
}

/* Pull of each tie in a state; of one that is out, what it would carry if it came back. */
static double carried(const struct ties *ties, const double *x, size_t tie) {
    double force = ties->forces[tie];
    for (size_t j = 0; j < ties->count; j++)
        force += x[j] * ties->forces[ties->count + tie * ties->count + j];
    return force;
}

/* Change the one tie that is most wrong: pushed and in, or pulling and out. False: none is. */
static bool step(const struct ties *ties, const double *x, double small, bool *out) {
    double worst = small;
    size_t which = ties->count;
    for (size_t i = 0; i < ties->count; i++) {
        double force = carried(ties, x, i), wrong = out[i] ? force : -force;
        if (wrong > worst) {
            worst = wrong;
            which = i;
        }
    }
    if (which == ties->count)
        return false;
    out[which] = !out[which];
    return true;
}

/* Change tie by tie from all in; false where that does not come to rest. */
static bool settle(struct arena *arena, const struct ties *ties, double small, bool *out,
                   double *x) {
    for (size_t pass = 0; pass < 4 * ties->count + 8; pass++) {
        if (!undo(arena, ties, out, x))
            return false;
        if (!step(ties, x, small, out))
            return true;
    }
    return false;
}

/* Every state of a few ties; the first that stands. */
static bool try_all(struct arena *arena, const struct ties *ties, double small, bool *out,
                    double *x) {
    enum { FEW = 12 };
    if (ties->count > FEW)
        return false;
    for (size_t state = 0; state < (size_t)1 << ties->count; state++) {
        bool wrong = false;
        for (size_t i = 0; i < ties->count; i++)
            out[i] = (state >> i) & 1;
        if (!undo(arena, ties, out, x))
            continue;
        for (size_t i = 0; i < ties->count; i++)
            wrong |= (out[i] ? carried(ties, x, i) : -carried(ties, x, i)) > small;
        if (!wrong)
            return true;
    }
    return false;
}

bool slack_settle(struct arena *arena, const struct response *response, double *weights,
                  bool *slack) {
    struct ties ties = ties_of(arena, response, weights);
    if (ties.count == 0)
        return true;
    bool *out = ARENA_ARRAY(arena, bool, ties.count);
    double *x = ARENA_ARRAY(arena, double, ties.count);
    double largest = 0.0;
    for (size_t i = 0; i < ties.count; i++)
        largest = fmax(largest, fabs(ties.forces[i]));
    double small = 1e-9 * largest;
    if (!settle(arena, &ties, small, out, x) && !try_all(arena, &ties, small, out, x))
        return false;
    for (size_t i = 0; i < ties.count; i++) {
        weights[ties.columns[i]] = x[i];
        if (slack)
            slack[ties.members[i]] = out[i];
    }
    return true;
}
