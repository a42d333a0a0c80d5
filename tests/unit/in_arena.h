/* in_arena.h - an arena for each test: TestSuite(NAME, .init = set_up, .fini = tear_down). */
#ifndef TESTS_UNIT_IN_ARENA_H
#define TESTS_UNIT_IN_ARENA_H

#include "base/arena.h"

#include <criterion/criterion.h>

static struct arena *arena;

static void set_up(void) {
    arena = arena_new();
    cr_assert_not_null(arena);
}

static void tear_down(void) {
    arena_free(arena);
}

#endif
