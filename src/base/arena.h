/* base/arena.h - the memory of one run.
 *
 * Everything a run allocates comes from one arena and is given back at once by arena_free(), so no
 * stage frees anything and a stage that stops half-way leaks nothing. When memory runs out,
 * arena_take() does not return: it jumps to the place set with ARENA_TRAP(), which frees the arena
 * and reports BATTEN_NO_MEMORY. Objects that other libraries own (a YAML parser, a GSL workspace)
 * are handed over with arena_defer() and released by arena_free() in the reverse order.
 */
#ifndef BASE_ARENA_H
#define BASE_ARENA_H

#include <setjmp.h>
#include <stddef.h>

struct arena;

/* A new arena; NULL when there is no memory for it. */
struct arena *arena_new(void);

/* Release deferred objects, then all memory. NULL is fine. */
void arena_free(struct arena *arena);

/* The jump buffer that arena_take() uses when memory runs out. */
jmp_buf *arena_trap(struct arena *arena);

/* True where memory ran out: `if (ARENA_TRAP(arena)) { ...clean up, return... }`. */
#define ARENA_TRAP(arena) (setjmp(*arena_trap(arena)) != 0)

/* `count` objects of `size` bytes, zeroed, aligned for any type (32 bytes, for vector code). Never
 * NULL; a product that overflows counts as out of memory. A count of 0 gives a valid pointer. */
void *arena_take(struct arena *arena, size_t count, size_t size);

/* The same without zeroing, for what is written over at once. */
void *arena_room(struct arena *arena, size_t count, size_t size);

/* Typed forms. */
#define ARENA_NEW(arena, type) ((type *)arena_take((arena), 1, sizeof(type)))
#define ARENA_ARRAY(arena, type, count) ((type *)arena_take((arena), (count), sizeof(type)))

/* A copy of `length` bytes with a terminating 0. */
char *arena_copy(struct arena *arena, const char *bytes, size_t length);

/* printf into the arena. */
char *arena_print(struct arena *arena, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* Have `release(object)` called by arena_free(). If the note itself cannot be stored, the object is
 * released before the jump. */
void arena_defer(struct arena *arena, void (*release)(void *object), void *object);

/* Make this arena behave as out of memory now (for libraries that report it by a NULL). */
_Noreturn void arena_exhausted(struct arena *arena);

/* Memory that can be rewound: a mark, and giving back all that was taken since (deferred objects
 * stay). For loops that try many variants. */
struct arena_mark {
    void *block;
    size_t used;
};
struct arena_mark arena_mark(const struct arena *arena);
void arena_rewind(struct arena *arena, struct arena_mark mark);

/* Grow a dynamic array so that one more element fits; returns the (perhaps moved) array. The old
 * copy stays in the arena until it is freed; growth is by half, so that is a bounded waste. */
void *arena_grow(struct arena *arena, void *items, size_t count, size_t *capacity, size_t size);

/* ARRAY_PUSH(arena, list, item): append to a struct with items, count, capacity. */
#define ARRAY_PUSH(arena, list, ...)                                                               \
    ((list)->items = arena_grow((arena), (list)->items, (list)->count, &(list)->capacity,          \
                                sizeof *(list)->items),                                            \
     (list)->items[(list)->count++] = __VA_ARGS__)

#endif
