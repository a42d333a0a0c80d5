#include "brace/trial.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

/* Numbers of the unknowns of one direction and its entries there; at most six. */
struct direction {
    int unknowns[6];
    double entries[6];
    int count;
};

static struct direction of_bar(const struct system *system, const struct bar *bar) {
    struct direction direction = {.count = 0};
    double n[3];
    bar_direction(system->model, bar, n);
    for (int end = 0; end < 2; end++)
        for (int c = 0; c < 3; c++) {
            int unknown = system->unknown[3 * system->model->move_slot[bar->joints[end]] + c];
            if (unknown < 0 || n[c] == 0.0)
                continue;
            direction.unknowns[direction.count] = unknown;
            direction.entries[direction.count++] = end ? n[c] : -n[c];
        }
    return direction;
}

static double product(const struct direction *direction, const double *x) {
    double sum = 0.0;
    for (int k = 0; k < direction->count; k++)
        sum += direction->entries[k] * x[direction->unknowns[k]];
    return sum;
}

static double *level_moves(struct arena *arena, const struct system *system, const double *x) {
    const struct model *model = system->model;
    double *moves = ARENA_ARRAY(arena, double, 2 * model->frame->joints.count);
    for (size_t j = 0; j < model->frame->joints.count; j++)
        for (int c = 0; c < 2; c++) {
            int unknown = system->unknown[3 * model->move_slot[j] + c];
            moves[2 * j + c] = unknown < 0 ? 0.0 : x[unknown];
        }
    return moves;
}

static void load_unknowns(const struct system *system, const double *slots, double *x) {
    memset(x, 0, system->count * sizeof *x);
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        if (system->unknown[k] >= 0)
            x[system->unknown[k]] = slots[k];
}

struct trial *trial_prepare(struct arena *arena, const struct system *system,
                            const struct bar *bars, size_t count, double *const *pushes,
                            const int *axes, size_t push_count, const double *limits) {
    struct trial *trial = ARENA_NEW(arena, struct trial);
    size_t all = system->mode_count + count;
    *trial = (struct trial){.system = system,
                            .springs = system->mode_count,
                            .count = count,
                            .loads = push_count,
                            .limits = limits};
    trial->stiffness = ARENA_ARRAY(arena, double, all);
    trial->moves = ARENA_ARRAY(arena, double *, all);
    trial->products = ARENA_ARRAY(arena, double, all *all);
    trial->load_moves = ARENA_ARRAY(arena, double *, push_count);
    trial->along = ARENA_ARRAY(arena, double *, push_count);
    struct direction *directions = ARENA_ARRAY(arena, struct direction, all);
    for (size_t k = 0; k < all; k++) {
        if (k < trial->springs) {
            const struct mode *mode = &system->modes[k];
            directions[k] = (struct direction){{(int)mode->fixed}, {1.0}, 1};
            trial->stiffness[k] = -mode->spring;
        } else {
            directions[k] = of_bar(system, &bars[k - trial->springs]);
            trial->stiffness[k] = bars[k - trial->springs].stiffness;
        }
    }
    double *x = ARENA_ARRAY(arena, double, system->count);
    for (size_t k = 0; k < all; k++) {
        memset(x, 0, system->count * sizeof *x);
        for (int i = 0; i < directions[k].count; i++)
            x[directions[k].unknowns[i]] = directions[k].entries[i];
        solver_solve(arena, &system->factor, 1, &x);
        trial->moves[k] = level_moves(arena, system, x);
        for (size_t i = 0; i < all; i++)
            trial->products[i * all + k] = product(&directions[i], x);
    }
    for (size_t p = 0; p < push_count; p++) {
        trial->axes[p] = axes[p];
        load_unknowns(system, pushes[p], x);
        solver_solve(arena, &system->factor, 1, &x);
        trial->load_moves[p] = level_moves(arena, system, x);
        trial->along[p] = ARENA_ARRAY(arena, double, all);
        for (size_t k = 0; k < all; k++)
            trial->along[p][k] = product(&directions[k], x);
    }
    return trial;
}

