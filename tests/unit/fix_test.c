/* The cheapest changes: against every cheaper set of the catalogue, judged one by one. */
#include "fix/work.h"
#include "frame/merge.h"
#include "frame/tree.h"
#include "in_arena.h"
#include "judged.h"
#include "near.h"
#include "report/edit_text.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_rng.h>
#include <string.h>

static void quiet(void) {
    gsl_set_error_handler_off();
    set_up();
}

TestSuite(fix, .init = quiet, .fini = tear_down);

static const struct fix_options PLAIN = {0};

static struct fix_answer *fixed(const char *text) {
    return fix_find(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
}

/* ---- against enumeration ---- */

/* Every set of the catalogue that takes less than `limit`, judged in whole as its own description:
 * how many there are, and how many of them pass. Written apart from the search: a plain counter
 * over all slots. */
struct counted {
    size_t sets, passing;
};

static struct counted count_cheaper(const char *text, struct effort limit) {
    struct counted counted = {0, 0};
    struct work *work = work_new(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
    struct set set = {{0}};
    for (size_t at = 0; at < work->slot_count;) {
        if (effort_compare(set_effort(work, &set), limit) < 0) {
            struct arena_mark mark = arena_mark(arena);
            struct result result = {0};
            counted.sets++;
            counted.passing +=
                set_judge(work, &set, false, &result) && result.verdict <= VERDICT_CLOSE;
            arena_rewind(arena, mark);
        }
        for (at = 0; at < work->slot_count; at++) {
            if (++set.level[at] <= work->slots[at].count)
                break;
            set.level[at] = 0;
        }
    }
    return counted;
}

static void agrees_with_enumeration(const char *text) {
    struct fix_answer *answer = fixed(text);
    if (answer->passes_already)
        return;
    cr_assert(answer->found && answer->proved, "not found or not proved:\n%s", text);
    struct effort effort = {answer->trays, lround(1000.0 * answer->effort)};
    struct counted counted = count_cheaper(text, effort);
    cr_assert_eq(counted.passing, 0, "%zu of %zu cheaper sets pass:\n%s", counted.passing,
                 counted.sets, text);
}

/* A shelf on two rails that the ground holds at their ends: slats across, trays on it. */
struct shelf_words {
    const char *rail, *slat; /* the entries of both sticks */
    unsigned long wide, deep; /* in */
    unsigned long slats, trays;
};

static const char *shelf_text(struct shelf_words words) {
    return arena_print(
        arena,
        "batten: 1\n"
        "sticks:\n  rail: {%s}\n  slat: {%s}\n"
        "joints: {a: [0, 0, 20], b: [%lu, 0, 20], c: [0, %lu, 20], d: [%lu, %lu, 20]}\n"
        "members:\n"
        "  front: {from: a, to: b, stick: rail}\n"
        "  back: {from: c, to: d, stick: rail}\n"
        "connections: {default: pinned}\n"
        "supports: {a: pinned, b: [y, z, rx], c: pinned, d: [y, z, rx]}\n"
        "shelves:\n"
        "  top: {rails: [front, back], deck: {slats: slat, count: %lu},\n"
        "        trays: {kind: tray-1020-wet, count: %lu}}\n"
        "site: {place: indoors}\n",
        words.rail, words.slat, words.wide, words.deep, words.wide, words.deep, words.slats,
        words.trays);
}

/* Sizes, grades, spans, slats and trays by chance. */
static const char *random_shelf(gsl_rng *random) {
    static const char *const sizes[] = {"1x2", "1x3", "2x2", "2x3"};
    static const char *const grades[] = {"ungraded", "no-2", "select-structural"};
    const char *size = sizes[gsl_rng_uniform_int(random, 4)];
    const char *grade = grades[gsl_rng_uniform_int(random, 3)];
    const char *stands = gsl_rng_uniform_int(random, 2) ? "flat" : "on-edge";
    struct shelf_words words = {
        .rail = arena_print(arena, "size: %s, species: spruce-pine-fir, grade: %s, stands: %s",
                            size, grade, stands),
        .slat = "size: 1x2, species: spruce-pine-fir, grade: ungraded, stands: flat",
        .wide = 36 + gsl_rng_uniform_int(random, 24),
        .deep = 20 + gsl_rng_uniform_int(random, 8),
        .slats = 6 + gsl_rng_uniform_int(random, 6),
        .trays = 2 + gsl_rng_uniform_int(random, 3)};
    return shelf_text(words);
}

Test(fix, cheapest_of_all_sets_on_seeded_shelves, .timeout = 120) {
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 7);
    for (int k = 0; k < 12; k++)
        agrees_with_enumeration(random_shelf(random));
    gsl_rng_free(random);
}

/* ---- each kind of change where it is the cheapest ---- */

static void is_one(const struct fix_answer *answer, enum change_kind kind, const char *words) {
    cr_assert(answer->found && answer->proved, "found %d, proved %d", answer->found,
              answer->proved);
    cr_assert_eq(answer->change_count, 1, "%zu changes, first: %s", answer->change_count,
                 answer->changes[0].what);
    cr_assert_eq(answer->changes[0].kind, kind, "%s", answer->changes[0].what);
    cr_assert(strstr(answer->changes[0].what, words), "%s", answer->changes[0].what);
    cr_assert(answer->after <= VERDICT_CLOSE);
}

#define SPF "species: spruce-pine-fir, grade: "
static const char STRONG_SLAT[] = "size: 1x3, " SPF "ungraded, stands: flat";

/* A 1x4 that lies flat has (3.5/0.75)^2 = 21.8 times less stiffness than on edge. */
Test(fix, stands_a_stick_on_edge) {
    struct shelf_words words = {"size: 1x4, " SPF "ungraded, stands: flat", STRONG_SLAT, 48, 20,
                                12, 2};
    is_one(fixed(shelf_text(words)), CHANGE_TURN, "stand rail on edge");
}

Test(fix, takes_the_next_size) {
    struct shelf_words words = {"size: 1x2, " SPF "ungraded", STRONG_SLAT, 40, 20, 12, 3};
    is_one(fixed(shelf_text(words)), CHANGE_SIZE, "cut rail from 1x3");
}

Test(fix, takes_a_better_grade) {
    struct shelf_words words = {"size: 2x3, " SPF "stud", STRONG_SLAT, 84, 20, 24, 5};
    is_one(fixed(shelf_text(words)), CHANGE_GRADE, "grade");
}

Test(fix, lays_more_slats) {
    struct shelf_words words = {"size: 2x6, " SPF "no-2", "size: 1x2, " SPF "ungraded, stands: flat",
                                24, 24, 3, 2};
    is_one(fixed(shelf_text(words)), CHANGE_SLATS, "slats on the top shelf");
}

/* Rails of the user's own stuff: no larger ones are known. */
Test(fix, puts_fewer_trays_only_where_nothing_else_helps) {
    struct shelf_words words = {"size: [20 mm, 40 mm], material: {E: 9 GPa, density: 420, Fb: 9 MPa, "
                                "Fv: 1 MPa, Fc: 6 MPa, Ft: 4 MPa, Fcp: 2 MPa, Emin: 3.3 GPa}",
                                STRONG_SLAT, 48, 20, 14, 4};
    is_one(fixed(shelf_text(words)), CHANGE_TRAYS, "trays on the top shelf in place of 4");
}
