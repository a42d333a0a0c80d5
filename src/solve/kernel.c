#include "solve/kernel.h"

#include "solve/wide.h"

/* Eight rows of `n` columns, n at most KERNEL_COLUMNS and known where this is inlined. */
IN_ALL void tile(double *c, size_t c_tall, const double *a, size_t a_tall, const double *w,
                 size_t w_wide, int n, size_t depth, bool fresh) {
    eight sum[KERNEL_COLUMNS] = {0};
#pragma GCC unroll 6
    for (int j = 0; j < n && !fresh; j++)
        sum[j] = *(const eight *)(c + (size_t)j * c_tall);
    for (size_t k = 0; k < depth; k++) {
        eight from = *(const eight *)(a + k * a_tall);
#pragma GCC unroll 6
        for (int j = 0; j < n; j++)
            sum[j] -= from * w[k * w_wide + (size_t)j];
    }
#pragma GCC unroll 6
    for (int j = 0; j < n; j++)
        *(eight *)(c + (size_t)j * c_tall) = sum[j];
}

IN_ALL void strip(double *c, size_t c_tall, const double *a, size_t a_tall, const double *w,
                  size_t w_wide, size_t rows, int n, size_t depth, bool fresh) {
    for (size_t i = 0; i < rows; i += KERNEL_ROWS)
        tile(c + i, c_tall, a + i, a_tall, w, w_wide, n, depth, fresh);
}

WIDE void kernel_take_off(double *c, size_t c_tall, const double *a, size_t a_tall, const double *w,
                          size_t rows, size_t columns, size_t depth, bool fresh) {
    size_t j = 0;
    for (; j + KERNEL_COLUMNS <= columns; j += KERNEL_COLUMNS)
        strip(c + j * c_tall, c_tall, a, a_tall, w + j, columns, rows, KERNEL_COLUMNS, depth,
              fresh);
    for (; j + 3 <= columns; j += 3)
        strip(c + j * c_tall, c_tall, a, a_tall, w + j, columns, rows, 3, depth, fresh);
    for (; j < columns; j++)
        strip(c + j * c_tall, c_tall, a, a_tall, w + j, columns, rows, 1, depth, fresh);
}

WIDE void kernel_take_share(double *restrict target, const double *restrict from, double share,
                            size_t count) {
    size_t k = 0;
    for (; k + 8 <= count; k += 8)
        *(eight *)(target + k) -= share * *(const eight *)(from + k);
    for (; k < count; k++)
        target[k] -= share * from[k];
}

WIDE void kernel_add(double *restrict target, const double *restrict from, size_t count) {
    size_t k = 0;
    for (; k + 4 <= count; k += 4)
        *(four *)(target + k) += *(const four *)(from + k);
    for (; k < count; k++)
        target[k] += from[k];
}

WIDE double kernel_products(const double *a, const double *b, size_t count) {
    four sums = {0};
    size_t k = 0;
    for (; k + 4 <= count; k += 4)
        sums += *(const four *)(a + k) * *(const four *)(b + k);
    double sum = (sums[0] + sums[1]) + (sums[2] + sums[3]);
    for (; k < count; k++)
        sum += a[k] * b[k];
    return sum;
}

WIDE void kernel_scale(double *items, double by, size_t count) {
    size_t k = 0;
    for (; k + 8 <= count; k += 8)
        *(eight *)(items + k) *= by;
    for (; k < count; k++)
        items[k] *= by;
}

WIDE void kernel_sum(double *target, const double *a, double factor, const double *b,
                     size_t count) {
    size_t k = 0;
    for (; k + 8 <= count; k += 8)
        *(eight *)(target + k) = *(const eight *)(a + k) + factor * *(const eight *)(b + k);
    for (; k < count; k++)
        target[k] = a[k] + factor * b[k];
}
