/* Standing on the ground, against hand statics: tipping, sliding, feet that lift. */
#include "check/ground.h"
#include "ground/footprint.h"
#include "judge/judge.h"
#include "loads/patterns.h"
#include "near.h"
#include "redo.h"
#include "second_frame.h"

#include <math.h>

static struct arena *arena;
static void set_up(void) {
    arena = arena_new();
}
static void tear_down(void) {
    arena_free(arena);
}
TestSuite(ground, .init = set_up, .fini = tear_down);

static struct result judged(const char *text) {
    struct result result;
    struct judge_options options = {.all_working = true};
    judge_frame(arena, frame_of_text(arena, text), &options, &result);
    return result;
}

static const struct check *find(const struct result *result, const char *id) {
    for (size_t k = 0; k < result->checks.count; k++)
        if (strcmp(result->checks.items[k].id, id) == 0)
            return &result->checks.items[k];
    return NULL;
}

static const struct check *check_of(const struct result *result, const char *id) {
    const struct check *check = find(result, id);
    cr_assert(check != NULL, "there is no %s", id);
    return check;
}

static bool cautioned(const struct result *result, const char *words) {
    for (size_t k = 0; k < result->cautions.count; k++)
        if (strstr(result->cautions.items[k], words))
            return true;
    return false;
}

/* Demand and limit of a check, and its whole working redone (in pounds and inches, whose ratios are
 * the same). */
static void is_check(const struct result *result, const char *id, double demand, double limit,
                     enum verdict verdict) {
    const struct check *check = check_of(result, id);
    NEAR(check->demand, demand, 1e-9, 1e-9);
    NEAR(check->limit, limit, 1e-9, 1e-9);
    cr_assert(check->verdict == verdict, "%s: %s", id, verdict_name(check->verdict));
    cr_assert(redo_all(check->working) > 0 || limit == 0.0, "%s has no working", id);
}

/* Weightless sticks, so stiff that they count as solid; weights are put on as loads. */
#define HEAD                                                                                       \
    "batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors}\n"                              \
    "sticks: {s: {size: [90, 90], material: {E: 9 GPa, density: 0}}}\n"

/* ---- a box of 1 m by 2 m in its plane, 400 N in its middle ---- */

#define PLANE_BOX(left, right, more)                                                               \
    HEAD "joints: {a: [0 m, 0 m], b: [1 m, 0 m], c: [0 m, 2 m], d: [1 m, 2 m]}\n"                  \
         "members:\n"                                                                              \
         "  ac: {from: a, to: c, stick: s, ends: rigid}\n"                                         \
         "  bd: {from: b, to: d, stick: s, ends: rigid}\n"                                         \
         "  ab: {from: a, to: b, stick: s, ends: rigid}\n"                                         \
         "  cd: {from: c, to: d, stick: s, ends: rigid}\n"                                         \
         "supports: {a: " left ", b: " right "}\n"                                                 \
         "loads:\n"                                                                                \
         "  - {case: self, joint: c, force: [0, 0, -200]}\n"                                       \
         "  - {case: self, joint: d, force: [0, 0, -200]}\n" more

#define PUSH(force)                                                                                \
    "  - {case: push-x, joint: c, force: [" force ", 0, 0]}\n"                                     \
    "combine: {service: {self: 1, push-x: 1}}\n"
#define FOOT "{foot: {on: paving}}"

/* H h = 90 x 2 against W b/2 = 400 x 0.5; friction 0.40 x 400. */
Test(ground, a_box_pushed_a_little_stays) {
    struct result result = judged(PLANE_BOX(FOOT, FOOT, PUSH("90 N")));
    is_check(&result, "tip/right", 180.0, 200.0, VERDICT_OK);
    is_check(&result, "slide/frame", 90.0, 160.0, VERDICT_OK);
    cr_assert(!find(&result, "tip/left") && !find(&result, "lift/a") && !find(&result, "lift/b"));
}

/* 110 x 2 = 220: the left foot would have to be held with (220 - 200) / 1 = 20 N. */
Test(ground, a_box_pushed_more_tips) {
    struct result result = judged(PLANE_BOX(FOOT, FOOT, PUSH("110 N")));
    is_check(&result, "tip/right", 220.0, 200.0, VERDICT_FAILS);
    is_check(&result, "lift/a", 20.0, 0.0, VERDICT_FAILS);
    cr_assert(!find(&result, "lift/b"));
    cr_assert(strstr(check_of(&result, "lift/a")->advice, "the left foot needs 20 N of hold-down"));
    cr_assert(strstr(check_of(&result, "tip/right")->advice, "the left foot needs 20 N"));
    cr_assert(result.verdict == VERDICT_FAILS);
}

