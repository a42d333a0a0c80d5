#include "solve/band.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

struct band band_room(struct arena *arena, size_t count, size_t half) {
    if (count && half >= count)
        half = count - 1;
    return (struct band){count, half, arena_room(arena, count * (half + 1), sizeof(double))};
}

struct band band_new(struct arena *arena, size_t count, size_t half) {
    struct band band = band_room(arena, count, half);
    memset(band.items, 0, band.count * (band.half + 1) * sizeof(double));
    return band;
}

struct band band_copy(struct arena *arena, const struct band *band) {
    struct band copy = band_room(arena, band->count, band->half);
    memcpy(copy.items, band->items, band->count * (band->half + 1) * sizeof(double));
    return copy;
}

bool band_cholesky(struct band *band, double *least) {
    size_t wide = band->half + 1;
    *least = 1.0;
    if (band->count == 0)
        return true;
    /* The factor overwrites the diagonal, which comes back as the sum of squares of a row of L. */
    gsl_matrix_view view = gsl_matrix_view_array(band->items, band->count, wide);
    if (gsl_linalg_cholesky_band_decomp(&view.matrix) != GSL_SUCCESS)
        return false;
    for (size_t i = 0; i < band->count; i++) {
        double sum = 0.0;
        size_t first = i > band->half ? i - band->half : 0;
        for (size_t j = first; j <= i; j++) {
            double l = band->items[j * wide + (i - j)];
            sum += l * l;
        }
        double pivot = band->items[i * wide];
        double ratio = pivot * pivot / sum;
        if (!(ratio >= *least))
            *least = ratio;
    }
    return isfinite(*least);
}

void band_solve(const struct band *factor, double *x) {
    if (factor->count == 0)
        return;
    gsl_matrix_const_view view =
        gsl_matrix_const_view_array(factor->items, factor->count, factor->half + 1);
    gsl_vector_view vector = gsl_vector_view_array(x, factor->count);
    gsl_linalg_cholesky_band_svx(&view.matrix, &vector.vector);
}

size_t band_free_unknowns(struct band *band, double share, double least_diagonal,
                          const bool *barred, bool *fixed) {
    size_t wide = band->half + 1, found = 0;
    for (size_t i = 0; i < band->count; i++) {
        double *column = &band->items[i * wide];
        /* the starting diagonal, from the pivot and what earlier columns took off it */
        double start = column[0];
        size_t first = i > band->half ? i - band->half : 0;
        for (size_t j = first; j < i; j++) {
            double l = band->items[j * wide + (i - j)];
            if (l != 0.0)
                start += l * l * band->items[j * wide];
        }
        fixed[i] = !(column[0] > share * start) && !(barred && barred[i] && column[0] > 0.0);
        if (fixed[i]) {
            column[0] = fmax(start, least_diagonal);
            if (!(column[0] > 0.0))
                column[0] = 1.0; /* no stiffness at all: 0/0 would spoil the rest */
            found++;
        }
        size_t last = i + band->half < band->count ? band->half : band->count - 1 - i;
        while (last > 0 && column[last] == 0.0)
            last--;
        for (size_t j = 1; j <= last; j++) {
            double l = column[j] / column[0];
            if (l == 0.0)
                continue;
            double *target = &band->items[(i + j) * wide];
            for (size_t k = j; k <= last; k++)
                target[k - j] -= l * column[k];
        }
        for (size_t j = 1; j <= last; j++)
            column[j] /= column[0];
    }
    return found;
}