/* Worst joint where the movements are `moves` less the sum of weighted movements of the set. */
static struct lean worst_lean(const struct trial *trial, size_t push, const size_t *terms,
                              const double *weights, size_t count) {
    struct lean worst = {.joint = -1};
    size_t joints = trial->system->model->frame->joints.count;
    for (size_t j = 0; j < joints; j++) {
        double x = trial->load_moves[push][2 * j], y = trial->load_moves[push][2 * j + 1];
        for (size_t k = 0; k < count; k++) {
            x -= trial->moves[terms[k]][2 * j] * weights[k];
            y -= trial->moves[terms[k]][2 * j + 1] * weights[k];
        }
        double movement = hypot(x, y), ratio = movement / trial->limits[j];
        if (worst.joint < 0 || !(ratio <= worst.ratio * (1.0 + 1e-9)))
            worst = (struct lean){(int)j, movement, trial->limits[j], ratio};
        if (isnan(ratio))
            break;
    }
    return worst;
}

/* Factor D^-1 + V' Z of the set; false where it is singular: the set does not hold the frame. By
 * QR, since GSL's LU takes memory of its own and does not ask whether it got it. */
static bool factor_set(const struct trial *trial, const size_t *terms, size_t count,
                       gsl_matrix *matrix, gsl_vector *tau) {
    size_t all = trial->springs + trial->count;
    double largest = 0.0;
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < count; j++) {
            double value = trial->products[terms[i] * all + terms[j]];
            if (i == j)
                value += 1.0 / trial->stiffness[terms[i]];
            gsl_matrix_set(matrix, i, j, value);
            largest = fmax(largest, fabs(value));
        }
    if (gsl_linalg_QR_decomp(matrix, tau) != GSL_SUCCESS)
        return false;
    for (size_t i = 0; i < count; i++)
        if (!(fabs(gsl_matrix_get(matrix, i, i)) > 1e-10 * largest))
            return false;
    return true;
}

struct trial_result trial_run(struct arena *arena, const struct trial *trial, const int *set,
                              size_t count, double *forces) {
    struct trial_result result = {.stands = true};
    struct arena_mark mark = arena_mark(arena);
    size_t terms_count = trial->springs + count;
    size_t *terms = ARENA_ARRAY(arena, size_t, terms_count);
    for (size_t k = 0; k < terms_count; k++)
        terms[k] = k < trial->springs ? k : trial->springs + (size_t)set[k - trial->springs];
    double *weights = ARENA_ARRAY(arena, double, terms_count);
    gsl_vector_view tau = {0};
    gsl_matrix_view matrix = {0};
    if (terms_count) {
        double *room = ARENA_ARRAY(arena, double, terms_count *terms_count);
        matrix = gsl_matrix_view_array(room, terms_count, terms_count);
        tau = gsl_vector_view_array(ARENA_ARRAY(arena, double, terms_count), terms_count);
        result.stands = factor_set(trial, terms, terms_count, &matrix.matrix, &tau.vector);
    }
    for (size_t p = 0; result.stands && p < trial->loads; p++) {
        for (size_t k = 0; k < terms_count; k++)
            weights[k] = trial->along[p][terms[k]];
        if (terms_count) {
            gsl_vector_view vector = gsl_vector_view_array(weights, terms_count);
            gsl_linalg_QR_svx(&matrix.matrix, &tau.vector, &vector.vector);
        }
        result.lean[p] = worst_lean(trial, p, terms, weights, terms_count);
        result.worst = fmax(result.worst, result.lean[p].ratio);
        if (isnan(result.lean[p].ratio))
            result.stands = false;
        for (size_t k = 0; forces && k < count; k++)
            forces[p * count + k] = weights[trial->springs + k];
    }
    arena_rewind(arena, mark);
    return result;
}
