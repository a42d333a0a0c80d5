#include "fold/readable.h"

#include <math.h>
#include <string.h>

#define NOTHING 1e-9 /* of the largest entry of a row */

/* Rows of numbers, one a movement; column 3 j + c is joint j along c. */
struct rows {
    double **items;
    size_t count, columns;
};

static double largest(const double *row, size_t columns) {
    double most = 0.0;
    for (size_t k = 0; k < columns; k++)
        most = fmax(most, fabs(row[k]));
    return most;
}

/* Scale to a largest entry of 1 (the first of the largest is positive) and drop the noise. */
static void tidy(double *row, size_t columns) {
    double most = largest(row, columns), sign = 0.0;
    if (!(most > 0.0))
        return;
    for (size_t k = 0; k < columns; k++) {
        if (sign == 0.0 && fabs(row[k]) > 0.999 * most)
            sign = row[k] < 0.0 ? -1.0 : 1.0;
        row[k] /= most;
        if (fabs(row[k]) < NOTHING)
            row[k] = 0.0;
    }
    for (size_t k = 0; k < columns; k++)
        row[k] = row[k] == 0.0 ? 0.0 : sign * row[k];
}

static void swap(struct rows *rows, size_t a, size_t b) {
    double *kept = rows->items[a];
    rows->items[a] = rows->items[b];
    rows->items[b] = kept;
}

static void subtract(double *row, const double *other, double share, size_t columns) {
    for (size_t k = 0; k < columns; k++)
        row[k] -= share * other[k];
}

/* Gauss-Jordan over the columns that are not along `but` (-1: over all), rows `from` and on as
 * pivots, all rows cleared. The largest entry leads; of equal ones the first. Returns the number of
 * pivots; the rows behind hold nothing in those columns. */
static size_t eliminate(struct rows *rows, size_t from, int but) {
    size_t done = from;
    for (; done < rows->count; done++) {
        size_t best_row = done, best_column = 0;
        double best = 0.0;
        for (size_t r = done; r < rows->count; r++)
            for (size_t k = 0; k < rows->columns; k++)
                if ((but < 0 || k % 3 != (size_t)but) &&
                    (fabs(rows->items[r][k]) > best * (1.0 + 1e-6) ||
                     (fabs(rows->items[r][k]) > best * (1.0 - 1e-6) && k < best_column))) {
                    best = fabs(rows->items[r][k]);
                    best_row = r;
                    best_column = k;
                }
        if (!(best > 1e3 * NOTHING))
            break;
        swap(rows, done, best_row);
        for (size_t r = 0; r < rows->count; r++) {
            double share = rows->items[r][best_column] / rows->items[done][best_column];
            if (r == done || share == 0.0)
                continue;
            subtract(rows->items[r], rows->items[done], share, rows->columns);
            rows->items[r][best_column] = 0.0;
        }
        for (size_t r = done + 1; r < rows->count; r++)
            if (largest(rows->items[r], rows->columns) < 1e3 * NOTHING)
                memset(rows->items[r], 0, rows->columns * sizeof(double));
    }
    return done - from;
}

static struct rows copy_of(struct arena *arena, const struct rows *rows) {
    struct rows copy = {ARENA_ARRAY(arena, double *, rows->count + 1), rows->count, rows->columns};
    for (size_t r = 0; r < rows->count; r++) {
        copy.items[r] = ARENA_ARRAY(arena, double, rows->columns);
        memcpy(copy.items[r], rows->items[r], rows->columns * sizeof(double));
    }
    return copy;
}

/* Drop rows without entries, tidy the others. */
static void drop_empty(struct rows *rows) {
    size_t kept = 0;
    for (size_t r = 0; r < rows->count; r++)
        if (largest(rows->items[r], rows->columns) > 0.0) {
            tidy(rows->items[r], rows->columns);
            rows->items[kept++] = rows->items[r];
        }
    rows->count = kept;
}

