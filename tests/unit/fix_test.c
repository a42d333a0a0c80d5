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

static struct counted count_cheaper(const char *text, struct effort limit, bool by_price) {
    struct counted counted = {0, 0};
    struct work *work = work_new(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
    memo_new(work); /* of little room: most bills are made anew */
    work->by_price = by_price && price_catalogue(work);
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

/* By price only what can shrink no bill is proved; the search comes to the same on these all the
 * same. False where there was nothing to compare so. */
static bool agrees_with_enumeration(const char *text, bool by_price) {
    struct fix_answer *answer = fixed(text);
    if (answer->passes_already || answer->by_price != by_price)
        return false;
    cr_assert(answer->found && (answer->proved || by_price), "not found or not proved:\n%s", text);
    struct effort effort = {answer->trays, by_price ? lround(1000.0 * answer->cost) : 0,
                            lround(1000.0 * answer->effort)};
    struct counted counted = count_cheaper(text, effort, by_price);
    cr_assert_eq(counted.passing, 0, "%zu of %zu cheaper sets pass:\n%s", counted.passing,
                 counted.sets, text);
    return true;
}

/* A shelf on two rails that the ground holds at their ends: slats across, trays on it. */
struct shelf_words {
    const char *rail, *slat;  /* the entries of both sticks */
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
    int compared = 0;
    for (int k = 0; k < 12; k++)
        compared += agrees_with_enumeration(random_shelf(random), false);
    cr_assert_geq(compared, 6);
    gsl_rng_free(random);
}

/* The same with what a yard asks: for the sticks of the frame and for some larger ones, which the
 * file names for their prices alone. Boards are whole, so nothing adds up. */
static const char *priced(const char *text, gsl_rng *random) {
    static const char *const sizes[] = {"1x2", "1x3", "2x2", "1x4", "2x3", "2x4"};
    const char *sticks = strstr(text, "sticks:\n") + strlen("sticks:\n");
    struct text out = text_new(arena), prices = text_new(arena);
    text_bytes(&out, text, (size_t)(sticks - text));
    for (int k = 0; k < 6; k++) {
        text_print(&out, "  y%s: {size: %s, species: spruce-pine-fir, grade: ungraded}\n", sizes[k],
                   sizes[k]);
        text_print(&prices, ", y%s: %lu per 8 ft", sizes[k],
                   2 + (unsigned long)k + gsl_rng_uniform_int(random, 3));
    }
    text_add(&out, sticks);
    text_print(&out, "prices: {rail: 2 per 8 ft, slat: 2 per 8 ft%s}\n", text_string(&prices));
    return text_string(&out);
}

Test(fix, cheapest_by_price_of_all_sets_on_seeded_shelves, .timeout = 120) {
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 11);
    int compared = 0;
    for (int k = 0; k < 12; k++)
        compared += agrees_with_enumeration(priced(random_shelf(random), random), true);
    cr_assert_geq(compared, 4);
    gsl_rng_free(random);
}

/* By hand: both rails of 40 in come out of one board of 8 ft. From 1x3 at 3.00 in place of 1x2 at
 * 2.00 that is 1.00 more. */
static const char YARD[] =
    "batten: 1\n"
    "sticks:\n"
    "  rail: {size: 1x2, species: spruce-pine-fir, grade: ungraded}\n"
    "  wider: {size: 1x3, species: spruce-pine-fir, grade: ungraded}\n"
    "  slat: {size: 1x4, species: hem-fir, grade: ungraded, stands: flat}\n"
    "joints: {a: [0, 0, 20], b: [40, 0, 20], c: [0, 20, 20], d: [40, 20, 20]}\n"
    "members:\n"
    "  front: {from: a, to: b, stick: rail}\n"
    "  back: {from: c, to: d, stick: rail}\n"
    "connections: {default: pinned}\n"
    "supports: {a: pinned, b: [y, z, rx], c: pinned, d: [y, z, rx]}\n"
    "shelves:\n"
    "  top: {rails: [front, back], deck: {slats: slat, count: 12},\n"
    "        trays: {kind: tray-1020-wet, count: 3}}\n"
    "site: {place: indoors}\n"
    "prices: {rail: 2 per 8 ft, wider: 3 per 8 ft, slat: 2 per 8 ft}\n";

Test(fix, costs_what_the_bill_is_more) {
    struct fix_answer *answer = fixed(YARD);
    cr_assert(answer->found && answer->by_price);
    cr_assert_eq(answer->change_count, 1);
    NEAR(answer->cost, 1.0, 1e-12, 0.0);
    NEAR(answer->changes[0].cost, 1.0, 1e-12, 0.0);
    const struct node *price = node_child(node_child(answer->edited, "prices"), "rail");
    cr_assert(strcmp(price->text, "3 per 8 ft") == 0, "%s", price->text);
}

/* The price of a 1x2 is none of a 1x3: where the file names no other, it is taken out. */
Test(fix, invents_no_price) {
    char text[sizeof YARD];
    strcpy(text, YARD);
    char *wider = strstr(text, "wider: {size: 1x3");
    memcpy(wider, "wider: {size: 1x8", strlen("wider: {size: 1x8"));
    struct fix_answer *answer = fixed(text);
    cr_assert(answer->found && !answer->by_price && isnan(answer->cost));
    cr_assert_null(node_child(node_child(answer->edited, "prices"), "rail"));
    cr_assert_not_null(node_child(node_child(answer->edited, "prices"), "slat"));
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
static const char STURDY_SLAT[] = "size: 2x4, " SPF "no-2, stands: flat";
static const char STRONG_SLAT[] = "size: 1x3, " SPF "ungraded, stands: flat";

/* A 1x4 that lies flat has (3.5/0.75)^2 = 21.8 times less stiffness than on edge. */
Test(fix, stands_a_stick_on_edge) {
    struct shelf_words words = {
        "size: 1x4, " SPF "ungraded, stands: flat", STRONG_SLAT, 48, 20, 12, 2};
    is_one(fixed(shelf_text(words)), CHANGE_TURN, "stand rail on edge");
}

Test(fix, takes_the_next_size) {
    struct shelf_words words = {"size: 1x2, " SPF "ungraded", STRONG_SLAT, 40, 20, 12, 3};
    is_one(fixed(shelf_text(words)), CHANGE_SIZE, "cut rail from 1x3");
}

Test(fix, takes_a_better_grade) {
    struct shelf_words words = {"size: 2x4, " SPF "stud", STURDY_SLAT, 60, 20, 15, 40};
    is_one(fixed(shelf_text(words)), CHANGE_GRADE, "rail in grade no-2 in place of stud");
}

Test(fix, lays_more_slats) {
    struct shelf_words words = {
        "size: 2x8, " SPF "no-2", "size: 1x4, " SPF "ungraded, stands: flat", 60, 22, 7, 20};
    is_one(fixed(shelf_text(words)), CHANGE_SLATS, "lay 8 slats on the top shelf in place of 7");
}

/* A shelf between four posts that stand fixed, its rails rigid at their ends. */
static const char *posts_text(struct shelf_words words) {
    return arena_print(
        arena,
        "batten: 1\n"
        "sticks:\n"
        "  post: {size: 4x4, species: spruce-pine-fir, grade: select-structural}\n"
        "  rail: {%s}\n"
        "  slat: {%s}\n"
        "joints: {a0: [0, 0, 0], b0: [%lu, 0, 0], c0: [0, %lu, 0], d0: [%lu, %lu, 0],\n"
        "  a: [0, 0, 20], b: [%lu, 0, 20], c: [0, %lu, 20], d: [%lu, %lu, 20]}\n"
        "members:\n"
        "  post-a: {from: a0, to: a, stick: post}\n"
        "  post-b: {from: b0, to: b, stick: post}\n"
        "  post-c: {from: c0, to: c, stick: post}\n"
        "  post-d: {from: d0, to: d, stick: post}\n"
        "  front: {from: a, to: b, stick: rail, ends: rigid}\n"
        "  back: {from: c, to: d, stick: rail, ends: rigid}\n"
        "  left: {from: a, to: c, stick: rail, ends: rigid}\n"
        "  right: {from: b, to: d, stick: rail, ends: rigid}\n"
        "supports: {a0: fixed, b0: fixed, c0: fixed, d0: fixed}\n"
        "shelves:\n"
        "  top: {rails: [front, back], deck: {slats: slat, count: %lu},\n"
        "        trays: {kind: tray-1020-wet, count: %lu}}\n"
        "site: {place: indoors}\n",
        words.rail, words.slat, words.wide, words.deep, words.wide, words.deep, words.wide,
        words.deep, words.wide, words.deep, words.slats, words.trays);
}

static void choose(const struct work *work, gsl_rng *random, uint64_t slots, struct set *set) {
    for (size_t s = 0; s < work->slot_count; s++)
        if (slots >> s & 1 && work->slots[s].count)
            set->level[s] =
                (unsigned char)gsl_rng_uniform_int(random, (unsigned long)work->slots[s].count + 1);
}

/* What the search builds on: changes outside of what a check needs leave its numbers as they are.
 */
static void needs_only_its_own(const char *text, const char *id) {
    struct work *work = work_new(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 3);
    int compared = 0;
    for (int k = 0; k < 40; k++) {
        struct set one = {{0}}, other;
        struct result before, after;
        choose(work, random, UINT64_MAX, &one);
        if (!set_judge(work, &one, false, &before) || before.verdict >= VERDICT_FOLDS)
            continue;
        struct check own = *check_of(&before, id);
        own.verdict = VERDICT_FAILS; /* so that it is asked what it needs */
        struct result only = before;
        only.checks.items = &own;
        only.checks.count = 1;
        only.verdict = VERDICT_FAILS;
        uint64_t needs = judged_of(work, &only).needs[0];
        cr_assert_lt(slots_in(needs), (int)work->slot_count);
        other = one;
        choose(work, random, ~needs, &other);
        if (!set_judge(work, &other, false, &after) || after.verdict >= VERDICT_FOLDS)
            continue;
        NEAR(check_of(&after, id)->ratio, own.ratio, 1e-12, 0.0);
        compared++;
    }
    cr_assert_geq(compared, 20, "%d", compared);
    gsl_rng_free(random);
}

/* Fixed in the ground; and on feet, where ballast and hold-downs come in. */
Test(fix, slats_need_only_their_own_slots) {
    struct shelf_words words = {"size: 2x4, " SPF "no-2", STRONG_SLAT, 40, 40, 8, 6};
    needs_only_its_own(posts_text(words), "slat/top");
    char *on_feet = arena_print(arena, "%s", posts_text(words));
    for (char *at = on_feet; (at = strstr(at, ": fixed"));)
        memcpy(at, ": foot ", strlen(": foot "));
    needs_only_its_own(on_feet, "slat/top");
}

/* Sag goes with the fourth power of the span: half of it leaves a sixteenth. */
Test(fix, puts_legs_under_the_middle) {
    struct shelf_words words = {
        "size: 2x4, " SPF "select-structural", STURDY_SLAT, 120, 20, 30, 20};
    is_one(fixed(posts_text(words)), CHANGE_LEGS, "put 2 legs under the middle");
}

Test(fix, puts_a_rail_under_the_middle_of_slats) {
    struct shelf_words words = {"size: 2x4, " SPF "select-structural", STRONG_SLAT, 30, 44, 12, 6};
    is_one(fixed(posts_text(words)), CHANGE_RAIL, "under the middle of the top shelf");
}

/* Two posts 400 mm apart that somebody pushes at the top, 1 m up, with 60 N: 60 N-m. Their 80 N
 * hold it with 80 x 0.2 = 16 N-m, so that (60 - 16) / 0.2 = 220 N are missing: 22.4 kg. */
static const char *pushed_text(const char *ground, const char *base, int push, int weight) {
    return arena_print(
        arena,
        "batten: 1\n"
        "units: si\n"
        "self-weight: no\n"
        "sticks:\n"
        "  bar: {size: [40, 40], material: {E: 10 GPa, density: 400, Emin: 4 GPa, Fb: 20 MPa,\n"
        "    Fv: 2 MPa, Fc: 20 MPa, Ft: 20 MPa, Fcp: 5 MPa}}\n"
        "joints: {a: [0, 0], b: [400, 0], c: [0, 100], d: [400, 100], e: [0, 1000], f: [400, "
        "1000]}\n"
        "members:\n"
        "  left: {from: a, to: e, stick: bar}\n"
        "  right: {from: b, to: f, stick: bar}\n"
        "  top: {from: e, to: f, stick: bar, ends: rigid}\n"
        "  base: {from: c, to: %s, stick: bar, ends: rigid}\n"
        "supports: {a: {foot: {on: %s}}, b: {foot: {on: %s}}}\n"
        "loads:\n"
        "  - {case: self, joint: e, force: [0, 0, -%d]} # a lamp\n"
        "  - {case: self, joint: f, force: [0, 0, -%d]}\n"
        "  - {case: push-x, joint: e, force: [%d, 0, 0]}\n"
        "combine: {leaned: {self: 1, push-x: 1, duration: ten-minutes}}\n"
        "site: {place: indoors}\n",
        base, ground, ground, weight, weight, push);
}

static const struct choice *slot_of(const struct work *work, enum change_kind kind) {
    for (size_t s = 0; s < work->slot_count; s++)
        if (work->slots[s].kind == kind)
            return &work->slots[s];
    return NULL;
}

/* What is written with --output, read and judged as `check` does. */
static void judge_written(const struct fix_answer *answer, const char *text,
                          struct result *result) {
    static const struct judge_options plain = {0};
    struct text out = text_new(arena);
    cr_assert(edit_text(&out, text, strlen(text), answer->edit, answer->edited));
    judge_frame(arena, frame_of_text(arena, text_string(&out)), &plain, result);
}

/* The one change that mends the file, and what `check` says of the file then. */
static struct result mended(const char *text, enum change_kind kind, const char *words) {
    struct fix_answer *answer = fixed(text);
    struct result result = {0};
    is_one(answer, kind, words);
    judge_written(answer, text, &result);
    cr_assert(result.verdict <= VERDICT_CLOSE);
    return result;
}

/* 25 kg are 245.166 N: 16 + 49.033 = 65.033 N-m hold it. On a floor (0.40) 0.4 x 325.166 = 130.07 N
 * hold it where it stands. 10 kg hold 35.6 N-m, too little. */
Test(fix, lays_ballast_on_a_frame_that_tips) {
    const char *text = pushed_text("floor", "d", 60, 40);
    struct result result = mended(text, CHANGE_BALLAST,
                                  "lay 25 kg of ballast (bags of sand, concrete blocks) on base, "
                                  "spread evenly along it");
    NEAR(check_of(&result, "tip/right")->demand, 60.0, 1e-9, 0.0);
    NEAR(check_of(&result, "tip/right")->limit, 65.03325, 1e-6, 0.0);
    NEAR(check_of(&result, "slide/frame")->limit, 130.0665, 1e-6, 0.0);
    cr_assert(agrees_with_enumeration(text, false));
}

/* The base as a slope at 45 degrees and more, on which nothing stays: on the feet then, 12.5 kg
 * each. */
Test(fix, straps_ballast_to_feet_where_no_low_stick_is_level) {
    is_one(fixed(pushed_text("floor", "f", 60, 40)), CHANGE_BALLAST,
           "strap 12.5 kg of ballast (a concrete block, a bag of sand) to each of its 2 feet, 25 "
           "kg in all");
}

/* The feet count where the weight lies on them: at the left foot the push leaves
 * 40 + 122.58 - 60 x 1.0 / 0.4 = 12.58 N of pressure, so that it does not lift. */
Test(fix, ballast_keeps_a_foot_from_lifting) {
    const char *text = pushed_text("floor", "f", 60, 40);
    struct fix_answer *answer = fixed(text);
    bool lifts = false;
    for (size_t k = 0; k < answer->changes[0].mend_count; k++)
        lifts |= strcmp(answer->changes[0].mends[k].id, "lift/a") == 0;
    cr_assert(lifts);
    struct result result = {0};
    judge_written(answer, text, &result);
    cr_assert_null(check_if_any(&result, "lift/a"));
    NEAR(check_of(&result, "tip/right")->limit, 65.03325, 1e-6, 0.0);
}

/* A floor is not drilled, unless the file has it so; ground that is not said may be earth. */
Test(fix, anchors_only_where_the_ground_takes_them) {
    static const struct {
        const char *ground;
        bool anchors;
    } cases[] = {
        {"floor", false}, {"floor, hold-down: 10 N", true}, {"paving", true}, {"grass", true}};
    for (size_t k = 0; k < sizeof cases / sizeof *cases; k++) {
        const char *text = pushed_text(cases[k].ground, "d", 60, 40);
        struct work *work = work_new(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
        cr_assert_eq(slot_of(work, CHANGE_HOLD_DOWN) != NULL, cases[k].anchors, "%s",
                     cases[k].ground);
        cr_assert_not_null(slot_of(work, CHANGE_BALLAST));
    }
}

/* What is pinned stands without. */
Test(fix, no_ballast_without_feet) {
    struct shelf_words words = {"size: 1x2, " SPF "ungraded", STRONG_SLAT, 40, 20, 12, 3};
    const char *text = shelf_text(words);
    struct work *work = work_new(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
    cr_assert_null(slot_of(work, CHANGE_BALLAST));
}

/* Four times the push, with 320 N at either post: 240 N-m against 128 N-m, so that the left foot
 * wants (240 - 128) / 0.4 = 280 N, the next step 500 N; it slides not, 0.4 x 640 = 256 N. Ballast
 * would have to be 560 N, 57 kg, the next step 100 kg: more to carry than two anchors. */
Test(fix, anchors_a_frame_that_tips) {
    is_one(fixed(pushed_text("paving", "d", 240, 320)), CHANGE_HOLD_DOWN, "hold-down for 500 N");
}

/* A frame that its own weight tips off its feet. */
Test(fix, anchors_a_frame_that_falls_over) {
    struct fix_answer *answer = fixed(text_of_file(arena, "tests/cases/falls-over/frame.yaml"));
    cr_assert_eq(answer->before, VERDICT_FOLDS);
    is_one(answer, CHANGE_HOLD_DOWN, "hold-down");
}

/* The shape stays in the file; the diagonal comes beside it. */
Test(fix, puts_in_a_diagonal) {
    struct fix_answer *answer = fixed(text_of_file(arena, "tests/cases/expand-text/frame.yaml"));
    is_one(answer, CHANGE_BRACE, "put in a diagonal from fr0 to br2");
    cr_assert_not_null(node_child(answer->edited, "shape"));
    const struct node *added = node_child(answer->changes[0].edit, "members")->first;
    cr_assert(strcmp(node_child(added, "from")->text, "fr0") == 0);
    cr_assert(strcmp(node_child(added, "to")->text, "br2") == 0);
}

/* An entry that a shape makes comes along whole where one key of it changes. */
Test(fix, completes_entries_that_a_shape_makes) {
    const char *text = text_of_file(arena, "examples/shape-stand.yaml");
    struct work *work = work_new(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
    struct set set = {{0}};
    for (size_t s = 0; s < work->slot_count; s++)
        if (work->slots[s].kind == CHANGE_TRAYS && work->slots[s].shelf == 0)
            set.level[s] = 1;
    const struct node *shelf = node_child(node_child(set_edit(work, &set), "shelves"), "shelf-1");
    cr_assert_not_null(node_child(shelf, "rails"));
    cr_assert_not_null(node_child(shelf, "deck"));
    cr_assert(strcmp(node_child(node_child(shelf, "trays"), "count")->text, "4") == 0);
    struct result result = {0};
    cr_assert(set_judge(work, &set, false, &result));
    cr_assert_eq(result.frame->shelves.items[0].tray_count, 4);
    cr_assert_eq(result.frame->shelves.items[1].tray_count, 5);
}

/* No.8 screws, 0.164 in thick, must reach 6 diameters, 0.98 in, into the post behind 1-1/2 in of
 * rail: 2-1/2 in is the first length that does. */
Test(fix, takes_longer_screws) {
    is_one(fixed(text_of_file(arena, "tests/cases/screws-too-short/frame.yaml")), CHANGE_JOINT,
           "two No.8 screws 2-1/2 in long");
}

/* A bay of hinges that folds: one diagonal, lapped on with screws that reach. */
static const char FOLDING[] =
    "batten: 1\n"
    "sticks: {stick: {size: 2x4, species: spruce-pine-fir, grade: no-2}}\n"
    "joints: {a: [0, 0], b: [0, 36], c: [36, 36], d: [36, 0]}\n"
    "members:\n"
    "  left: {from: a, to: b, stick: stick}\n"
    "  top: {from: b, to: c, stick: stick}\n"
    "  right: {from: d, to: c, stick: stick}\n"
    "connections: {default: pinned}\n"
    "supports: {a: pinned, d: pinned}\n"
    "site: {place: indoors}\n";

Test(fix, braces_a_frame_that_folds) {
    struct fix_answer *answer = fixed(FOLDING);
    cr_assert_eq(answer->before, VERDICT_FOLDS);
    is_one(answer, CHANGE_BRACE, "put in a diagonal");
}

/* Square bars of the user's own stuff and no deck: nothing but the trays is there to change. By
 * hand: I = 40^4 / 12 = 213 333 mm4; four trays of 20 lb put 178 N on each bar of 1 m, first sag
 * 5 W L^3 / (384 E I) = 3.10 mm, with creep (1.5 times) 4.66 mm; limit 1000 / 240 = 4.17 mm: 1.12
 * times. Three trays: 0.84. */
static const char ONLY_TRAYS[] =
    "batten: 1\n"
    "units: si\n"
    "self-weight: no\n"
    "sticks:\n"
    "  bar: {size: [40, 40], material: {E: 3.5 GPa, density: 0, Emin: 1.3 GPa, Fb: 20 MPa,\n"
    "    Fv: 2 MPa, Fc: 20 MPa, Ft: 20 MPa, Fcp: 5 MPa}}\n"
    "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [0, 500, 0], d: [1000, 500, 0]}\n"
    "members:\n"
    "  one: {from: a, to: b, stick: bar}\n"
    "  two: {from: c, to: d, stick: bar}\n"
    "supports: {a: pinned, b: [y, z, rx], c: pinned, d: [y, z, rx]}\n"
    "shelves: {s: {rails: [one, two], trays: {kind: tray-1020-wet, count: 4}}}\n"
    "site: {place: indoors}\n";

Test(fix, puts_fewer_trays_where_nothing_else_helps) {
    struct fix_answer *answer = fixed(ONLY_TRAYS);
    is_one(answer, CHANGE_TRAYS, "put 3 trays on the s shelf in place of 4");
    cr_assert_eq(answer->trays, 1);
}

/* ---- sheets and lids ---- */

/* Four posts that stand fixed, a to d in order around, and what else the file says. */
static const char *four_posts(const char *units, int wide, int deep, int high, const char *rest) {
    return arena_print(arena,
                       "batten: 1\n"
                       "units: %s\n"
                       "sticks: {post: {size: 4x4, species: spruce-pine-fir, grade: no-2},\n"
                       "  lath: {size: 1x2, species: spruce-pine-fir, grade: ungraded}}\n"
                       "joints: {a0: [0, 0, 0], b0: [%d, 0, 0], c0: [%d, %d, 0], d0: [0, %d, 0],\n"
                       "  a: [0, 0, %d], b: [%d, 0, %d], c: [%d, %d, %d], d: [0, %d, %d]}\n"
                       "supports: {a0: fixed, b0: fixed, c0: fixed, d0: fixed}\n"
                       "members:\n"
                       "  pa: {from: a0, to: a, stick: post}\n"
                       "  pb: {from: b0, to: b, stick: post}\n"
                       "  pc: {from: c0, to: c, stick: post}\n"
                       "  pd: {from: d0, to: d, stick: post}\n"
                       "%s",
                       units, wide, wide, deep, deep, high, wide, high, wide, deep, high, deep,
                       high, rest);
}

/* A sheet on two sticks 950 mm apart under snow. tables/sheet-spans.tsv: 6 mm spans 900 mm at most,
 * 8 mm 1000 mm at 80 kg/m2. 8 psf on the ground are 8 x 1.2 (unheated) x 0.8 (garden) + 5 of rain
 * = 12.7 psf on the roof, 62 kg/m2, and 1.5 of its own. */
static const char ROOFED[] =
    "  left: {from: a, to: d, stick: post, ends: rigid}\n"
    "  right: {from: b, to: c, stick: post, ends: rigid}\n"
    "panels:\n"
    "  roof: {corners: [a, b, c, d], sheet: twin-wall-6mm, held: screwed, screw: 8,\n"
    "    spacing: 300, runs: across}\n"
    "site: {place: outdoors, ground-snow: 8 psf}\n";

Test(fix, takes_a_thicker_sheet) {
    const char *text = four_posts("si", 950, 600, 500, ROOFED);
    struct result result =
        mended(text, CHANGE_SHEET, "take twin-wall-8mm for roof in place of twin-wall-6mm");
    cr_assert(agrees_with_enumeration(text, false));
    NEAR(check_of(&result, "panel/roof")->demand, 0.95, 1e-9, 0.0);
    NEAR(check_of(&result, "panel/roof")->limit, 1.0, 1e-9, 0.0);
}

/* Of a sheet those of the sheet itself, and sticks that come under it. */
Test(fix, sheets_need_only_their_own_slots) {
    needs_only_its_own(four_posts("si", 950, 600, 500, ROOFED), "panel/roof");
}

/* A square of hinges, 24 in, that plywood keeps square against 400 lb. With screws s apart the
 * corner screw gets 24 sqrt(2) 12 / (24^2 (3 x 24 + 24) / (6 s)) = 0.0442 s / in of that: 0.265 at
 * 6 in, 0.177 at 4 in, so that it bears 1.5 times as much. */
static const char RACKED[] =
    "batten: 1\n"
    "self-weight: no\n"
    "sticks: {stick: {size: 2x4, species: spruce-pine-fir, grade: no-2}}\n"
    "joints: {a: [0, 0], b: [0, 24], c: [24, 24], d: [24, 0]}\n"
    "members:\n"
    "  left: {from: a, to: b, stick: stick}\n"
    "  top: {from: b, to: c, stick: stick}\n"
    "  right: {from: d, to: c, stick: stick}\n"
    "  low: {from: a, to: d, stick: stick}\n"
    "connections: {default: pinned}\n"
    "supports: {a: pinned, d: pinned}\n"
    "panels: {back: {corners: [a, b, c, d], sheet: plywood-1/4in, held: screwed, screw: 8,\n"
    "  spacing: 6 in}}\n"
    "loads: [{case: push-x, joint: b, force: [400 lb, 0, 0]}]\n"
    "combine: {leaned: {push-x: 1, duration: ten-minutes}}\n"
    "site: {place: indoors}\n";

Test(fix, sets_the_screws_of_a_sheet_closer) {
    static const struct judge_options plain = {0};
    struct result before = {0};
    struct result after =
        mended(RACKED, CHANGE_SHEET_SCREWS, "screw back down with No.8 screws 4 in apart");
    judge_frame(arena, frame_of_text(arena, RACKED), &plain, &before);
    NEAR(check_of(&before, "panel-rack/back")->demand, 400.0 * 4.4482216152605, 1e-9, 0.0);
    NEAR(check_of(&after, "panel-rack/back")->limit,
         1.5 * check_of(&before, "panel-rack/back")->limit, 1e-9, 0.0);
}

/* A lid of 240 lb on two hinges with two screws each: 60 lb a screw. */
static const char LIDDED[] =
    "  back: {from: d, to: c, stick: post, ends: rigid}\n"
    "panels:\n"
    "  lid: {corners: [a, b, c, d], sheet: plywood-1/2in, held: hinged, hinge: [d, c],\n"
    "    opens: yes, weight: 240 lb, framed: post}\n"
    "site: {place: indoors}\n";

Test(fix, hangs_a_lid_on_thicker_screws) {
    struct result result = mended(four_posts("us", 30, 24, 20, LIDDED), CHANGE_HINGES,
                                  "hang lid with No.8 screws in its hinges");
    NEAR(check_of(&result, "hinge/lid")->demand, 60.0 * 4.4482216152605, 1e-9, 0.0);
}

/* In wind nothing is known of what holds a hinge in a clear sheet: laths round it do, no posts. */
static const char *bare_lid(const char *laths) {
    return four_posts(
        "us", 30, 24, 20,
        arena_print(arena,
                    "  back: {from: d, to: c, stick: post, ends: rigid}\n"
                    "  front: {from: a, to: b, stick: post, ends: rigid}\n"
                    "%s"
                    "panels:\n"
                    "  lid: {corners: [a, b, c, d], sheet: twin-wall-8mm, held: hinged, hinge: "
                    "[d, c],\n"
                    "    opens: yes, stay: yes}\n"
                    "site: {place: outdoors, wind: 90 mph}\n",
                    laths));
}

Test(fix, frames_a_lid) {
    mended(bare_lid("  left: {from: a, to: d, stick: lath, ends: rigid}\n"), CHANGE_HINGES,
           "frame lid with sticks of lath and screw its hinges to them");
    cr_assert_not(fixed(bare_lid(""))->found);
}

/* ---- the file with its changes ---- */

static const char *edited(const char *text, const char *edit_words) {
    const struct node *edit = tree_of_text(arena, edit_words, strlen(edit_words));
    const struct node *root = tree_of_text(arena, text, strlen(text));
    struct text out = text_new(arena);
    bool kept = edit_text(&out, text, strlen(text), edit, merge_edit(arena, root, edit));
    cr_assert(kept, "layout lost: %s", text);
    return text_string(&out);
}

Test(fix, edits_keep_comments_and_layout) {
    static const struct {
        const char *text, *edit, *want;
    } cases[] = {
        {"a: 1 # one\nb: {c: 2, d: 3} # two\n", "b: {d: 4}", "a: 1 # one\nb: {c: 2, d: 4} # two\n"},
        {"b: {c: 2} # two\n", "b: {d: 4}", "b: {c: 2, d: 4} # two\n"},
        {"b: {}\n", "b: {d: 4, e: 5}", "b: {d: 4, e: 5}\n"},
        {"b:\n  c: 2   # two\n# end\n", "b: {d: {e: 4}}",
         "b:\n  c: 2   # two\n  d: {e: 4}\n# end\n"},
        {"b:\n    c: \"2 in\"\n", "b: {c: 3 in}", "b:\n    c: 3 in\n"},
        {"b: {c: [1, 2], d: 3}\n", "b: {c: [1, 9, 2]}", "b: {c: [1, 9, 2], d: 3}\n"},
        {"a: 1\n", "b: {c: {d: 2}}", "a: 1\n\nb:\n  c: {d: 2}\n"},
        {"l:\n  - {a: 1} # one\n# end\n", "l: [{a: 1}, {b: 2}, {c: 3}]",
         "l:\n  - {a: 1} # one\n  - {b: 2}\n  - {c: 3}\n# end\n"},
        {"l:\n- a: 1\n  b: 2 # two\n", "l: [{a: 1, b: 2}, {c: 3}]",
         "l:\n- a: 1\n  b: 2 # two\n- {c: 3}\n"},
        {"l: [1, 2] # few\n", "l: [1, 2, 3, 4]", "l: [1, 2, 3, 4] # few\n"},
        {"l: []\n", "l: [1, 2]", "l: [1, 2]\n"},
        {"p: {a: 1, b: 2, c: 3}\n", "p: {a: ~}", "p: {b: 2, c: 3}\n"},
        {"p: {a: 1, b: 2, c: 3}\n", "p: {c: ~}", "p: {a: 1, b: 2}\n"},
        {"p:\n  a: 1\n  b: 2 # two\n", "p: {a: ~}", "p:\n  b: 2 # two\n"},
        {"connections: {lap: {type: x, screw: 8}}\n", "connections: {lap: {type: y, bolt: 1}}",
         "connections: {lap: {type: y, bolt: 1}}\n"},
        {"title: \xC3\xA9t\xC3\xA9\nb: {c: \xC3\xA9, d: 3}\n", "b: {d: 4}",
         "title: \xC3\xA9t\xC3\xA9\nb: {c: \xC3\xA9, d: 4}\n"},
    };
    for (size_t k = 0; k < sizeof cases / sizeof *cases; k++) {
        const char *got = edited(cases[k].text, cases[k].edit);
        cr_assert(strcmp(got, cases[k].want) == 0, "case %zu: got\n%s", k, got);
    }
}

/* What cannot be spliced is written anew, and still says the same. */
Test(fix, edits_say_where_the_layout_is_lost) {
    static const char text[] = "b: |\n  several\n  lines\n";
    static const char words[] = "b: 2";
    const struct node *edit = tree_of_text(arena, words, strlen(words));
    const struct node *root = tree_of_text(arena, text, strlen(text));
    struct text out = text_new(arena);
    cr_assert_not(edit_text(&out, text, strlen(text), edit, merge_edit(arena, root, edit)));
    cr_assert(strcmp(text_string(&out), "b: 2\n") == 0, "%s", text_string(&out));
}

/* ---- what does not change ---- */

Test(fix, leaves_a_frame_that_holds) {
    struct fix_answer *answer = fixed(text_of_file(arena, "examples/shape-stand.yaml"));
    cr_assert(answer->passes_already && !answer->found && answer->proved);
    cr_assert_eq(answer->change_count, 0);
    cr_assert_eq(answer->tried, 0);
    NEAR(answer->cost, 0.0, 0.0, 0.0);
}

/* Own stuff without strengths is never covered, whatever is changed. */
Test(fix, says_what_remains_where_nothing_helps) {
    struct fix_answer *answer = fixed(text_of_file(arena, "tests/cases/not-covered/frame.yaml"));
    cr_assert(!answer->found && answer->proved);
    cr_assert(answer->left.count > 0);
}

Test(fix, same_file_same_answer) {
    const char *text = text_of_file(arena, "tests/cases/joint-moment-end-grain/frame.yaml");
    struct fix_answer *one = fixed(text), *other = fixed(text);
    cr_assert(one->found && other->found);
    cr_assert_eq(one->tried, other->tried);
    cr_assert(node_same(one->edited, other->edited));
}

/* Inch marks, as builders write them: once, the edits of such a connection did not read, and the
 * search fell over them. */
Test(fix, keeps_inch_marks_and_metals_of_a_connection) {
    const char *text =
        "batten: 1\nunits: us\n"
        "sticks: {s: {size: 2x4, species: hem-fir, grade: no-2}}\n"
        "joints: {a: [0, 0, 0], b: [0, 0, 40], c: [40, 0, 40], d: [40, 0, 0]}\n"
        "members: {l: {from: a, to: b, stick: s}, r: {from: d, to: c, stick: s}, "
        "t: {from: b, to: c, stick: s}}\n"
        "connections: {default: {type: screwed-lap, screw: 8, length: '2\"', count: 2, metal: "
        "stainless}}\n"
        "supports: {a: fixed, d: fixed}\n";
    struct work *work = work_new(arena, text, strlen(text), frame_of_text(arena, text), &PLAIN);
    size_t kept = 0, all = 0;
    for (size_t s = 0; s < work->slot_count; s++)
        for (size_t k = 0; work->slots[s].kind == CHANGE_JOINT && k < work->slots[s].count; k++) {
            const struct node *edit = work->slots[s].items[k].edit;
            cr_assert_not_null(edit);
            const struct node *entry = node_child(node_child(edit, "connections"), "default");
            const struct node *length = node_child(entry, "length");
            const struct node *metal = node_child(entry, "metal");
            cr_assert(metal && strcmp(metal->text, "stainless") == 0);
            kept += length && strcmp(length->text, "2\"") == 0;
            all++;
        }
    cr_assert(kept == 2 && all > kept, "one screw more and two, of the same length: %zu", kept);
}
