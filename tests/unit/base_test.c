#include "in_arena.h"
#include "near.h"

#include "base/arena.h"
#include "base/near.h"
#include "base/problem.h"
#include "base/text.h"

#include <criterion/criterion.h>

#include <stdint.h>
#include <stdio.h>

TestSuite(arena, .init = set_up, .fini = tear_down);
TestSuite(text, .init = set_up, .fini = tear_down);
TestSuite(problem, .init = set_up, .fini = tear_down);

/* ---- the comparison that every other test leans on ---- */

Test(near, accepts_only_what_is_near_and_finite) {
    cr_assert(is_near(1.0001, 1.0, 1e-3, 0));
    cr_assert(!is_near(1.01, 1.0, 1e-3, 0));
    cr_assert(is_near(1e-9, 0, 0, 1e-8));
    cr_assert(!is_near(1e-9, 0, 1e-3, 0), "a share of nothing is nothing");
    cr_assert(!is_near(NAN, 1, 1, 1));
    cr_assert(!is_near(1, NAN, 1, 1));
    cr_assert(!is_near(INFINITY, INFINITY, 1, 1));
    cr_assert(!is_near(1, 1.1, NAN, NAN), "a tolerance that is no number allows nothing");
}

/* ---- arena ---- */

Test(arena, memory_is_zeroed_and_aligned) {
    for (size_t bytes = 0; bytes < 300; bytes += 7) {
        unsigned char *taken = arena_take(arena, bytes, 1);
        cr_assert_not_null(taken);
        cr_assert((uintptr_t)taken % 32 == 0, "%zu bytes: at %p", bytes, (void *)taken);
        for (size_t k = 0; k < bytes; k++)
            cr_assert(taken[k] == 0, "byte %zu of %zu is %d", k, bytes, taken[k]);
        memset(taken, 0xa5, bytes);
    }
}

Test(arena, pieces_never_overlap) {
    enum { COUNT = 2000 };
    unsigned **pieces = ARENA_ARRAY(arena, unsigned *, COUNT);
    for (unsigned k = 0; k < COUNT; k++) {
        size_t length = 1 + k % 97;
        pieces[k] = ARENA_ARRAY(arena, unsigned, length);
        for (size_t i = 0; i < length; i++)
            pieces[k][i] = k;
    }
    for (unsigned k = 0; k < COUNT; k++)
        for (size_t i = 0; i < 1 + k % 97; i++)
            cr_assert(pieces[k][i] == k, "piece %u was overwritten by %u", k, pieces[k][i]);
}

Test(arena, one_piece_may_be_larger_than_any_block) {
    size_t bytes = 9u * 1024 * 1024;
    unsigned char *large = arena_take(arena, bytes, 1);
    large[0] = large[bytes - 1] = 1;
    unsigned char *small = arena_take(arena, 1, 1);
    cr_assert(small[0] == 0);
}

Test(arena, running_out_of_memory_jumps) {
    struct {
        size_t count, size;
    } volatile const asks[] = {{SIZE_MAX, 2}, {SIZE_MAX, 1}, {SIZE_MAX / 8 + 1, 8}, {2, SIZE_MAX}};
    for (volatile size_t k = 0; k < sizeof asks / sizeof *asks; k++) {
        if (ARENA_TRAP(arena))
            continue;
        void *taken = arena_take(arena, asks[k].count, asks[k].size);
        cr_assert_fail("%zu x %zu bytes gave %p", asks[k].count, asks[k].size, taken);
    }
    /* still of use after the jump */
    cr_assert_not_null(arena_take(arena, 10, 10));
}

static char released[8];

static void note_release(void *object) {
    strncat(released, object, sizeof released - strlen(released) - 1);
}

Test(arena, deferred_objects_are_released_last_first_and_survive_a_rewind) {
    struct arena *own = arena_new();
    char a[] = "a", b[] = "b", c[] = "c";
    released[0] = '\0';
    arena_defer(own, note_release, a);
    struct arena_mark mark = arena_mark(own);
    arena_defer(own, note_release, b);
    arena_take(own, 100, 1);
    arena_rewind(own, mark);
    arena_defer(own, note_release, c);
    SAME_TEXT(released, "");
    arena_free(own);
    SAME_TEXT(released, "cba");
}

Test(arena, rewinding_gives_back_what_was_taken_since) {
    char *kept = arena_copy(arena, "kept", 4);
    struct arena_mark mark = arena_mark(arena);
    char *first = arena_take(arena, 64, 1);
    for (int k = 0; k < 100; k++)
        arena_take(arena, 40000, 1); /* far past the first block */
    arena_rewind(arena, mark);
    char *again = arena_take(arena, 64, 1);
    cr_assert(again == first, "the same place should be handed out again");
    SAME_TEXT(kept, "kept");
}

/* Blocks that were given back come again, smaller and larger ones, and are zero again. */
Test(arena, blocks_are_used_again) {
    struct arena_mark mark = arena_mark(arena);
    for (int round = 0; round < 4; round++) {
        for (size_t k = 1; k < 20; k++) {
            size_t size = k % 3 == 0 ? 3000000 : 70000 * k;
            unsigned char *taken = arena_take(arena, size, 1);
            for (size_t at = 0; at < size; at += 997)
                cr_assert(taken[at] == 0, "round %d, %zu", round, at);
            memset(taken, 0xff, size);
        }
        arena_rewind(arena, mark);
    }
}

Test(arena, rewinding_to_an_empty_arena) {
    struct arena_mark mark = arena_mark(arena);
    memset(arena_take(arena, 100, 1), 1, 100);
    arena_rewind(arena, mark);
    unsigned char *taken = arena_take(arena, 100, 1);
    cr_assert(taken[0] == 0 && taken[99] == 0);
}

