#include "solve/sweep.h"

#include "solve/kernel.h"
#include "solve/wide.h"

#include <string.h>

/* Right-hand sides are kept row by row, this many numbers a row. */
enum { CASES = 12, PARTS = CASES / 4 };

/* Take off `n` rows of x, those at `to` in steps of one row or listed, the sum over `depth` rows.
 */
struct take {
    const double *a; /* numbers of the factor */
    size_t row_step, step;
    const int *to, *from; /* rows of x; NULL: as they follow one another */
};

IN_ALL void take_rows(const struct take *take, double *to, const double *from, int n,
                      size_t depth) {
    four sum[4][PARTS];
    double *rows[4];
#pragma GCC unroll 4
    for (int i = 0; i < n; i++) {
        rows[i] = to + CASES * (take->to ? (size_t)take->to[i] : (size_t)i);
#pragma GCC unroll 3
        for (int p = 0; p < PARTS; p++)
            sum[i][p] = *(const four *)(rows[i] + 4 * p);
    }
    for (size_t k = 0; k < depth; k++) {
        const double *row = from + CASES * (take->from ? (size_t)take->from[k] : k);
        const double *at = take->a + k * take->step;
#pragma GCC unroll 4
        for (int i = 0; i < n; i++)
#pragma GCC unroll 3
            for (int p = 0; p < PARTS; p++)
                sum[i][p] -= at[(size_t)i * take->row_step] * *(const four *)(row + 4 * p);
    }
#pragma GCC unroll 4
    for (int i = 0; i < n; i++)
#pragma GCC unroll 3
        for (int p = 0; p < PARTS; p++)
            *(four *)(rows[i] + 4 * p) = sum[i][p];
}

IN_ALL void take_all(struct take take, double *to, const double *from, size_t rows, size_t depth) {
    size_t i = 0;
    for (; i + 4 <= rows; i += 4) {
        take_rows(&take, to, from, 4, depth);
        take.a += 4 * take.row_step;
        take.to = take.to ? take.to + 4 : NULL;
        to += take.to ? 0 : 4 * CASES;
    }
    for (; i < rows; i++) {
        take_rows(&take, to, from, 1, depth);
        take.a += take.row_step;
        take.to = take.to ? take.to + 1 : NULL;
        to += take.to ? 0 : CASES;
    }
}

/* The triangle of a block, four unknowns at a time. */
IN_ALL void down_triangle(const double *panel, size_t tall, size_t width, double *x) {
    for (size_t first = 0; first < width; first += 4) {
        size_t last = first + 4 < width ? first + 4 : width;
        for (size_t i = first + 1; i < last; i++)
            take_all((struct take){panel + first * tall + i, 1, tall, NULL, NULL}, x + i * CASES,
                     x + first * CASES, 1, i - first);
        take_all((struct take){panel + first * tall + last, 1, tall, NULL, NULL}, x + last * CASES,
                 x + first * CASES, width - last, last - first);
    }
}

IN_ALL void up_triangle(const double *panel, size_t tall, size_t width, double *x) {
    for (size_t i = width; i-- > 0;)
        take_all((struct take){panel + i * tall + i + 1, tall, 1, NULL, NULL}, x + i * CASES,
                 x + (i + 1) * CASES, 1, width - i - 1);
}

WIDE static void down(const struct sparse *factor, double *x) {
    for (size_t b = 0; b < factor->blocks->count; b++) {
        const struct block *block = &factor->blocks->items[b];
        const double *panel = factor->items + block->start;
        down_triangle(panel, block->tall, block->width, x + block->first * CASES);
        take_all((struct take){panel + block->width, 1, block->tall, block->below, NULL}, x,
                 x + block->first * CASES, block->below_count, block->width);
    }
}

WIDE static void up(const struct sparse *factor, double *x) {
    for (size_t b = factor->blocks->count; b-- > 0;) {
        const struct block *block = &factor->blocks->items[b];
        const double *panel = factor->items + block->start;
        take_all((struct take){panel + block->width, block->tall, 1, NULL, block->below},
                 x + block->first * CASES, x, block->width, block->below_count);
        up_triangle(panel, block->tall, block->width, x + block->first * CASES);
    }
}

static void divide(const struct sparse *factor, double *x, size_t wide) {
    for (size_t i = 0; i < factor->blocks->unknowns; i++) {
        double pivot = *sparse_diagonal(factor, i);
        for (size_t c = 0; c < wide; c++)
            x[i * wide + c] /= pivot;
    }
}

void sweep_all(struct arena *arena, const struct sparse *factor, size_t count, double *const *x) {
    size_t unknowns = factor->blocks->unknowns;
    struct arena_mark mark = arena_mark(arena);
    if (count == 1) {
        sweep_one(factor, x[0], arena_room(arena, factor->blocks->tallest, sizeof(double)));
        arena_rewind(arena, mark);
        return;
    }
    double *rows = arena_room(arena, unknowns * CASES, sizeof *rows);
    for (size_t first = 0; first < count; first += CASES) {
        size_t some = count - first < CASES ? count - first : CASES;
        for (size_t i = 0; i < unknowns; i++) {
            for (size_t c = 0; c < some; c++)
                rows[i * CASES + c] = x[first + c][i];
            for (size_t c = some; c < CASES; c++)
                rows[i * CASES + c] = 0.0;
        }
        down(factor, rows);
        divide(factor, rows, CASES);
        up(factor, rows);
        for (size_t i = 0; i < unknowns; i++)
            for (size_t c = 0; c < some; c++)
                x[first + c][i] = rows[i * CASES + c];
    }
    arena_rewind(arena, mark);
}

/* ---- one ---- */

void sweep_down(const struct sparse *factor, double *x, double *work) {
    for (size_t b = 0; b < factor->blocks->count; b++) {
        const struct block *block = &factor->blocks->items[b];
        const double *panel = factor->items + block->start;
        size_t rows = block->width + block->below_count;
        memcpy(work, x + block->first, block->width * sizeof *work);
        memset(work + block->width, 0, block->below_count * sizeof *work);
        for (size_t k = 0; k < block->width; k++)
            kernel_take_share(work + k + 1, panel + k * block->tall + k + 1, work[k], rows - k - 1);
        memcpy(x + block->first, work, block->width * sizeof *work);
        for (size_t i = 0; i < block->below_count; i++)
            x[block->below[i]] += work[block->width + i];
    }
}

void sweep_up(const struct sparse *factor, double *x, double *work) {
    for (size_t b = factor->blocks->count; b-- > 0;) {
        const struct block *block = &factor->blocks->items[b];
        const double *panel = factor->items + block->start;
        size_t rows = block->width + block->below_count;
        memcpy(work, x + block->first, block->width * sizeof *work);
        for (size_t i = 0; i < block->below_count; i++)
            work[block->width + i] = x[block->below[i]];
        for (size_t k = block->width; k-- > 0;)
            work[k] -= kernel_products(panel + k * block->tall + k + 1, work + k + 1, rows - k - 1);
        memcpy(x + block->first, work, block->width * sizeof *work);
    }
}

void sweep_one(const struct sparse *factor, double *x, double *work) {
    sweep_down(factor, x, work);
    divide(factor, x, 1);
    sweep_up(factor, x, work);
}
