#include "solve/sparse.h"

#include "solve/kernel.h"

#include <string.h>

struct sparse sparse_room(struct arena *arena, const struct shape *shape) {
    return (struct sparse){shape, arena_room(arena, shape->items, sizeof(double))};
}

struct sparse sparse_new(struct arena *arena, const struct shape *shape) {
    return (struct sparse){shape, ARENA_ARRAY(arena, double, shape->items)};
}

struct sparse sparse_copy(struct arena *arena, const struct sparse *sparse) {
    struct sparse copy = sparse_room(arena, sparse->shape);
    memcpy(copy.items, sparse->items, sparse->shape->items * sizeof *copy.items);
    return copy;
}

void sparse_sum(const struct sparse *out, const struct sparse *a, double factor,
                const struct sparse *b) {
    kernel_sum(out->items, a->items, factor, b->items, out->shape->items);
}

struct sparse sparse_part(struct arena *arena, const struct sparse *sparse, const bool *kept) {
    const struct shape *shape = sparse->shape;
    int *number = ARENA_ARRAY(arena, int, shape->count);
    struct sparse part = sparse_new(arena, shape_part(arena, shape, kept, number));
    for (size_t b = 0; b < shape->block_count; b++) {
        const struct block *block = &shape->blocks[b];
        for (size_t j = 0; j < block->width; j++) {
            if (!kept[block->first + j])
                continue;
            const double *from = &sparse->items[block->start + j * block->tall];
            double *to = sparse_diagonal(&part, (size_t)number[block->first + j]);
            for (size_t i = j; i < block->width + block->below_count; i++)
                if (kept[i < block->width ? block->first + i
                                          : (size_t)block->below[i - block->width]])
                    *to++ = from[i];
        }
    }
    return part;
}