/* Pushed the other way it is the other foot. */
Test(ground, a_box_pushed_left_tips_left) {
    struct result result = judged(PLANE_BOX(FOOT, FOOT, PUSH("-110 N")));
    is_check(&result, "tip/left", 220.0, 200.0, VERDICT_FAILS);
    is_check(&result, "lift/b", 20.0, 0.0, VERDICT_FAILS);
}

/* The hold-down adds 25 N x 1 m, and carries 20 of its 25 N. */
Test(ground, a_hold_down_holds) {
    struct result result =
        judged(PLANE_BOX("{foot: {on: paving, hold-down: 25 N}}", FOOT, PUSH("110 N")));
    is_check(&result, "tip/right", 220.0, 225.0, VERDICT_CLOSE);
    is_check(&result, "lift/a", 20.0, 25.0, VERDICT_OK);
}

/* One that is too weak: 18 of 20 N. */
Test(ground, a_weak_hold_down_does_not) {
    struct result result =
        judged(PLANE_BOX("{foot: {on: paving, hold-down: 18 N}}", FOOT, PUSH("110 N")));
    is_check(&result, "tip/right", 220.0, 218.0, VERDICT_FAILS);
    is_check(&result, "lift/a", 20.0, 18.0, VERDICT_FAILS);
    cr_assert(strstr(check_of(&result, "lift/a")->advice, "needs 20 N of hold-down"));
}

/* Ballast of 40 N on the left foot: 40 x 1 more. */
Test(ground, ballast_is_weight) {
    struct result result = judged(
        PLANE_BOX(FOOT, FOOT, "  - {case: self, joint: a, force: [0, 0, -40]}\n" PUSH("110 N")));
    is_check(&result, "tip/right", 220.0, 240.0, VERDICT_CLOSE);
    cr_assert(!find(&result, "lift/a"));
    is_check(&result, "slide/frame", 110.0, 0.40 * 440.0, VERDICT_OK);
}

/* Not said: 0.20 x 400. Grass and paving: each foot presses with its share, 200 -+ 90 x 2 / 1. */
Test(ground, friction_is_that_of_the_ground) {
    struct result result = judged(PLANE_BOX("foot", "foot", PUSH("90 N")));
    is_check(&result, "slide/frame", 90.0, 80.0, VERDICT_FAILS);
    cr_assert(cautioned(&result, "what the feet stand on is not said"));
    result = judged(PLANE_BOX("{foot: {on: grass}}", FOOT, PUSH("90 N")));
    is_check(&result, "slide/frame", 90.0, 0.20 * 20.0 + 0.40 * 380.0, VERDICT_OK);
    cr_assert(!cautioned(&result, "what the feet stand on is not said"));
}

/* A support that holds both ways leaves nothing to tip over the other, lift or slide. */
Test(ground, what_holds_both_ways_is_not_judged) {
    struct result result = judged(PLANE_BOX("pinned", FOOT, PUSH("110 N")));
    cr_assert(!find(&result, "tip/right") && !find(&result, "lift/a"));
    cr_assert(!find(&result, "slide/frame"));
    result = judged(PLANE_BOX("pinned", FOOT, PUSH("-110 N")));
    is_check(&result, "tip/left", 220.0, 200.0, VERDICT_FAILS);
    is_check(&result, "lift/b", 20.0, 0.0, VERDICT_FAILS);
    result = judged(PLANE_BOX("{in-ground: 24 in}", "{in-ground: 24 in}", PUSH("110 N")));
    cr_assert(!find(&result, "tip/right") && !find(&result, "lift/a"));
}

/* Without `combine:` a push counts only with trays: here it is a sentence. 400 x 0.5 / 2 = 100 N
 * tip it, 0.40 x 400 = 160 N move it. */
