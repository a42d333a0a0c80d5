#include "base/arena.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ALIGNMENT = 32, FIRST_BLOCK = 32 * 1024, LARGEST_STEP = 1024 * 1024 };

struct block {
    struct block *before;
    size_t size; /* bytes after the header that can be handed out */
    size_t used;
};

struct deferred {
    struct deferred *before;
    void (*release)(void *object);
    void *object;
};

struct arena {
    struct block *last;
    struct block *spare; /* given back by arena_rewind(), for the next that are needed */
    struct deferred *deferred;
    jmp_buf trap;
    bool trap_set;
};

static size_t header_size(void) {
    return (sizeof(struct block) + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
}

static char *block_bytes(struct block *block) {
    return (char *)block + header_size();
}

struct arena *arena_new(void) {
    return calloc(1, sizeof(struct arena));
}

static void free_blocks(struct block *block) {
    while (block) {
        struct block *before = block->before;
        free(block);
        block = before;
    }
}

void arena_free(struct arena *arena) {
    if (!arena)
        return;
    for (struct deferred *each = arena->deferred; each;) {
        struct deferred *before = each->before;
        each->release(each->object);
        free(each);
        each = before;
    }
    free_blocks(arena->last);
    free_blocks(arena->spare);
    free(arena);
}

jmp_buf *arena_trap(struct arena *arena) {
    arena->trap_set = true;
    return &arena->trap;
}

_Noreturn void arena_exhausted(struct arena *arena) {
    if (!arena->trap_set)
        abort(); /* a programmer's mistake: memory taken before ARENA_TRAP() */
    longjmp(arena->trap, 1);
}

/* A spare block that holds so many bytes becomes the last; false where there is none. */
static bool take_spare(struct arena *arena, size_t bytes) {
    for (struct block **each = &arena->spare; *each; each = &(*each)->before) {
        struct block *block = *each;
        if (block->size < bytes)
            continue;
        *each = block->before;
        block->before = arena->last;
        block->used = 0;
        arena->last = block;
        return true;
    }
    return false;
}

/* A block that holds at least `bytes`; sizes double up to LARGEST_STEP so that small frames stay
 * small and large ones take few system calls. */
static void add_block(struct arena *arena, size_t bytes) {
    if (take_spare(arena, bytes))
        return;
    size_t size = arena->last ? arena->last->size * 2 : FIRST_BLOCK;
    if (size > LARGEST_STEP)
        size = LARGEST_STEP;
    if (size < bytes)
        size = bytes;
    if (size > SIZE_MAX - header_size() - ALIGNMENT)
        arena_exhausted(arena);
    size_t whole = (size + header_size() + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
    struct block *block = aligned_alloc(ALIGNMENT, whole);
    if (!block)
        arena_exhausted(arena);
    *block = (struct block){.before = arena->last, .size = whole - header_size(), .used = 0};
    arena->last = block;
}

static size_t whole_bytes(size_t count, size_t size) {
    return (count * size + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
}

void *arena_room(struct arena *arena, size_t count, size_t size) {
    if (size && count > (SIZE_MAX - ALIGNMENT) / size)
        arena_exhausted(arena);
    size_t bytes = whole_bytes(count, size);
    if (!arena->last || arena->last->size - arena->last->used < bytes)
        add_block(arena, bytes);
    char *taken = block_bytes(arena->last) + arena->last->used;
    arena->last->used += bytes;
    return taken;
}

void *arena_take(struct arena *arena, size_t count, size_t size) {
    void *taken = arena_room(arena, count, size);
    return memset(taken, 0, whole_bytes(count, size));
}

char *arena_copy(struct arena *arena, const char *bytes, size_t length) {
    char *copy = arena_take(arena, length + 1, 1);
    if (length)
        memcpy(copy, bytes, length);
    return copy;
}

char *arena_print(struct arena *arena, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(NULL, 0, format, arguments);
    va_end(arguments);
    if (length < 0)
        arena_exhausted(arena);
    char *text = arena_take(arena, (size_t)length + 1, 1);
    va_start(arguments, format);
    vsnprintf(text, (size_t)length + 1, format, arguments);
    va_end(arguments);
    return text;
}

void arena_defer(struct arena *arena, void (*release)(void *object), void *object) {
    /* Outside the blocks, so that rewinding cannot lose it. */
    struct deferred *note = malloc(sizeof *note);
    if (!note) {
        release(object);
        arena_exhausted(arena);
    }
    *note = (struct deferred){.before = arena->deferred, .release = release, .object = object};
    arena->deferred = note;
}

struct arena_mark arena_mark(const struct arena *arena) {
    return (struct arena_mark){.block = arena->last, .used = arena->last ? arena->last->used : 0};
}

void arena_rewind(struct arena *arena, struct arena_mark mark) {
    while (arena->last && arena->last != mark.block) {
        struct block *block = arena->last;
        arena->last = block->before;
        block->before = arena->spare;
        arena->spare = block;
    }
    if (arena->last)
        arena->last->used = mark.used;
}

void *arena_grow(struct arena *arena, void *items, size_t count, size_t *capacity, size_t size) {
    if (count < *capacity)
        return items;
    size_t larger = *capacity + *capacity / 2 + 8;
    if (larger < *capacity)
        arena_exhausted(arena);
    void *grown = arena_take(arena, larger, size);
    if (count)
        memcpy(grown, items, count * size);
    *capacity = larger;
    return grown;
}
