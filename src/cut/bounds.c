#include "cut/bounds.h"

#include <math.h>

static int64_t rounded_up(int64_t a, int64_t b) {
    return (a + b - 1) / b;
}

int64_t bound_by_length(const struct kinds *kinds) {
    int64_t sum = 0;
    for (size_t k = 0; k < kinds->count; k++)
        sum += kinds->size[k] * kinds->demand[k];
    if (kinds->stock_count == 1)
        return rounded_up(sum, kinds->room[0]) * kinds->cost[0];
    double least = INFINITY; /* cost for each unit of room */
    for (size_t s = 0; s < kinds->stock_count; s++)
        least = fmin(least, (double)kinds->cost[s] / (double)kinds->room[s]);
    return sum ? (int64_t)ceil((double)sum * least * (1.0 - 1e-10)) : 0;
}

/* For a threshold a: boards for the pieces over room - a, boards for those over half the room, and
 * for what of the pieces from a up to half the room does not fit on the latter. */
static int64_t boards_for_threshold(const struct kinds *kinds, int64_t room, int64_t threshold) {
    int64_t alone = 0, halves = 0, free_on_halves = 0, small = 0;
    for (size_t k = 0; k < kinds->count; k++) {
        int64_t size = kinds->size[k], count = kinds->demand[k];
        if (size > room - threshold)
            alone += count;
        else if (size > room / 2)
            halves += count, free_on_halves += count * (room - size);
        else if (size >= threshold)
            small += count * size;
    }
    int64_t beyond = small - free_on_halves;
    return alone + halves + (beyond > 0 ? rounded_up(beyond, room) : 0);
}

int64_t bound_by_halves(const struct kinds *kinds) {
    enum { THRESHOLDS_MOST = 1000 };
    if (!kinds->count)
        return 0;
    int64_t room = kinds->room[kinds->stock_count - 1];
    int64_t most = boards_for_threshold(kinds, room, 0);
    size_t tried = 0;
    for (size_t k = 0; k < kinds->count && tried < THRESHOLDS_MOST; k++) {
        if (kinds->size[k] > room / 2)
            continue;
        tried++;
        int64_t boards = boards_for_threshold(kinds, room, kinds->size[k]);
        most = boards > most ? boards : most;
    }
    return most * kinds->cost[0];
}