Test(ground, an_empty_frame_is_a_sentence) {
    struct result result =
        judged(PLANE_BOX(FOOT, FOOT, "  - {case: push-x, joint: c, force: [110 N, 0, 0]}\n"));
    cr_assert(!find(&result, "tip/right") && !find(&result, "slide/frame"));
    cr_assert(cautioned(
        &result, "with nothing on it, a push of 100 N where the file has it tips it to the "));
    cr_assert(cautioned(&result, "and 160 N moves it along the ground"));
}

/* ---- one foot that lifts while the others stand: a beam of 2 m on three feet ---- */

#define BEAM(more)                                                                                 \
    "batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors}\n"                              \
    "sticks: {s: {section: {A: 1 m2, Iy: 1e-6 m4, Iz: 1e-6 m4, J: 1e-6 m4},"                       \
    " material: {E: 1 GPa, density: 0}}}\n"                                                        \
    "joints: {a: [0 m, 0 m], b: [1 m, 0 m], c: [2 m, 0 m], m: [1.5 m, 0 m]}\n"                     \
    "members: {beam: {from: a, to: c, stick: s}}\n"                                                \
    "supports: {a: foot, b: foot, c: foot}\n"                                                      \
    "loads:\n  - {case: tray, joint: m, force: [0, 0, -320]}\n" more

/* Both feet down: -3/32 P at the far end of two equal spans with P in the middle of one. Then the
 * span stands alone: M = PL/4 = 80 N-m in its middle (13/64 PL = 65 with every foot held). */
Test(ground, the_far_end_of_a_beam_lifts) {
    struct result result = judged(BEAM("combine: {service: {tray: 1}}\n"));
    is_check(&result, "lift/a", 30.0, 0.0, VERDICT_FAILS);
    cr_assert(!find(&result, "tip/right") && !find(&result, "tip/part"));
    const struct case_result *tray = &result.cases.items[0];
    SAME_TEXT(tray->name, "tray");
    NEAR_REL(tray->reactions[0][2], -30.0, 1e-9); /* cases take feet as holding both ways */
    result = judged(BEAM("  - {case: tray, joint: a, force: [0, 0, -30]}\n"
                         "combine: {service: {tray: 1}}\n"));
    cr_assert(!find(&result, "lift/a"), "just held down");
}

/* Strength is judged in that state: 80 N-m on 100^3/6 mm3, 0.48 MPa. */
Test(ground, strength_is_that_of_the_standing_state) {
    struct result result =
        judged("batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors}\n"
               "sticks: {s: {size: [100, 100], material: {E: 9 GPa, density: 0, Fb: 5 MPa}}}\n"
               "joints: {a: [0 m, 0 m], b: [1 m, 0 m], c: [2 m, 0 m], m: [1.5 m, 0 m]}\n"
               "members: {beam: {from: a, to: c, stick: s, held-along: yes}}\n"
               "supports: {a: foot, b: foot, c: foot}\n"
               "loads: [{case: tray, joint: m, force: [0, 0, -320]}]\n"
               "combine: {service: {tray: 1}}\n");
    NEAR_REL(check_of(&result, "bend/beam")->demand, 0.48e6, 1e-9);
}

/* Two halves that only a hinged bar joins: 50 N lift the left one, which weighs 20; the right one
 * weighs enough that the whole does not tip. */
Test(ground, a_part_of_it_tips) {
    struct result result = judged(
        HEAD "joints: {a: [0, 0], b: [1000, 0], c: [0, 500], d: [1000, 500], e: [2000, 500],\n"
             "  g: [1500, 0], h: [3000, 0], i: [3000, 500]}\n"
             "members:\n"
             "  ac: {from: a, to: c, stick: s, ends: rigid}\n"
             "  bd: {from: b, to: d, stick: s, ends: rigid}\n"
             "  cd: {from: c, to: d, stick: s, ends: rigid}\n"
             "  ab: {from: a, to: b, stick: s, ends: rigid}\n"
             "  de: {from: d, to: e, stick: s, ends: pinned}\n"
             "  ei: {from: e, to: i, stick: s, ends: rigid}\n"
             "  gi: {from: g, to: i, stick: s, ends: rigid}\n"
             "  gh: {from: g, to: h, stick: s, ends: rigid}\n"
             "  hi: {from: h, to: i, stick: s, ends: rigid}\n"
             "supports: {a: foot, b: foot, g: foot, h: foot}\n"
             "loads:\n"
             "  - {case: self, joint: c, force: [0, 0, -20]}\n"
             "  - {case: self, joint: g, force: [0, 0, -400]}\n"
             "  - {case: gust, joint: c, force: [0, 0, 50]}\n"
             "combine: {storm: {self: 1, gust: 1}}\n");
    const struct check *part = check_of(&result, "tip/part");
    cr_assert(part->verdict == VERDICT_FAILS && !(part->ratio <= 1.0));
    is_check(&result, "tip/right", 150.0, 660.0, VERDICT_OK);
}

