/* base/problem.h - what is wrong with a description or a command line, with its place. */
#ifndef BASE_PROBLEM_H
#define BASE_PROBLEM_H

#include "base/arena.h"

#include <stdbool.h>

/* A place in a file, counted from 1; line 0 means that there is none (a command line). */
struct place {
    int line;
    int column;
};

struct problem {
    struct place place;
    const char *key;     /* the key path, "members.rail-1.from"; "" where there is none */
    const char *message; /* what was found, what was expected, and a suggestion where one is near */
};

/* Collected problems: a reader reports all of them at once. */
struct problems {
    struct arena *arena;
    struct problem *items;
    size_t count;
    size_t capacity;
};

struct problems problems_new(struct arena *arena);

/* Add one; `key` is copied. */
void problem_add(struct problems *problems, struct place place, const char *key, const char *format,
                 ...) __attribute__((format(printf, 4, 5)));

/* Sort by line, then column, then order of arrival. */
void problems_sort(struct problems *problems);

#endif
