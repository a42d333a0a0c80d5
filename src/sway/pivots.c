#include "sway/pivots.h"

#include <math.h>

/* Four numbers at once, wherever they lie: most of the time of a run of the program goes into the
 * two loops below, and compilers leave them scalar at the usual level of optimization. */
typedef double four __attribute__((vector_size(32), aligned(8), may_alias));

/* The same code once more for processors with wider registers, chosen when the program starts.
 * Without fused multiplication: both give the same bits. */
#if defined(__x86_64__) && defined(__GLIBC__) && defined(__GNUC__) && !defined(__clang__) &&       \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define WIDE __attribute__((target_clones("avx2", "default")))
#else
#define WIDE
#endif
#define IN_BOTH static inline __attribute__((always_inline))

/* target -= share from. */
IN_BOTH void take_off(double *restrict target, const double *restrict from, double share,
                      size_t count) {
    size_t k = 0;
    for (; k + 4 <= count; k += 4)
        *(four *)(target + k) -= share * *(const four *)(from + k);
    for (; k < count; k++)
        target[k] -= share * from[k];
}

IN_BOTH double products(const double *a, const double *b, size_t count) {
    four sums = {0};
    size_t k = 0;
    for (; k + 4 <= count; k += 4)
        sums += *(const four *)(a + k) * *(const four *)(b + k);
    double sum = (sums[0] + sums[1]) + (sums[2] + sums[3]);
    for (; k < count; k++)
        sum += a[k] * b[k];
    return sum;
}

WIDE double sum_of_products(const double *a, const double *b, size_t count) {
    return products(a, b, count);
}

/* Unknowns below row i that column i of the factor reaches: trailing zeros left out. */
static size_t reach_of(const struct band *band, size_t i) {
    const double *column = &band->items[i * (band->half + 1)];
    size_t last = i + band->half < band->count ? band->half : band->count - 1 - i;
    while (last >= 4 && column[last] == 0.0 && column[last - 1] == 0.0 && column[last - 2] == 0.0 &&
           column[last - 3] == 0.0)
        last -= 4;
    while (last > 0 && column[last] == 0.0)
        last--;
    return last;
}

WIDE void band_sum(const struct band *out, const struct band *a, double factor,
                   const struct band *b) {
    size_t count = out->count * (out->half + 1), k = 0;
    for (; k + 4 <= count; k += 4)
        *(four *)(out->items + k) =
            *(const four *)(a->items + k) + factor * *(const four *)(b->items + k);
    for (; k < count; k++)
        out->items[k] = a->items[k] + factor * b->items[k];
}

WIDE struct pivots band_pivots(struct band *band) {
    struct pivots pivots = {.sound = true};
    for (size_t i = 0; i < band->count; i++) {
        double *column = band_at(band, i, i);
        double pivot = column[0];
        if (!(isfinite(pivot) && pivot != 0.0)) {
            pivots.sound = false;
            return pivots;
        }
        pivots.negative += pivot < 0.0;
        size_t last = reach_of(band, i);
        for (size_t j = 1; j <= last; j++) {
            if (column[j] != 0.0)
                take_off(band_at(band, i + j, i + j), column + j, column[j] / pivot, last - j + 1);
        }
        for (size_t j = 1; j <= last; j++)
            column[j] /= pivot;
    }
    return pivots;
}

size_t *pivots_reach(struct arena *arena, const struct band *factor) {
    size_t *reach = ARENA_ARRAY(arena, size_t, factor->count);
    for (size_t i = 0; i < factor->count; i++)
        reach[i] = reach_of(factor, i);
    return reach;
}

WIDE void pivots_forward(const struct band *factor, const size_t *reach, double *x) {
    for (size_t i = 0; i < factor->count; i++)
        take_off(x + i + 1, band_at(factor, i, i) + 1, x[i], reach[i]);
}

WIDE void pivots_backward(const struct band *factor, const size_t *reach, double *x) {
    for (size_t i = factor->count; i-- > 0;)
        x[i] -= products(band_at(factor, i, i) + 1, x + i + 1, reach[i]);
}

void pivots_solve(const struct band *factor, const size_t *reach, double *x) {
    pivots_forward(factor, reach, x);
    for (size_t i = 0; i < factor->count; i++)
        x[i] /= factor->items[i * (factor->half + 1)];
    pivots_backward(factor, reach, x);
}