/* ---- boxes in space ---- */

#define SOLID_BOX(feet, more)                                                                      \
    HEAD "joints:\n"                                                                               \
         "  fl: [0 m, 0 m, 0 m]\n  fr: [1 m, 0 m, 0 m]\n  bl: [0 m, 0.5 m, 0 m]\n"                 \
         "  br: [1 m, 0.5 m, 0 m]\n"                                                               \
         "  tfl: [0 m, 0 m, 1.5 m]\n  tfr: [1 m, 0 m, 1.5 m]\n  tbl: [0 m, 0.5 m, 1.5 m]\n"        \
         "  tbr: [1 m, 0.5 m, 1.5 m]\n"                                                            \
         "members:\n"                                                                              \
         "  pfl: {from: fl, to: tfl, stick: s, ends: rigid}\n"                                     \
         "  pfr: {from: fr, to: tfr, stick: s, ends: rigid}\n"                                     \
         "  pbl: {from: bl, to: tbl, stick: s, ends: rigid}\n"                                     \
         "  pbr: {from: br, to: tbr, stick: s, ends: rigid}\n"                                     \
         "  f1: {from: tfl, to: tfr, stick: s, ends: rigid}\n"                                     \
         "  b1: {from: tbl, to: tbr, stick: s, ends: rigid}\n"                                     \
         "  l1: {from: tfl, to: tbl, stick: s, ends: rigid}\n"                                     \
         "  r1: {from: tfr, to: tbr, stick: s, ends: rigid}\n"                                     \
         "supports: {" feet "}\n"                                                                  \
         "loads:\n"                                                                                \
         "  - {case: self, joint: tfl, force: [0, 0, -50]}\n"                                      \
         "  - {case: self, joint: tfr, force: [0, 0, -50]}\n"                                      \
         "  - {case: self, joint: tbl, force: [0, 0, -50]}\n"                                      \
         "  - {case: self, joint: tbr, force: [0, 0, -50]}\n" more
#define ON_SOIL "{foot: {on: soil}}"
#define ALL_ON_SOIL "fl: " ON_SOIL ", fr: " ON_SOIL ", bl: " ON_SOIL ", br: " ON_SOIL
#define SHOVED                                                                                     \
    "  - {case: wind-back, joint: tfl, force: [0, -30, 0]}\n"                                      \
    "  - {case: wind-back, joint: tfr, force: [0, -30, 0]}\n"                                      \
    "combine: {gale: {self: 0.6, wind-back: 1}}\n"

/* 60 x 1.5 = 90 N-m over the front feet against 0.6 x 200 x 0.25 = 30: 60 N-m over 2 feet 0.5 m
 * away: 60 N each. Sliding: 60 N against 0.35 x 0.6 x 200 = 42. */
Test(ground, wind_needs_hold_downs_at_the_back) {
    struct result result = judged(SOLID_BOX(ALL_ON_SOIL, SHOVED));
    is_check(&result, "tip/front", 90.0, 30.0, VERDICT_FAILS);
    is_check(&result, "lift/bl", 60.0, 0.0, VERDICT_FAILS);
    is_check(&result, "lift/br", 60.0, 0.0, VERDICT_FAILS);
    is_check(&result, "slide/frame", 60.0, 42.0, VERDICT_FAILS);
    cr_assert(!find(&result, "lift/fl") && !find(&result, "tip/back"));
    cr_assert(strstr(check_of(&result, "tip/front")->advice,
                     "each of the two back feet needs 60 N of hold-down"));
    SAME_TEXT(check_of(&result, "tip/front")->place, "over its front feet");
    SAME_TEXT(check_of(&result, "tip/front")->combination, "gale");
}