/* The movements along `axis` alone. */
static struct rows alone(struct arena *arena, const struct rows *rows, int axis) {
    struct rows copy = copy_of(arena, rows);
    size_t others = eliminate(&copy, 0, axis);
    struct rows out = {copy.items + others, copy.count - others, copy.columns};
    for (size_t r = 0; r < out.count; r++)
        for (size_t k = 0; k < out.columns; k++)
            if (k % 3 != (size_t)axis)
                out.items[r][k] = 0.0;
    drop_empty(&out);
    eliminate(&out, 0, -1);
    drop_empty(&out);
    return out;
}

/* The first column in which the row moves. */
static size_t leads(const double *row, size_t columns) {
    size_t k = 0;
    while (k < columns && !(fabs(row[k]) > 1e-6))
        k++;
    return k;
}

static void sort_by_lead(struct rows *rows) {
    for (size_t r = 1; r < rows->count; r++)
        for (size_t k = r; k > 0 && leads(rows->items[k], rows->columns) <
                                        leads(rows->items[k - 1], rows->columns);
             k--)
            swap(rows, k, k - 1);
}

/* What the plain rows do not span, cleared of their leading joints as far as that goes. */
static struct rows rest_of(struct arena *arena, const struct rows *rows, const struct rows *plain) {
    struct rows first = copy_of(arena, plain), second = copy_of(arena, rows);
    struct rows all = {ARENA_ARRAY(arena, double *, first.count + second.count + 1),
                       first.count + second.count, rows->columns};
    memcpy(all.items, first.items, first.count * sizeof *all.items);
    memcpy(all.items + first.count, second.items, second.count * sizeof *all.items);
    for (size_t done = 0; done < first.count; done++) {
        size_t column = 0;
        for (size_t k = 1; k < rows->columns; k++)
            if (fabs(all.items[done][k]) > fabs(all.items[done][column]) * (1.0 + 1e-6))
                column = k;
        for (size_t r = 0; r < all.count; r++)
            if (r != done)
                subtract(all.items[r], all.items[done],
                         all.items[r][column] / all.items[done][column], rows->columns);
    }
    struct rows out = {all.items + first.count, second.count, rows->columns};
    for (size_t r = 0; r < out.count; r++)
        if (largest(out.items[r], rows->columns) < 1e3 * NOTHING)
            memset(out.items[r], 0, rows->columns * sizeof(double));
    drop_empty(&out);
    eliminate(&out, 0, -1);
    drop_empty(&out);
    return out;
}

static void append(struct rows *list, const struct rows *more) {
    for (size_t r = 0; r < more->count; r++)
        list->items[list->count++] = more->items[r];
}

void fold_readable(struct arena *arena, const struct model *model, struct fold_ways *ways) {
    size_t columns = 3 * model->frame->joints.count;
    if (ways->count == 0 || ways->count > READABLE_AT_MOST)
        return;
    struct rows rows = {ARENA_ARRAY(arena, double *, ways->count), ways->count, columns};
    for (size_t r = 0; r < ways->count; r++) {
        rows.items[r] = ARENA_ARRAY(arena, double, columns);
        memcpy(rows.items[r], ways->moves[r], columns * sizeof(double));
        tidy(rows.items[r], columns);
    }
    struct rows plain = {ARENA_ARRAY(arena, double *, 4 * ways->count), 0, columns};
    for (int axis = 0; axis < 3; axis++) {
        struct rows block = alone(arena, &rows, axis);
        sort_by_lead(&block);
        append(&plain, &block);
    }
    struct rows rest = rest_of(arena, &rows, &plain);
    sort_by_lead(&rest);
    append(&plain, &rest);
    double(**moves)[3] = arena_take(arena, plain.count, sizeof *moves);
    for (size_t r = 0; r < plain.count; r++) {
        moves[r] = arena_take(arena, model->frame->joints.count, sizeof *moves[r]);
        memcpy(moves[r], plain.items[r], columns * sizeof(double));
    }
    ways->moves = moves;
    ways->count = plain.count;
}
