#include "sway/lanczos.h"

#include <math.h>
#include <string.h>

enum { STEPS = 80, FIRST_LOOK = 5 };
/* The inverse iteration that follows wants the factor to much less than it looks below it. */
#define SETTLED 1e-7

struct entries entries_of(struct arena *arena, const struct band *band) {
    struct entries entries = {.count = band->count};
    size_t wide = band->half + 1;
    for (size_t k = 0; k < band->count * wide; k++)
        entries.entry_count += band->items[k] != 0.0;
    entries.row = ARENA_ARRAY(arena, int, entries.entry_count);
    entries.column = ARENA_ARRAY(arena, int, entries.entry_count);
    entries.value = ARENA_ARRAY(arena, double, entries.entry_count);
    size_t found = 0;
    for (size_t i = 0; i < band->count; i++)
        for (size_t j = 0; j < wide; j++)
            if (band->items[i * wide + j] != 0.0) {
                entries.row[found] = (int)(i + j);
                entries.column[found] = (int)i;
                entries.value[found++] = band->items[i * wide + j];
            }
    return entries;
}

void entries_multiply(const struct entries *entries, const double *x, double *out) {
    memset(out, 0, entries->count * sizeof *out);
    for (size_t k = 0; k < entries->entry_count; k++) {
        int row = entries->row[k], column = entries->column[k];
        out[row] += entries->value[k] * x[column];
        if (row != column)
            out[column] += entries->value[k] * x[row];
    }
}

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
    const struct band *factor;
    const size_t *reach;
    const struct entries *geometric;
    double *root; /* 1/sqrt of the pivots */
    double *work;
    double *vectors[STEPS + 1];
    double alpha[STEPS], beta[STEPS];
};

/* out = C x. */
static void apply(struct process *process, const double *x, double *out) {
    for (size_t i = 0; i < process->count; i++)
        process->work[i] = process->root[i] * x[i];
    pivots_backward(process->factor, process->reach, process->work);
    entries_multiply(process->geometric, process->work, out);
    pivots_forward(process->factor, process->reach, out);
    for (size_t i = 0; i < process->count; i++)
        out[i] *= -process->root[i];
}

static void make_orthogonal(struct process *process, int steps, double *x) {
    for (int pass = 0; pass < 2; pass++)
        for (int k = 0; k < steps; k++) {
            double share = sum_of_products(process->vectors[k], x, process->count);
            for (size_t i = 0; i < process->count; i++)
                x[i] -= share * process->vectors[k][i];
        }
}

/* Scale to length 1; returns the length it had. */
static double scale(double *x, size_t count) {
    double length = sqrt(sum_of_products(x, x, count));
    for (size_t i = 0; i < count && length > 0.0; i++)
        x[i] /= length;
    return length;
}

/* One more vector; false where the space is used up. */
static bool step(struct arena *arena, struct process *process, int k) {
    double *next = process->vectors[k + 1] = ARENA_ARRAY(arena, double, process->count);
    apply(process, process->vectors[k], next);
    process->alpha[k] = sum_of_products(process->vectors[k], next, process->count);
    double whole = sqrt(sum_of_products(next, next, process->count));
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

double lanczos_largest(struct arena *arena, const struct band *factor,
                       const struct entries *geometric) {
    struct process process = {.count = factor->count,
                              .factor = factor,
                              .reach = pivots_reach(arena, factor),
                              .geometric = geometric,
                              .root = ARENA_ARRAY(arena, double, factor->count),
                              .work = ARENA_ARRAY(arena, double, factor->count)};
    for (size_t i = 0; i < factor->count; i++)
        process.root[i] = 1.0 / sqrt(factor->items[i * (factor->half + 1)]);
    start(arena, &process);
    double largest = -INFINITY;
    for (int k = 0; k < STEPS && (size_t)k < factor->count; k++) {
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