/* With them: 30 + 2 x 75 x 0.5 = 105 N-m hold it. */
Test(ground, with_hold_downs_at_the_back_it_stands) {
    struct result result = judged(SOLID_BOX(
        "fl: " ON_SOIL ", fr: " ON_SOIL
        ", bl: {foot: {on: soil, hold-down: 75 N}}, br: {foot: {on: soil, hold-down: 75 N}}",
        SHOVED));
    is_check(&result, "tip/front", 90.0, 105.0, VERDICT_OK);
    is_check(&result, "lift/bl", 60.0, 75.0, VERDICT_OK);
}

/* A strap at the top that holds y: nothing tips or slides that way. */
Test(ground, a_strap_holds) {
    struct result result = judged(SOLID_BOX(ALL_ON_SOIL ", tbl: [y]", SHOVED));
    cr_assert(!find(&result, "tip/front") && !find(&result, "slide/frame"));
}

/* Three feet, the fourth post hangs. The edge from fr to bl lies 0.5 / sqrt(1.25) = 0.4472 m from
 * the posts fl and br: 50 N on the one hold as much as 50 N on the other overturn, so 30 N more on
 * br tip it, and 100 N more on fl hold it. */
Test(ground, a_stool_tips_over_its_slanting_edge) {
    struct result result =
        judged(SOLID_BOX("fl: " ON_SOIL ", fr: " ON_SOIL ", bl: " ON_SOIL,
                         "  - {case: wind-left, joint: tbr, force: [0, 0, -30]}\n"
                         "combine: {more: {self: 1, wind-left: 1}}\n"));
    double arm = 0.5 / sqrt(1.25);
    is_check(&result, "tip/back", 30.0 * arm, 0.0, VERDICT_FAILS);
    result = judged(SOLID_BOX("fl: " ON_SOIL ", fr: " ON_SOIL ", bl: " ON_SOIL,
                              "  - {case: wind-left, joint: tbr, force: [0, 0, -30]}\n"
                              "  - {case: self, joint: tfl, force: [0, 0, -100]}\n"
                              "combine: {more: {self: 1, wind-left: 1}}\n"));
    is_check(&result, "tip/back", 30.0 * arm, 100.0 * arm, VERDICT_OK);
}

/* Weight beyond the right foot alone. */
Test(ground, what_tips_by_itself_is_no_frame_to_judge) {
    static const char text[] = HEAD
        "joints: {a: [0 m, 0 m], b: [0.2 m, 0 m], c: [0 m, 1 m], d: [0.2 m, 1 m], e: [1 m, 1 m]}\n"
        "members:\n"
        "  ac: {from: a, to: c, stick: s, ends: rigid}\n"
        "  bd: {from: b, to: d, stick: s, ends: rigid}\n"
        "  ce: {from: c, to: e, stick: s, ends: rigid}\n"
        "  ab: {from: a, to: b, stick: s, ends: rigid}\n"
        "supports: {a: foot, b: foot}\n"
        "loads: [{case: self, joint: e, force: [0, 0, -10]}]\n";
    struct result result = judged(text);
    cr_assert(result.verdict == VERDICT_FOLDS && result.checks.count == 0);
    cr_assert(result.folding.motion_count == 1 && result.folding.motions[0].tips);
    cr_assert(strstr(result.folding.motions[0].sentence, "over its right foot"));
    cr_assert(result.cases.count > 0 && result.cases.items[0].solved);
    /* the end at e, 1 m up and 0.8 m out, goes down by 0.8 and right by 1: scaled to the largest */
    const struct motion *motion = &result.folding.motions[0];
    const struct joint_move *last = &motion->moves[motion->move_count - 1];
    NEAR_REL(last->by[0], 1.0, 1e-9);
    NEAR_REL(last->by[2], -0.8, 1e-9);
}

/* ---- the outline ---- */

static struct footprint *footprint(const char *joints, const char *supports) {
    struct problems problems = problems_new(arena);
    const char *text =
        arena_print(arena,
                    "%sjoints: {%s}\nmembers: {m: {from: a, to: b, stick: s}, n: {from: b, to: c, "
                    "stick: s}, o: {from: c, to: d, stick: s}}\nsupports: {%s}\n",
                    HEAD, joints, supports);
    return footprint_of(arena, model_build(arena, frame_of_text(arena, text), &problems));
}

static size_t count_of(const struct footprint *footprint, enum side side) {
    size_t count = 0;
    for (size_t e = 0; e < footprint->edge_count; e++)
        count += footprint->edges[e].side == side;
    return count;
}

