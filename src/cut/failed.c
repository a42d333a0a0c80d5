#include "cut/failed.h"

#include <string.h>

enum { BYTES_MOST = 8 << 20, SLOTS_MOST = 1 << 15, LEFT_MOST = UINT16_MAX };

struct failed {
    size_t kinds, slots, used;
    uint16_t *left;     /* slots x kinds */
    int64_t *cost_left; /* -1: free */
};

struct failed *failed_new(struct arena *arena, size_t kinds) {
    struct failed *failed = ARENA_NEW(arena, struct failed);
    failed->kinds = kinds;
    failed->slots = SLOTS_MOST;
    while (failed->slots > 16 && failed->slots * kinds * sizeof *failed->left > BYTES_MOST)
        failed->slots /= 2;
    failed->left = arena_room(arena, failed->slots * kinds, sizeof *failed->left);
    failed->cost_left = ARENA_ARRAY(arena, int64_t, failed->slots);
    for (size_t k = 0; k < failed->slots; k++)
        failed->cost_left[k] = -1;
    return failed;
}

static bool is_same(const struct failed *failed, size_t slot, const int *left) {
    for (size_t k = 0; k < failed->kinds; k++)
        if (failed->left[slot * failed->kinds + k] != left[k])
            return false;
    return true;
}

/* The slot of these pieces, or the free one where they belong. */
static size_t slot_of(const struct failed *failed, const int *left) {
    uint64_t hash = 14695981039346656037u; /* FNV-1a */
    for (size_t k = 0; k < failed->kinds; k++)
        hash = (hash ^ (uint64_t)left[k]) * 1099511628211u;
    size_t slot = (size_t)((hash ^ hash >> 32) % failed->slots);
    while (failed->cost_left[slot] >= 0 && !is_same(failed, slot, left))
        slot = (slot + 1) % failed->slots;
    return slot;
}

bool failed_before(const struct failed *failed, const int *left, int64_t cost_left) {
    return failed->cost_left[slot_of(failed, left)] >= cost_left;
}

void failed_note(struct failed *failed, const int *left, int64_t cost_left) {
    for (size_t k = 0; k < failed->kinds; k++)
        if (left[k] > LEFT_MOST)
            return;
    size_t slot = slot_of(failed, left);
    if (failed->cost_left[slot] < 0) {
        if (failed->used >= failed->slots - failed->slots / 4)
            return;
        failed->used++;
        for (size_t k = 0; k < failed->kinds; k++)
            failed->left[slot * failed->kinds + k] = (uint16_t)left[k];
    }
    if (cost_left > failed->cost_left[slot])
        failed->cost_left[slot] = cost_left;
}
