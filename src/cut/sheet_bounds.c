#include "cut/sheet_bounds.h"

#include <math.h>

enum { THRESHOLDS_MOST = 60 };

/* What a width counts of a whole, for a threshold of at most half of it. */
static double counts_as(int64_t width, int64_t whole, int64_t threshold) {
    if (width > whole - threshold)
        return 1.0;
    return width < threshold ? 0.0 : (double)width / (double)whole;
}

static double area_for(const struct plates *plates, int64_t across, int64_t along) {
    double area = 0.0;
    for (size_t p = 0; p < plates->count; p++) {
        const struct plate *plate = &plates->items[p];
        double least = INFINITY;
        for (int turned = 0; turned < (plate->may_turn ? 2 : 1); turned++) {
            int64_t width = plate_width(plate, turned), height = plate_height(plate, turned);
            if (width <= plates->width && height <= plates->height)
                least = fmin(least, counts_as(width, plates->width, across) *
                                        counts_as(height, plates->height, along));
        }
        area += plate->demand * least;
    }
    return area;
}

/* The k-th threshold across or along: 0, then the plates' own widths and heights. */
static bool threshold_at(const struct plates *plates, size_t k, int64_t whole, int64_t *threshold) {
    *threshold = 0;
    if (k > 0) {
        const struct plate *plate = &plates->items[(k - 1) / 2];
        *threshold = k % 2 ? plate->width : plate->height;
    }
    return 2 * *threshold <= whole;
}

int sheets_bound(const struct plates *plates) {
    size_t most = 2 * plates->count + 1;
    most = most < THRESHOLDS_MOST ? most : THRESHOLDS_MOST;
    double largest = 0.0;
    for (size_t a = 0; a < most; a++)
        for (size_t b = 0; b < most; b++) {
            int64_t across, along;
            if (threshold_at(plates, a, plates->width, &across) &&
                threshold_at(plates, b, plates->height, &along))
                largest = fmax(largest, area_for(plates, across, along));
        }
    return (int)ceil(largest * (1.0 - 1e-9));
}