Test(ground, the_outline_has_an_edge_to_each_side) {
    struct footprint *square =
        footprint("a: [0, 0, 0], b: [900, 0, 0], c: [900, 500, 0], d: [0, 500, 0]",
                  "a: foot, b: foot, c: foot, d: foot");
    cr_assert(square->edge_count == 4 && square->feet == 4);
    for (int side = 0; side < SIDE_COUNT; side++)
        cr_assert(count_of(square, (enum side)side) == 1, "%s", side_name((enum side)side));
    /* 10 N down in the middle, taken about (0, 0, 0): 2.5 N-m or 4.5 N-m against each edge */
    struct resultant weight = {{0, 0, -10}, {-2.5, 4.5, 0}};
    const double origin[3] = {0, 0, 0};
    for (size_t e = 0; e < 4; e++) {
        const struct tip_edge *edge = &square->edges[e];
        bool wide = edge->side == SIDE_LEFT || edge->side == SIDE_RIGHT;
        NEAR_REL(edge_moment(edge, &weight, origin), wide ? -4.5 : -2.5, 1e-12);
        cr_assert(!edge->held && !edge->held_down);
    }
}

Test(ground, a_foot_inside_the_outline_or_on_an_edge_makes_no_edge) {
    struct footprint *triangle =
        footprint("a: [0, 0, 0], b: [900, 0, 0], c: [450, 0, 0], d: [450, 600, 0]",
                  "a: foot, b: foot, c: foot, d: foot");
    cr_assert(triangle->edge_count == 3, "%zu edges", triangle->edge_count);
    cr_assert(count_of(triangle, SIDE_FRONT) == 1 && count_of(triangle, SIDE_LEFT) == 1 &&
              count_of(triangle, SIDE_RIGHT) == 1);
}

Test(ground, feet_in_one_line_tip_to_all_sides) {
    struct footprint *line =
        footprint("a: [0, 0, 0], b: [300, 0, 0], c: [900, 0, 0], d: [900, 0, 500]",
                  "a: foot, b: foot, c: foot, d: [y]");
    cr_assert(line->edge_count == 4);
    for (size_t e = 0; e < 4; e++) { /* the strap at 500 mm stops what moves it along y */
        bool along = line->edges[e].side == SIDE_FRONT || line->edges[e].side == SIDE_BACK;
        cr_assert(line->edges[e].held == along, "%s", side_name(line->edges[e].side));
    }
    struct footprint *plane =
        footprint("a: [0, 0], b: [300, 0], c: [900, 0], d: [900, 500]", "a: foot, c: foot");
    cr_assert(plane->edge_count == 2 && count_of(plane, SIDE_LEFT) == 1);
}

/* ---- patterns of trays ---- */

#define RACK(more)                                                                                 \
    HEAD "joints:\n"                                                                               \
         "  a: [0 m, 0 m, 0 m]\n  b: [1 m, 0 m, 0 m]\n  c: [0 m, 0.4 m, 0 m]\n"                    \
         "  d: [1 m, 0.4 m, 0 m]\n  e: [0 m, 0 m, 1 m]\n  f: [1 m, 0 m, 1 m]\n"                    \
         "  g: [0 m, 0.4 m, 1 m]\n  h: [1 m, 0.4 m, 1 m]\n"                                        \
         "members:\n"                                                                              \
         "  p1: {from: a, to: e, stick: s, ends: rigid}\n"                                         \
         "  p2: {from: b, to: f, stick: s, ends: rigid}\n"                                         \
         "  p3: {from: c, to: g, stick: s, ends: rigid}\n"                                         \
         "  p4: {from: d, to: h, stick: s, ends: rigid}\n"                                         \
         "  f0: {from: a, to: b, stick: s, ends: rigid}\n"                                         \
         "  b0: {from: c, to: d, stick: s, ends: rigid}\n"                                         \
         "  f1: {from: e, to: f, stick: s, ends: rigid}\n"                                         \
         "  b1: {from: g, to: h, stick: s, ends: rigid}\n"                                         \
         "  l1: {from: e, to: g, stick: s, ends: rigid}\n"                                         \
         "  r1: {from: f, to: h, stick: s, ends: rigid}\n"                                         \
         "supports: {a: foot, b: foot, c: foot, d: foot}\n" more