Test(arena, copies_end_with_a_zero) {
    SAME_TEXT(arena_copy(arena, "rail-1 and more", 6), "rail-1");
    SAME_TEXT(arena_copy(arena, NULL, 0), "");
    SAME_TEXT(arena_print(arena, "%s-%d", "rail", 12), "rail-12");
}

Test(arena, arrays_grow_and_keep_what_they_hold) {
    struct {
        int *items;
        size_t count, capacity;
    } list = {0};
    for (int k = 0; k < 10000; k++)
        ARRAY_PUSH(arena, &list, k * 3);
    cr_assert(list.count == 10000);
    for (int k = 0; k < 10000; k++)
        cr_assert(list.items[k] == k * 3, "item %d is %d", k, list.items[k]);
}

Test(arena, an_empty_arena_releases_what_was_deferred) {
    char a[] = "a";
    struct arena *own = arena_new();
    released[0] = '\0';
    arena_defer(own, note_release, a);
    arena_free(NULL);
    arena_free(own);
    SAME_TEXT(released, "a");
}

/* ---- text ---- */

Test(text, grows_piece_by_piece) {
    struct text text = text_new(arena);
    SAME_TEXT(text_string(&text), "");
    for (int k = 0; k < 1000; k++)
        text_print(&text, "%d,", k % 10);
    cr_assert(text.count == 2000);
    for (int k = 0; k < 1000; k++)
        cr_assert(text.items[2 * k] == '0' + k % 10 && text.items[2 * k + 1] == ',');
    text_bytes(&text, "end and no more", 3);
    text_add(&text, "!");
    SAME_TEXT(text_string(&text) + 2000, "end!");
}

Test(text, one_piece_longer_than_the_room_left) {
    struct text text = text_new(arena);
    text_add(&text, "x");
    text_print(&text, "%05000d|", 7);
    cr_assert(strlen(text_string(&text)) == 5002);
    SAME_TEXT(text_string(&text) + 4998, "007|");
}

Test(text, adding_nothing_adds_nothing) {
    struct text text = text_new(arena);
    text_bytes(&text, "", 0);
    text_add(&text, "");
    text_print(&text, "%s", "");
    cr_assert(text.count == 0);
    SAME_TEXT(text_string(&text), "");
}

/* ---- problems ---- */

Test(problem, sorted_by_line_then_column_then_arrival) {
    static const struct place places[] = {{9, 1}, {2, 7}, {2, 3}, {9, 1}, {0, 0}, {2, 7}, {1, 40}};
    static const char *const wanted[] = {"4", "6", "2", "1", "5", "0", "3"};
    size_t count = sizeof places / sizeof *places;
    struct problems problems = problems_new(arena);
    for (size_t k = 0; k < count; k++)
        problem_add(&problems, places[k], "key", "%zu", k);
    problems_sort(&problems);
    cr_assert(problems.count == count);
    for (size_t k = 0; k < count; k++)
        SAME_TEXT(problems.items[k].message, wanted[k]);
}

Test(problem, any_number_of_them_is_sorted) {
    for (int count = 0; count <= 40; count++) {
        struct problems problems = problems_new(arena);
        for (int k = 0; k < count; k++)
            problem_add(&problems, (struct place){.line = k * 17 % 41, .column = 1}, "", "m");
        problems_sort(&problems);
        cr_assert(problems.count == (size_t)count);
        for (int k = 1; k < count; k++)
            cr_assert(problems.items[k - 1].place.line < problems.items[k].place.line,
                      "%d problems, at %d", count, k);
    }
}

Test(problem, the_key_is_copied) {
    char key[] = "members.rail-1";
    struct problems problems = problems_new(arena);
    problem_add(&problems, (struct place){1, 1}, key, "%s", "no such stick");
    key[0] = 'X';
    SAME_TEXT(problems.items[0].key, "members.rail-1");
    SAME_TEXT(problems.items[0].message, "no such stick");
}

/* ---- near names ---- */

static const char *const names[] = {"rail", "slat", "post", "upright", "rails-across", "brace"};
enum { NAMES = sizeof names / sizeof *names };

Test(near_name, finds_what_was_meant) {
    static const struct {
        char found[16], meant[16];
    } pairs[] = {
        {"rial", "rail"},       {"Rail", "rail"},
        {"rai", "rail"},        {"slats", "slat"},
        {"uprihgt", "upright"}, {"uprigth", "upright"},
        {"brase", "brace"},     {"raills-acros", "rails-across"},
    };
    for (size_t k = 0; k < sizeof pairs / sizeof *pairs; k++)
        SAME_TEXT(near_name(pairs[k].found, names, NAMES), pairs[k].meant);
}

Test(near_name, says_nothing_where_nothing_is_close) {
    SAME_TEXT(near_name("purlin", names, NAMES), NULL);
    SAME_TEXT(near_name("", names, NAMES), NULL);
    SAME_TEXT(near_name("rail", names, 0), NULL);
    SAME_TEXT(near_name("E", (const char *const[]){"B", "C"}, 2), NULL);
}

Test(near_name, swapped_neighbours_count_once) {
    static const char *const one[] = {"abc"};
    SAME_TEXT(near_name("acb", one, 1), "abc");
    SAME_TEXT(near_name("bca", one, 1), NULL);
}

Test(near_name, the_first_of_equals_wins) {
    static const char *const two[] = {"rail-1", "rail-2"};
    SAME_TEXT(near_name("rail-3", two, 2), "rail-1");
}

Test(near_name, very_long_names_are_safe) {
    static char length_70[71];
    memset(length_70, 'a', 70);
    static const char *list[] = {length_70, "rail"};
    SAME_TEXT(near_name("rial", list, 2), "rail");
    SAME_TEXT(near_name(length_70, list, 2), NULL);
}
