#include "solve/sparse.h"

#include "solve/kernel.h"

#include <string.h>

struct sparse sparse_room(struct arena *arena, const struct blocks *blocks) {
    return (struct sparse){blocks, arena_room(arena, blocks->numbers, sizeof(double))};
}

struct sparse sparse_new(struct arena *arena, const struct blocks *blocks) {
    return (struct sparse){blocks, ARENA_ARRAY(arena, double, blocks->numbers)};
}

struct sparse sparse_copy(struct arena *arena, const struct sparse *sparse) {
    struct sparse copy = sparse_room(arena, sparse->blocks);
    memcpy(copy.items, sparse->items, sparse->blocks->numbers * sizeof *copy.items);
    return copy;
}

void sparse_sum(const struct sparse *out, const struct sparse *a, double factor,
                const struct sparse *b) {
    kernel_sum(out->items, a->items, factor, b->items, out->blocks->numbers);
}

struct sparse sparse_part(struct arena *arena, const struct sparse *sparse, const bool *kept) {
    const struct blocks *blocks = sparse->blocks;
    int *number = ARENA_ARRAY(arena, int, blocks->unknowns);
    struct sparse part = sparse_new(arena, blocks_part(arena, blocks, kept, number));
    for (size_t b = 0; b < blocks->count; b++) {
        const struct block *block = &blocks->items[b];
        for (size_t j = 0; j < block->width; j++) {
            if (!kept[block->first + j])
                continue;
            const double *from = &sparse->items[block->start + j * block->tall];
            double *to = sparse_diagonal(&part, (size_t)number[block->first + j]);
            for (size_t i = j; i < block->width + block->below_count; i++)
                if (kept[block_row(block, i)])
                    *to++ = from[i];
        }
    }
    return part;
}
