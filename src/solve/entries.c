#include "solve/entries.h"

#include <string.h>

struct entries entries_of(struct arena *arena, const struct sparse *matrix) {
    const struct blocks *blocks = matrix->blocks;
    struct entries entries = {.unknowns = blocks->unknowns};
    for (int pass = 0; pass < 2; pass++) {
        size_t found = 0;
        for (size_t b = 0; b < blocks->count; b++) {
            const struct block *block = &blocks->items[b];
            for (size_t j = 0; j < block->width; j++)
                for (size_t i = j; i < block->width + block->below_count; i++) {
                    double value = matrix->items[block->start + j * block->tall + i];
                    if (value == 0.0)
                        continue;
                    if (pass)
                        entries.items[found] =
                            (struct entry){block_row(block, i), (int)(block->first + j), value};
                    found++;
                }
        }
        if (pass)
            break;
        entries.count = found;
        entries.items = arena_room(arena, found, sizeof *entries.items);
    }
    return entries;
}

void entries_multiply(const struct entries *entries, const double *x, double *out) {
    memset(out, 0, entries->unknowns * sizeof *out);
    for (size_t k = 0; k < entries->count; k++) {
        const struct entry *entry = &entries->items[k];
        out[entry->row] += entry->value * x[entry->column];
        if (entry->row != entry->column)
            out[entry->column] += entry->value * x[entry->row];
    }
}
