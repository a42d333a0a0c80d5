#include "sway/pivots.h"

#include <math.h>

/* Four numbers at once, wherever they lie: most of the time of a run of the program goes into the
 * two loops below, and compilers leave them scalar at the usual level of optimization. */
typedef double four __attribute__((vector_size(32), aligned(8), may_alias));

/* target -= share from. */
static void take_off(double *restrict target, const double *restrict from, double share,
                     size_t count) {
    size_t k = 0;
    for (; k + 4 <= count; k += 4)
        *(four *)(target + k) -= share * *(const four *)(from + k);
    for (; k < count; k++)
        target[k] -= share * from[k];
}

double sum_of_products(const double *a, const double *b, size_t count) {
    four sums = {0};
    size_t k = 0;
    for (; k + 4 <= count; k += 4)
        sums += *(const four *)(a + k) * *(const four *)(b + k);
    double sum = (sums[0] + sums[1]) + (sums[2] + sums[3]);
    for (; k < count; k++)
        sum += a[k] * b[k];
    return sum;
}

/* Unknowns below row i that column i of the factor reaches: trailing zeros left out. */
static size_t reach_of(const struct band *band, size_t i) {
    const double *column = &band->items[i * (band->half + 1)];
    size_t last = i + band->half < band->count ? band->half : band->count - 1 - i;
    while (last > 0 && column[last] == 0.0)
        last--;
    return last;
}

struct pivots band_pivots(struct band *band) {
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

void pivots_forward(const struct band *factor, double *x) {
    for (size_t i = 0; i < factor->count; i++)
        take_off(x + i + 1, band_at(factor, i, i) + 1, x[i], reach_of(factor, i));
}

void pivots_backward(const struct band *factor, double *x) {
    for (size_t i = factor->count; i-- > 0;)
        x[i] -= sum_of_products(band_at(factor, i, i) + 1, x + i + 1, reach_of(factor, i));
}

void pivots_solve(const struct band *factor, double *x) {
    pivots_forward(factor, x);
    for (size_t i = 0; i < factor->count; i++)
        x[i] /= factor->items[i * (factor->half + 1)];
    pivots_backward(factor, x);
}
