/* solve/kernel.h - small dense products. Matrices are stored column by column unless it says
 * otherwise. */
#ifndef SOLVE_KERNEL_H
#define SOLVE_KERNEL_H

#include <stdbool.h>
#include <stddef.h>

enum { KERNEL_ROWS = 8, KERNEL_COLUMNS = 6 };

/* C -= A W, or where `fresh` C = -A W, over `rows` rows (a whole number of KERNEL_ROWS) and
 * `columns` columns; columns of C and A lie c_tall and a_tall apart. W is stored row by row:
 * `depth` rows of `columns` numbers. */
void kernel_take_off(double *c, size_t c_tall, const double *a, size_t a_tall, const double *w,
                     size_t rows, size_t columns, size_t depth, bool fresh);

/* target -= share from, over `count` numbers. */
void kernel_take_share(double *restrict target, const double *restrict from, double share,
                       size_t count);

/* target += from, over `count` numbers. */
void kernel_add(double *restrict target, const double *restrict from, size_t count);

/* Sum of products, in a fixed order. */
double kernel_products(const double *a, const double *b, size_t count);

void kernel_scale(double *items, double by, size_t count);

/* target = a + factor b, over `count` numbers. */
void kernel_sum(double *target, const double *a, double factor, const double *b, size_t count);

#endif
