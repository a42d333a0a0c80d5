#include "frame/name_index.h"

#include <stdint.h>
#include <string.h>

/* FNV-1a. */
static size_t hash(const char *name) {
    uint64_t value = 14695981039346656037u;
    for (; *name; name++)
        value = (value ^ (unsigned char)*name) * 1099511628211u;
    return (size_t)(value ^ value >> 32);
}

/* The slot that holds the name, or the empty one where it belongs. */
static size_t slot_of(const struct name_index *index, const char *name) {
    size_t slot = hash(name) & (index->slot_count - 1);
    while (index->slots[slot] && strcmp(index->items[index->slots[slot] - 1], name) != 0)
        slot = (slot + 1) & (index->slot_count - 1);
    return slot;
}

int name_index_find(const struct name_index *index, const char *name) {
    return index->slot_count ? index->slots[slot_of(index, name)] - 1 : -1;
}

static void enlarge(struct arena *arena, struct name_index *index) {
    index->slot_count = index->slot_count ? index->slot_count * 4 : 32;
    index->slots = ARENA_ARRAY(arena, int, index->slot_count);
    for (size_t k = 0; k < index->count; k++)
        index->slots[slot_of(index, index->items[k])] = (int)k + 1;
}

int name_index_add(struct arena *arena, struct name_index *index, const char *name) {
    if ((index->count + 1) * 2 > index->slot_count)
        enlarge(arena, index);
    size_t slot = slot_of(index, name);
    ARRAY_PUSH(arena, index, name);
    index->slots[slot] = (int)index->count;
    return (int)index->count - 1;
}