#define BOTH                                                                                       \
    "shelves:\n  low: {rails: [f0, b0], trays: {weight: 80 N}}\n"                                  \
    "  top: {rails: [b1, f1], trays: {weight: 40 N}}\n"

static const struct loads *loads_of(const char *text) {
    struct problems problems = problems_new(arena);
    return loads_build(arena, model_build(arena, frame_of_text(arena, text), &problems));
}

/* Weight of a pattern, and where its middle lies from front to back. */
static void pattern_is(const struct loads *loads, const char *words, double weight, double y) {
    for (size_t p = 0; p < loads->pattern_count; p++) {
        if (strcmp(loads->patterns[p].words, words) != 0)
            continue;
        const struct load_set *set = &loads->sets[loads->patterns[p].sets[0]];
        double sum = 0.0, moment = 0.0;
        for (size_t k = 0; k < set->on_segments.count; k++) {
            const struct segment_load *load = &set->on_segments.items[k];
            int member = loads->model->segments[load->segment].member;
            double force = -load->force[2] * (load->b - load->a);
            sum += force;
            moment += force * loads->model->members[member].from[1];
        }
        NEAR_REL(sum, weight, 1e-12);
        NEAR_REL(moment / sum, y, 1e-12);
        return;
    }
    cr_assert_fail("no pattern: %s", words);
}

/* Half a shelf 0.4 m deep has its middle at 0.1 or 0.3 m, whichever rail is named first. */
Test(ground, each_shelf_alone_and_halves_of_all) {
    const struct loads *loads = loads_of(RACK(BOTH));
    cr_assert(loads->pattern_count == 4, "%zu patterns", loads->pattern_count);
    pattern_is(loads, "trays on the low shelf alone", 80.0, 0.2);
    pattern_is(loads, "trays on the top shelf alone", 40.0, 0.2);
    pattern_is(loads, "trays on the front half of each shelf alone", 60.0, 0.1);
    pattern_is(loads, "trays on the back half of each shelf alone", 60.0, 0.3);
}

Test(ground, one_shelf_is_not_alone) {
    const struct loads *loads =
        loads_of(RACK("shelves: {top: {rails: [f1, b1], trays: {weight: 40 N}}}\n"));
    cr_assert(loads->pattern_count == 2, "%zu patterns", loads->pattern_count);
    loads = loads_of(RACK("shelves: {top: {rails: [f1, b1], trays: {weight: 40 N}}}\n"
                          "loads: [{case: tray, joint: e, force: [0, 0, -5]}]\n"));
    cr_assert(loads->pattern_count == 4, "%zu patterns", loads->pattern_count);
    SAME_TEXT(loads->patterns[1].words, "no trays but the loads given for the case tray");
    loads = loads_of(RACK("shelves: {top: {rails: [f1, b1]}}\n"));
    cr_assert(loads->pattern_count == 0);
}

/* Rails from front to back: the half is one of their length. */
Test(ground, rails_from_front_to_back_are_halved_along) {
    const struct loads *loads =
        loads_of(RACK("shelves: {top: {rails: [l1, r1], trays: {weight: 40 N}}}\n"));
    const struct load_set *front = &loads->sets[loads->patterns[0].sets[0]];
    cr_assert(front->on_segments.count == 2);
    NEAR_ABS(front->on_segments.items[0].a, 0.0, 1e-12);
    NEAR_REL(front->on_segments.items[0].b, 0.2, 1e-12);
    NEAR_REL(-front->on_segments.items[0].force[2] * 0.2, 10.0, 1e-12);
}

/* Pushed over the front with 50 N at 1 m, and 1.5 % of the trays. All full: 120 N x 0.2 m hold. The
 * top shelf alone: 40 x 0.2 = 8; front halves: 60 x 0.1 = 6, the worst. Level: 0.6 N at 1 m, half
 * of 0.015 x 40, and none from the lower shelf, which lies on the ground. */
Test(ground, the_worst_shelves_are_those_in_front) {
    struct result result =
        judged(RACK(BOTH "loads: [{case: push-y, joint: e, force: [0, -50, 0]}]\n"));
    const struct check *tip = check_of(&result, "tip/front");
    SAME_TEXT(tip->combination, "D+T+push back"); /* which pushes along -y here */
    SAME_TEXT(tip->governs, "trays on the front half of each shelf alone");
    NEAR_REL(tip->demand, 50.0 + 0.015 * 20.0, 1e-9);
    NEAR_REL(tip->limit, 6.0, 1e-9);
}

