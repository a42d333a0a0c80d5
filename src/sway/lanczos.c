#include "sway/lanczos.h"

#include "solve/kernel.h"
#include "solve/sweep.h"

#include <math.h>
#include <string.h>

enum { STEPS = 80, FIRST_LOOK = 5 };
/* The inverse iteration that follows wants the factor to much less than it looks below it. */
#define SETTLED 1e-7

/* How many eigenvalues of the tridiagonal matrix lie above x. */
static int count_above(const double *alpha, const double *beta, int count, double x) {
    int above = 0;
    double pivot = 1.0;
    for (int i = 0; i < count; i++) {
        double before = i > 0 ? beta[i - 1] * beta[i - 1] / pivot : 0.0;
        pivot = alpha[i] - x - before;
        if (pivot == 0.0)
            pivot = 1e-300;
        above += pivot > 0.0;
    }
    return above;
}

/* Largest eigenvalue of the tridiagonal matrix, by halving. */
static double largest_of(const double *alpha, const double *beta, int count) {
    double low = -INFINITY, high = -INFINITY;
    for (int i = 0; i < count; i++) {
        double around = (i > 0 ? fabs(beta[i - 1]) : 0.0) + (i + 1 < count ? fabs(beta[i]) : 0.0);
        low = fmax(low, alpha[i]);
        high = fmax(high, alpha[i] + around);
    }
    for (int pass = 0; pass < 100 && high - low > 1e-14 * fmax(fabs(low), fabs(high)); pass++) {
        double middle = low + (high - low) / 2.0;
        if (count_above(alpha, beta, count, middle) > 0)
            low = middle;
        else
            high = middle;
    }
    return low;
}

struct process {
    size_t count;
    const struct sparse *factor;
    const struct entries *geometric;
    double *root;         /* 1/sqrt of the pivots */
    double *work, *block; /* block: for the sweeps */
    double *vectors[STEPS + 1];
    double alpha[STEPS], beta[STEPS];
};

/* out = C x. */
static void apply(struct process *process, const double *x, double *out) {
    for (size_t i = 0; i < process->count; i++)
        process->work[i] = process->root[i] * x[i];
    sweep_up(process->factor, process->work, process->block);
    entries_multiply(process->geometric, process->work, out);
    sweep_down(process->factor, out, process->block);
    for (size_t i = 0; i < process->count; i++)
        out[i] *= -process->root[i];
}

static void make_orthogonal(struct process *process, int steps, double *x) {
    for (int pass = 0; pass < 2; pass++)
        for (int k = 0; k < steps; k++) {
            double share = kernel_products(process->vectors[k], x, process->count);
            for (size_t i = 0; i < process->count; i++)
                x[i] -= share * process->vectors[k][i];
        }
}

/* Scale to length 1; returns the length it had. */
static double scale(double *x, size_t count) {
    double length = sqrt(kernel_products(x, x, count));
    for (size_t i = 0; i < count && length > 0.0; i++)
        x[i] /= length;
    return length;
}

/* One more vector; false where the space is used up. */
static bool step(struct arena *arena, struct process *process, int k) {
    double *next = process->vectors[k + 1] = ARENA_ARRAY(arena, double, process->count);
    apply(process, process->vectors[k], next);
    process->alpha[k] = kernel_products(process->vectors[k], next, process->count);
    double whole = sqrt(kernel_products(next, next, process->count));
    make_orthogonal(process, k + 1, next);
    process->beta[k] = scale(next, process->count);
    return process->beta[k] > 1e-13 * whole;
}

/* A start without any symmetry, so that no shape of buckling is orthogonal to it: the fractions of
 * multiples of the golden section, taken through C once. */
static void start(struct arena *arena, struct process *process) {
    double *x = process->vectors[0] = ARENA_ARRAY(arena, double, process->count);
    double *raw = ARENA_ARRAY(arena, double, process->count);
    double fraction = 0.0;
    for (size_t i = 0; i < process->count; i++) {
        fraction += 0.618033988749895;
        fraction -= floor(fraction);
        raw[i] = 0.5 + fraction;
    }
    apply(process, raw, x);
    scale(x, process->count);
}

double lanczos_largest(struct arena *arena, const struct sparse *factor,
                       const struct entries *geometric) {
    size_t count = factor->blocks->unknowns;
    struct process process = {.count = count,
                              .factor = factor,
                              .geometric = geometric,
                              .root = ARENA_ARRAY(arena, double, count),
                              .work = ARENA_ARRAY(arena, double, count),
                              .block = ARENA_ARRAY(arena, double, factor->blocks->tallest)};
    for (size_t i = 0; i < count; i++)
        process.root[i] = 1.0 / sqrt(*sparse_diagonal(factor, i));
    start(arena, &process);
    double largest = -INFINITY;
    for (int k = 0; k < STEPS && (size_t)k < count; k++) {
        bool more = step(arena, &process, k);
        if (more && k < FIRST_LOOK)
            continue;
        double now = largest_of(process.alpha, process.beta, k + 1);
        if (!more || (now > 0.0 && now - largest <= SETTLED * now))
            return now;
        largest = now;
    }
    return largest;
}
