#include "cut/basis.h"

#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

/* Worth of a unit of cost in whole numbers, and of the dearest board at most. */
static const int64_t UNIT_WORTH = 1000000000, BOARD_WORTH_MOST = 100000000000000;

bool basis_surplus(const struct basis *basis, int column) {
    return column < 0 && -1 - column < (int)basis->size;
}

int basis_alone(const struct basis *basis, int column) {
    return -1 - column - (int)basis->size;
}

int basis_stock_alone(const struct basis *basis, int row) {
    return kinds_stock_for(basis->kinds, basis->kinds->size[basis->kind[row]]);
}

static double cost_of(const struct basis *basis, int column) {
    if (basis_surplus(basis, column))
        return 0.0;
    int stock = column < 0 ? basis_stock_alone(basis, basis_alone(basis, column))
                           : basis->columns->items[column].stock;
    return (double)basis->kinds->cost[stock];
}

/* What a column gives of each row, times `row_by_row`. */
static double times_column(const struct basis *basis, const double *row_by_row, int column) {
    if (basis_surplus(basis, column))
        return -row_by_row[-1 - column];
    int row = basis_alone(basis, column);
    if (column < 0)
        return row_by_row[row] * (double)basis->alone[row];
    const struct pattern *pattern = &basis->columns->items[column];
    double sum = 0.0;
    for (size_t t = 0; t < pattern->take_count; t++)
        sum += row_by_row[basis->row[pattern->takes[t].kind]] * pattern->takes[t].count;
    return sum;
}

void basis_price(struct basis *basis) {
    size_t n = basis->size;
    memset(basis->price, 0, n * sizeof *basis->price);
    for (size_t place = 0; place < n; place++) {
        double cost = cost_of(basis, basis->in[place]);
        if (cost != 0.0)
            for (size_t row = 0; row < n; row++)
                basis->price[row] += cost * basis->inverse[place * n + row];
    }
}

void basis_amounts(const struct basis *basis, const double *demand, double *amount) {
    size_t n = basis->size;
    for (size_t place = 0; place < n; place++) {
        amount[place] = 0.0;
        for (size_t row = 0; row < n; row++)
            amount[place] += basis->inverse[place * n + row] * demand[row];
    }
}

static void fill_column(const struct basis *basis, int column, double *entries, size_t stride) {
    if (basis_surplus(basis, column)) {
        entries[(size_t)(-1 - column) * stride] = -1.0;
    } else if (column < 0) {
        int row = basis_alone(basis, column);
        entries[(size_t)row * stride] = basis->alone[row];
    } else {
        const struct pattern *pattern = &basis->columns->items[column];
        for (size_t t = 0; t < pattern->take_count; t++)
            entries[(size_t)basis->row[pattern->takes[t].kind] * stride] = pattern->takes[t].count;
    }
}

/* The inverse anew from the columns; it gathers rounding as it is updated. By QR, since GSL's LU
 * takes memory of its own and does not ask whether it got it. */
bool basis_invert(struct basis *basis) {
    size_t n = basis->size;
    struct arena_mark mark = arena_mark(basis->arena);
    double *matrix = ARENA_ARRAY(basis->arena, double, n *n);
    double *reflections = ARENA_ARRAY(basis->arena, double, n);
    for (size_t place = 0; place < n; place++)
        fill_column(basis, basis->in[place], &matrix[place], n);
    gsl_matrix_view from = gsl_matrix_view_array(matrix, n, n);
    gsl_vector_view tau = gsl_vector_view_array(reflections, n);
    gsl_matrix_view to = gsl_matrix_view_array(basis->inverse, n, n);
    bool done = gsl_linalg_QR_decomp(&from.matrix, &tau.vector) == 0;
    gsl_matrix_set_identity(&to.matrix);
    for (size_t row = 0; row < n && done; row++) {
        gsl_vector_view column = gsl_matrix_column(&to.matrix, row);
        done = gsl_linalg_QR_svx(&from.matrix, &tau.vector, &column.vector) == 0;
    }
    arena_rewind(basis->arena, mark);
    return done;
}

int basis_add_column(struct basis *basis, struct pattern pattern) {
    ARRAY_PUSH(basis->arena, basis->columns, pattern);
    return (int)basis->columns->count - 1;
}

struct basis basis_first(struct arena *arena, const struct kinds *kinds, const int *demand,
                         struct columns *columns) {
    struct basis basis = {.arena = arena, .kinds = kinds, .demand = demand, .columns = columns};
    int64_t dearest = kinds->cost[kinds->stock_count - 1];
    basis.worth =
        dearest <= BOARD_WORTH_MOST / UNIT_WORTH ? UNIT_WORTH : BOARD_WORTH_MOST / dearest;
    basis.kind = ARENA_ARRAY(arena, int, kinds->count);
    basis.row = ARENA_ARRAY(arena, int, kinds->count);
    for (size_t k = 0; k < kinds->count; k++) {
        basis.row[k] = demand[k] > 0 ? (int)basis.size : -1;
        if (demand[k] > 0)
            basis.kind[basis.size++] = (int)k;
    }
    size_t n = basis.size;
    basis.alone = ARENA_ARRAY(arena, int, n);
    basis.in = ARENA_ARRAY(arena, int, n);
    basis.inverse = ARENA_ARRAY(arena, double, n *n);
    basis.shaken = ARENA_ARRAY(arena, double, n);
    basis.amount = ARENA_ARRAY(arena, double, n);
    basis.price = ARENA_ARRAY(arena, double, n);
    basis.entering = ARENA_ARRAY(arena, double, n);
    for (size_t row = 0; row < n; row++) {
        int kind = basis.kind[row];
        int64_t fit = kinds->room[basis_stock_alone(&basis, (int)row)] / kinds->size[kind];
        basis.alone[row] = fit < demand[kind] ? (int)fit : demand[kind];
        basis.in[row] = -1 - (int)(n + row);
        basis.inverse[row * n + row] = 1.0 / basis.alone[row];
        basis.shaken[row] = demand[kind] + 1e-6 * (1.0 + (double)((row * 7919) % 1009) / 1009.0);
    }
    basis_amounts(&basis, basis.shaken, basis.amount);
    return basis;
}

bool basis_bring_in(struct basis *basis, int column) {
    size_t n = basis->size, leaving = n;
    double least = INFINITY;
    for (size_t place = 0; place < n; place++) {
        double sum = times_column(basis, &basis->inverse[place * n], column);
        basis->entering[place] = sum;
        if (sum > 1e-9 && basis->amount[place] / sum < least) {
            least = basis->amount[place] / sum;
            leaving = place;
        }
    }
    if (leaving == n)
        return false;
    double pivot = basis->entering[leaving];
    double *pivot_row = &basis->inverse[leaving * n];
    for (size_t row = 0; row < n; row++)
        pivot_row[row] /= pivot;
    basis->amount[leaving] /= pivot;
    for (size_t place = 0; place < n; place++) {
        double share = basis->entering[place];
        if (place == leaving || share == 0.0)
            continue;
        for (size_t row = 0; row < n; row++)
            basis->inverse[place * n + row] -= share * pivot_row[row];
        basis->amount[place] -= share * basis->amount[leaving];
    }
    basis->in[leaving] = column;
    return true;
}
