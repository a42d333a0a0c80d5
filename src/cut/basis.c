#include "cut/basis.h"

#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

/* Worth of a unit of cost in whole numbers, and of the dearest board at most. */
static const int64_t UNIT_WORTH = 1000000000, BOARD_WORTH_MOST = 100000000000000;

bool basis_surplus(const struct basis *basis, int column) {
    return column < 0 && -1 - column < (int)basis->size;
}

int basis_share(const struct basis *basis) {
    return -1 - 2 * (int)basis->size;
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
    if (basis->boards)
        return column < 0 ? (double)basis->boards_cost : 0.0;
    int stock = column < 0 ? basis_stock_alone(basis, basis_alone(basis, column))
                           : basis->columns->items[column].stock;
    return (double)basis->kinds->cost[stock];
}

/* What a column gives of each row, times `row_by_row`. */
static double times_column(const struct basis *basis, const double *row_by_row, int column) {
    if (basis_surplus(basis, column))
        return -row_by_row[-1 - column];
    double sum = 0.0;
    if (column == basis_share(basis)) {
        for (size_t s = 0; s < basis->kinds->stock_count; s++)
            sum += row_by_row[basis->kind_rows + s] * basis->boards[s];
        return sum;
    }
    int row = basis_alone(basis, column);
    if (column < 0)
        return row_by_row[row] * (double)basis->alone[row];
    const struct pattern *pattern = &basis->columns->items[column];
    if (basis->boards)
        sum = -row_by_row[basis->kind_rows + (size_t)pattern->stock];
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

double basis_beyond(const struct basis *basis, int column) {
    return cost_of(basis, column) - times_column(basis, basis->price, column);
}

double basis_board_price(const struct basis *basis, size_t stock) {
    return basis->boards ? basis->price[basis->kind_rows + stock]
                         : (double)basis->kinds->cost[stock];
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
    } else if (column == basis_share(basis)) {
        for (size_t s = 0; s < basis->kinds->stock_count; s++)
            entries[(basis->kind_rows + s) * stride] = basis->boards[s];
    } else if (column < 0) {
        int row = basis_alone(basis, column);
        entries[(size_t)row * stride] = basis->alone[row];
    } else {
        const struct pattern *pattern = &basis->columns->items[column];
        if (basis->boards)
            entries[(basis->kind_rows + (size_t)pattern->stock) * stride] = -1.0;
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

/* Rows of kinds start with boards of one kind each; those of stocks with nothing but a little that
 * is too much, so that no two places tie. */
static void first_places(struct basis *basis) {
    const struct kinds *kinds = basis->kinds;
    size_t n = basis->size;
    for (size_t row = 0; row < n; row++) {
        double little = 1e-6 * (1.0 + (double)((row * 7919) % 1009) / 1009.0);
        if (row >= basis->kind_rows) {
            basis->in[row] = -1 - (int)row;
            basis->inverse[row * n + row] = -1.0;
            basis->shaken[row] = -little;
            continue;
        }
        int kind = basis->kind[row];
        int64_t fit = kinds->room[basis_stock_alone(basis, (int)row)] / kinds->size[kind];
        fit = basis->boards ? 1 : fit;
        basis->alone[row] = fit < basis->demand[kind] ? (int)fit : basis->demand[kind];
        basis->in[row] = -1 - (int)(n + row);
        basis->inverse[row * n + row] = 1.0 / basis->alone[row];
        basis->shaken[row] = basis->demand[kind] + little;
    }
    basis_amounts(basis, basis->shaken, basis->amount);
}

struct basis basis_first(struct arena *arena, const struct kinds *kinds, const int *demand,
                         const int *boards, struct columns *columns) {
    struct basis basis = {
        .arena = arena, .kinds = kinds, .demand = demand, .boards = boards, .columns = columns};
    for (size_t s = 0; s < kinds->stock_count && boards; s++)
        basis.boards_cost += boards[s] * kinds->cost[s];
    int64_t dearest = boards ? basis.boards_cost : kinds->cost[kinds->stock_count - 1];
    basis.worth =
        dearest <= BOARD_WORTH_MOST / UNIT_WORTH ? UNIT_WORTH : BOARD_WORTH_MOST / dearest;
    if (boards) /* pieces are worth as much as all boards at first: 120 of them in 2^53 */
        basis.worth = basis.worth / 2 > 0 ? basis.worth / 2 : 1;
    basis.kind = ARENA_ARRAY(arena, int, kinds->count);
    basis.row = ARENA_ARRAY(arena, int, kinds->count);
    for (size_t k = 0; k < kinds->count; k++) {
        basis.row[k] = demand[k] > 0 ? (int)basis.kind_rows : -1;
        if (demand[k] > 0)
            basis.kind[basis.kind_rows++] = (int)k;
    }
    size_t n = basis.size = basis.kind_rows + (boards ? kinds->stock_count : 0);
    basis.alone = ARENA_ARRAY(arena, int, n);
    basis.in = ARENA_ARRAY(arena, int, n);
    basis.inverse = ARENA_ARRAY(arena, double, n *n);
    basis.shaken = ARENA_ARRAY(arena, double, n);
    basis.amount = ARENA_ARRAY(arena, double, n);
    basis.price = ARENA_ARRAY(arena, double, n);
    basis.entering = ARENA_ARRAY(arena, double, n);
    first_places(&basis);
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
