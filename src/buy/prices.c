#include "buy/work.h"

#include <math.h>
#include <stdlib.h>

static const double SAME = 1e-6; /* m */

static bool is_for_stick(const struct price_entry *entry, int stick) {
    return entry->stick == stick;
}

double price_of_board(const struct frame *frame, int stick, double length) {
    double least = NAN;
    for (size_t k = 0; k < frame->prices.count; k++) {
        const struct price_entry *entry = &frame->prices.items[k];
        const struct price *price = &entry->price;
        if (!is_for_stick(entry, stick))
            continue;
        double now = NAN;
        if (price->basis == PRICE_EACH)
            now = price->amount;
        else if (price->by_length)
            now = price->amount * length / price->length;
        else if (fabs(price->length - length) < SAME)
            now = price->amount;
        least = fmin(least, now); /* fmin passes over a NAN */
    }
    return least;
}

static int ascending(const void *left, const void *right) {
    double a = *(const double *)left, b = *(const double *)right;
    return (a > b) - (a < b);
}

size_t priced_lengths(struct arena *arena, const struct frame *frame, int stick, double **lengths) {
    *lengths = ARENA_ARRAY(arena, double, frame->prices.count);
    size_t count = 0, kept = 0;
    for (size_t k = 0; k < frame->prices.count; k++) {
        const struct price *price = &frame->prices.items[k].price;
        if (is_for_stick(&frame->prices.items[k], stick) && price->basis == PRICE_PER_LENGTH &&
            !price->by_length)
            (*lengths)[count++] = price->length;
    }
    if (count)
        qsort(*lengths, count, sizeof **lengths, ascending);
    for (size_t k = 0; k < count; k++)
        if (kept == 0 || (*lengths)[k] - (*lengths)[kept - 1] > SAME)
            (*lengths)[kept++] = (*lengths)[k];
    return kept;
}

double price_of_sheet(const struct frame *frame, int sheet, double width, double length) {
    double least = NAN;
    for (size_t k = 0; k < frame->prices.count; k++) {
        const struct price_entry *entry = &frame->prices.items[k];
        const struct price *price = &entry->price;
        if (entry->sheet != sheet || entry->stick >= 0)
            continue;
        if (price->basis == PRICE_EACH ||
            (fabs(price->width - width) < SAME && fabs(price->length - length) < SAME))
            least = fmin(least, price->amount);
    }
    return least;
}

size_t priced_sizes(struct arena *arena, const struct frame *frame, int sheet,
                    struct sheet_size **sizes) {
    *sizes = ARENA_ARRAY(arena, struct sheet_size, frame->prices.count);
    size_t count = 0;
    for (size_t k = 0; k < frame->prices.count; k++) {
        const struct price_entry *entry = &frame->prices.items[k];
        if (entry->sheet == sheet && entry->stick < 0 && entry->price.basis == PRICE_PER_SHEET)
            (*sizes)[count++] = (struct sheet_size){entry->price.width, entry->price.length};
    }
    return count;
}
