#include "fold/ways.h"

#include "solve/order.h"

#include <math.h>
#include <string.h>

#define SUSPECT_PIVOT 1e-9 /* of B'B: strains of 3e-5 and less are looked into */
#define NO_STRAIN 1e-9     /* of the largest movement */

struct fold_system {
    const struct straight *straight;
    int (*unknown)[3]; /* per joint; -1 held */
    size_t count;
    struct band band; /* B'B */
};

static void number_joints(struct arena *arena, struct fold_system *system) {
    const struct model *model = system->straight->model;
    size_t joints = model->frame->joints.count, pairs = 0;
    int(*pair)[2] = arena_take(arena, 2 * system->straight->rows.count, sizeof *pair);
    for (size_t r = 0; r < system->straight->rows.count; r++) {
        const struct strain_row *row = &system->straight->rows.items[r];
        for (int k = 0; k + 1 < row->count; k++, pairs++) {
            pair[pairs][0] = row->joints[k];
            pair[pairs][1] = row->joints[k + 1];
        }
    }
    struct graph graph = graph_of_pairs(arena, joints, (const int(*)[2])pair, pairs);
    int *order = order_band(arena, &graph);
    system->unknown = arena_take(arena, joints, sizeof *system->unknown);
    for (size_t k = 0; k < joints; k++)
        for (int c = 0; c < 3; c++)
            system->unknown[order[k]][c] =
                model->slots[model->move_slot[order[k]]].held[c] ? -1 : (int)system->count++;
}

static void assemble(struct arena *arena, struct fold_system *system) {
    const struct straight *straight = system->straight;
    size_t half = 0;
    for (int pass = 0; pass < 2; pass++) {
        if (pass)
            system->band = band_new(arena, system->count, half);
        for (size_t r = 0; r < straight->rows.count; r++) {
            const struct strain_row *row = &straight->rows.items[r];
            for (int i = 0; i < 3 * row->count; i++)
                for (int j = 0; j < 3 * row->count; j++) {
                    int a = system->unknown[row->joints[i / 3]][i % 3];
                    int b = system->unknown[row->joints[j / 3]][j % 3];
                    double value = row->factors[i / 3][i % 3] * row->factors[j / 3][j % 3];
                    if (a < 0 || b < 0 || b > a || value == 0.0)
                        continue;
                    if (pass)
                        *band_at(&system->band, (size_t)a, (size_t)b) += value;
                    else if ((size_t)(a - b) > half)
                        half = (size_t)(a - b);
                }
        }
    }
}

static void to_moves(const struct fold_system *system, const double *x, double (*moves)[3]) {
    for (size_t j = 0; j < system->straight->model->frame->joints.count; j++)
        for (int c = 0; c < 3; c++)
            moves[j][c] = system->unknown[j][c] < 0 ? 0.0 : x[system->unknown[j][c]];
}

/* B'(B u) over the unknowns; returns the largest strain. */
static double strained(const struct fold_system *system, const double (*moves)[3], double *out) {
    double largest = 0.0;
    memset(out, 0, system->count * sizeof *out);
    for (size_t r = 0; r < system->straight->rows.count; r++) {
        const struct strain_row *row = &system->straight->rows.items[r];
        double strain = strain_of(row, moves);
        largest = fmax(largest, fabs(strain));
        for (int i = 0; i < 3 * row->count; i++) {
            int a = system->unknown[row->joints[i / 3]][i % 3];
            if (a >= 0)
                out[a] += strain * row->factors[i / 3][i % 3];
        }
    }
    return largest;
}

/* The movement that one held unknown stands for; false where it strains something after all. */
static bool movement(const struct fold_system *system, const struct band *factor, size_t unknown,
                     double spring, double *x, double *work, double (*moves)[3]) {
    memset(x, 0, system->count * sizeof *x);
    x[unknown] = spring;
    band_solve(factor, x);
    double strain = NAN, largest = 0.0;
    for (int pass = 0; pass < 4; pass++) {
        to_moves(system, x, moves);
        strain = strained(system, (const double(*)[3])moves, work);
        band_solve(factor, work);
        largest = 0.0;
        for (size_t i = 0; i < system->count; i++) {
            largest = fmax(largest, fabs(x[i]));
            x[i] -= work[i];
        }
        if (strain < 1e-3 * NO_STRAIN * largest)
            break;
    }
    for (size_t j = 0; j < system->straight->model->frame->joints.count; j++)
        for (int c = 0; c < 3; c++)
            moves[j][c] /= largest;
    return strain < NO_STRAIN * largest;
}

/* One attempt with the unknowns that may be held; a candidate that turns out to strain something is
 * barred for the next. */
static bool attempt(struct arena *arena, const struct fold_system *system, bool *barred,
                    struct fold_ways *ways) {
    bool *fixed = ARENA_ARRAY(arena, bool, system->count);
    struct band trial = band_copy(arena, &system->band);
    size_t found = band_free_unknowns(&trial, SUSPECT_PIVOT, 1.0, barred, fixed);
    struct band factor = band_copy(arena, &system->band);
    for (size_t i = 0; i < system->count; i++)
        if (fixed[i])
            factor.items[i * (factor.half + 1)] += 1.0;
    double least;
    if (!band_cholesky(&factor, &least))
        return true; /* nothing can be said of this one: leave it as it was found before */
    ways->count = 0;
    ways->moves = arena_take(arena, found, sizeof *ways->moves);
    double *x = ARENA_ARRAY(arena, double, system->count);
    double *work = ARENA_ARRAY(arena, double, system->count);
    bool all_confirmed = true;
    for (size_t i = 0; i < system->count; i++) {
        if (!fixed[i])
            continue;
        double(*moves)[3] =
            arena_take(arena, system->straight->model->frame->joints.count, sizeof *moves);
        if (movement(system, &factor, i, 1.0, x, work, moves))
            ways->moves[ways->count++] = moves;
        else
            barred[i] = true, all_confirmed = false;
    }
    return all_confirmed;
}

static bool two_joint_sticks(const struct model *model) {
    for (size_t m = 0; m < model->member_count; m++)
        if (model->members[m].segment_count != 1)
            return false;
    return true;
}

struct fold_ways fold_ways(struct arena *arena, const struct model *model, const struct bar *bars,
                           size_t bar_count) {
    enum { ATTEMPTS = 8 };
    struct straight straight = straight_build(arena, model, bars, bar_count);
    struct fold_system system = {.straight = &straight};
    number_joints(arena, &system);
    assemble(arena, &system);
    struct fold_ways ways = {.unknowns = system.count};
    bool *barred = ARENA_ARRAY(arena, bool, system.count);
    for (int k = 0; k < ATTEMPTS && !attempt(arena, &system, barred, &ways); k++)
        ;
    ways.rank = ways.unknowns - ways.count;
    ways.self_stress_known = two_joint_sticks(model);
    ways.self_stress = straight.rows.count - ways.rank;
    return ways;
}