/* A trestle with splayed legs: full, it stays where it is; its front half alone pushes it back. */
Test(ground, half_a_trestle_leans) {
    static const char text[] = HEAD
        "joints:\n"
        "  a: [0 m, 0 m, 0 m]\n  b: [1 m, 0 m, 0 m]\n  c: [0 m, 1 m, 0 m]\n  d: [1 m, 1 m, 0 m]\n"
        "  e: [0 m, 0.35 m, 1 m]\n  f: [1 m, 0.35 m, 1 m]\n  g: [0 m, 0.65 m, 1 m]\n"
        "  h: [1 m, 0.65 m, 1 m]\n"
        "members:\n"
        "  p1: {from: a, to: e, stick: s, ends: rigid}\n"
        "  p2: {from: b, to: f, stick: s, ends: rigid}\n"
        "  p3: {from: c, to: g, stick: s, ends: rigid}\n"
        "  p4: {from: d, to: h, stick: s, ends: rigid}\n"
        "  f1: {from: e, to: f, stick: s, ends: rigid}\n"
        "  b1: {from: g, to: h, stick: s, ends: rigid}\n"
        "  l1: {from: e, to: g, stick: s, ends: rigid}\n"
        "  r1: {from: f, to: h, stick: s, ends: rigid}\n"
        "supports: {a: foot, b: foot, c: foot, d: foot}\n"
        "shelves: {top: {rails: [f1, b1], trays: {weight: 900 N}}}\n";
    struct result result = judged(text);
    cr_assert(strstr(check_of(&result, "lean/y")->governs, "half of each shelf alone"), "%s",
              check_of(&result, "lean/y")->governs);
    cr_assert(!strstr(check_of(&result, "lean/x")->governs, "half of each shelf alone"));
}

/* ---- the check alone ---- */

/* Two hold-downs and no weight: 25 x 1 + 30 x 2 = 85 N-m against 170. A load that presses down and
 * pushes level at once has no arm of its own: its moment is given as it is. */
Test(ground, hold_downs_alone) {
    struct working working = {.arena = arena};
    struct tip_part part = {.words = "wind on the roof", .moment = 170.0};
    struct tip_hold holds[] = {{25.0, 1.0}, {30.0, 2.0}};
    struct rating rating = check_tip(&(struct tip_input){&part, 1, holds, 2}, &working);
    NEAR_REL(rating.ratio, 2.0, 1e-12);
    NEAR_REL(noted(&working, "M1"), 170.0 / (4.4482216152605 * 0.0254), 1e-12);
    cr_assert(isnan(noted(&working, "W1")) && isnan(noted(&working, "H1")), "no force, no arm");
    cr_assert(redo_all(&working) == 3);
}

/* Round-off against all of the moments is nothing; a small moment that nothing holds is one. */
Test(ground, what_round_off_leaves_overturns_nothing) {
    struct tip_part dust[] = {{.words = "w", .moment = -1e6}, {.words = "v", .moment = 1e-4}};
    cr_assert(check_tip(&(struct tip_input){dust, 2, NULL, 0}, NULL).ratio == 0.0);
    struct tip_part small = {.words = "w", .moment = 1e-10};
    cr_assert(check_tip(&(struct tip_input){&small, 1, NULL, 0}, NULL).ratio > 1.0);
}

/* ---- what is not a number passes nothing ---- */

Test(ground, nan_passes_nothing) {
    struct tip_part part = {.words = "w", .moment = NAN};
    struct rating tip = check_tip(&(struct tip_input){&part, 1, NULL, 0}, NULL);
    struct slide_ground soil = {"soil", {0.35, "s", MARK_TRADE}, NAN};
    struct rating slide = check_slide(&(struct slide_input){{1.0, 0.0}, &soil, 1}, NULL);
    struct rating lift = check_lift(NAN, 10.0, NULL);
    cr_assert(!(tip.ratio <= 1.0) && !(slide.ratio <= 1.0) && !(lift.ratio <= 1.0));
    cr_assert(!(check_lift(1.0, 0.0, NULL).ratio <= 1.0));
    cr_assert(check_lift(0.0, 0.0, NULL).ratio == 0.0);
}
