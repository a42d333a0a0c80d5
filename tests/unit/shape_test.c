/* What a shape stands for: places, names, order, overrides; and that the expanded file is the same
 * frame. Numbers come from the format page's own example and from the sizes of dressed lumber (1x2
 * is 3/4 x 1-1/2 in, 2x4 1-1/2 x 3-1/2 in). Wrong shapes are in tests/bad/. */
#include "in_arena.h"
#include "judge/judge.h"
#include "near.h"
#include "report/expand_text.h"
#include "second_frame.h"
#include "start/starters.h"

#include <stdio.h>
#include <string.h>

TestSuite(shape, .init = set_up, .fini = tear_down);

#define IN 0.0254

static const char head[] =
    "batten: 1\n"
    "sticks:\n"
    "  post: {size: 1x2, species: spruce-pine-fir, grade: ungraded}\n"
    "  rail: {size: 1x2, species: spruce-pine-fir, grade: ungraded}\n"
    "  slat: {size: 1x2, species: spruce-pine-fir, grade: ungraded, stands: flat}\n"
    "  thin: {size: 2x4, species: spruce-pine-fir, grade: no-2}\n"
    "connections:\n"
    "  default: {type: screwed-lap, screw: 8, length: 1-1/4 in, count: 2}\n"
    "  butt: {type: screwed-butt, screw: 8, length: 2-1/2 in, count: 2}\n";

/* The example of the format page. */
#define CABINET                                                                                    \
    "kind: lean-to, wide: 36 in, deep: 24 in, high: 52 in, front-high: 44 in, "                    \
    "shelves: {lower: 6 in, upper: 26 in}, deck: {slats: slat, count: 12}, "                       \
    "trays: {kind: tray-1020-wet, count: 3}, sheet: twin-wall-6mm, "                               \
    "covers: {front: hinged, left: screwed, right: screwed, roof: screwed}, "                      \
    "braces: {back: 2, left: 2, right: 2}"

static const char *with(const char *shape, const char *more) {
    return arena_print(arena, "%sshape: {%s}\n%s", head, shape, more);
}

static struct frame *made(const char *shape) {
    return frame_of_text(arena, with(shape, ""));
}

static const struct joint *joint(const struct frame *frame, const char *name) {
    for (size_t k = 0; k < frame->joints.count; k++)
        if (strcmp(frame->joints.items[k].name, name) == 0)
            return &frame->joints.items[k];
    cr_assert_fail("no joint %s", name);
    return NULL;
}

static const struct member *member(const struct frame *frame, const char *name) {
    for (size_t k = 0; k < frame->members.count; k++)
        if (strcmp(frame->members.items[k].name, name) == 0)
            return &frame->members.items[k];
    return NULL;
}

/* In inches. */
static void stands_at(const struct frame *frame, const char *name, double x, double y, double z) {
    const double want[3] = {x, y, z}, *at = joint(frame, name)->at;
    for (int c = 0; c < 3; c++)
        cr_assert(is_near(at[c] / IN, want[c], 0.0, 1e-9), "%s, axis %d: %.12g, want %.12g", name,
                  c, at[c] / IN, want[c]);
}

static const char *joint_name(const struct frame *frame, int number) {
    return frame->joints.items[number].name;
}

/* "post-fl fl0-fl3" for every member. */
static const char *members_of(const struct frame *frame) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < frame->members.count; k++) {
        const struct member *each = &frame->members.items[k];
        text_print(&text, "%s%s %s-%s", k ? ", " : "", each->name, joint_name(frame, each->from),
                   joint_name(frame, each->to));
    }
    return text_string(&text);
}

static const char *panels_of(const struct frame *frame) {
    struct text text = text_new(arena);
    for (size_t k = 0; k < frame->panels.count; k++) {
        const struct panel *each = &frame->panels.items[k];
        text_print(&text, "%s%s", k ? ", " : "", each->name);
        for (int c = 0; c < 4; c++)
            text_print(&text, " %s", joint_name(frame, each->corners[c]));
    }
    return text_string(&text);
}

/* ---- the format page's example ---- */

Test(shape, the_cabinet_stands_where_the_page_says) {
    const struct frame *frame = made(CABINET);
    stands_at(frame, "fl0", 0.75, 0.375, 0);
    stands_at(frame, "br0", 35.25, 23.625, 0);
    stands_at(frame, "fr1", 35.25, 0.375, 5.25);
    stands_at(frame, "bl2", 0.75, 23.625, 25.25);
    stands_at(frame, "fl3", 0.75, 0.375, 43.25);
    stands_at(frame, "br3", 35.25, 23.625, 51.25);
    cr_assert_eq(frame->joints.count, 16);
    cr_assert(!frame->plane);
}

Test(shape, the_cabinet_s_sticks_in_order) {
    SAME_TEXT(members_of(made(CABINET)),
              "post-fl fl0-fl3, post-fr fr0-fr3, post-bl bl0-bl3, post-br br0-br3, "
              "front-1 fl1-fr1, back-1 bl1-br1, left-1 fl1-bl1, right-1 fr1-br1, "
              "front-2 fl2-fr2, back-2 bl2-br2, left-2 fl2-bl2, right-2 fr2-br2, "
              "front-3 fl3-fr3, back-3 bl3-br3, slope-left fl3-bl3, slope-right fr3-br3, "
              "brace-back-1 bl0-br1, brace-back-2 br1-bl2, brace-left-1 fl0-bl1, "
              "brace-left-2 bl1-fl2, brace-right-1 fr0-br1, brace-right-2 br1-fr2");
}

Test(shape, the_cabinet_s_shelves_feet_and_sheets) {
    const struct frame *frame = made(CABINET);
    cr_assert_eq(frame->shelves.count, 2);
    const struct shelf *upper = &frame->shelves.items[1];
    SAME_TEXT(upper->name, "upper");
    cr_assert_eq(upper->rail_count, 2);
    SAME_TEXT(frame->members.items[upper->rails[0]].name, "front-2");
    SAME_TEXT(frame->members.items[upper->rails[1]].name, "back-2");
    cr_assert(upper->deck == DECK_SLATS && upper->slat_count == 12);
    cr_assert(upper->trays == TRAYS_KIND && upper->tray_count == 3);
    cr_assert_eq(frame->supports.count, 4);
    for (size_t k = 0; k < 4; k++)
        cr_assert(frame->supports.items[k].foot);
    SAME_TEXT(panels_of(frame), "front fl0 fr0 fr3 fl3, left fl0 bl0 bl3 fl3, "
                                "right fr0 br0 br3 fr3, roof fl3 fr3 br3 bl3");
    const struct panel *front = &frame->panels.items[0], *roof = &frame->panels.items[3];
    cr_assert(front->held == HELD_HINGED && front->opens && !front->stay);
    SAME_TEXT(joint_name(frame, front->hinge[0]), "fl0");
    SAME_TEXT(joint_name(frame, front->hinge[1]), "fl3");
    cr_assert(roof->held == HELD_SCREWED && !roof->runs_across && !roof->opens);
    NEAR_REL(roof->screw_diameter, (0.060 + 0.013 * 8) * IN, 1e-12); /* No.8 */
    NEAR_REL(roof->spacing.value, 12 * IN, 1e-12);
}

/* ---- the other kinds ---- */

Test(shape, a_stand_with_its_upper_shelf_on_the_top_rails) {
    const struct frame *frame =
        made("kind: stand, wide: 48, deep: 24, high: 48, shelves: [12, 48]");
    SAME_TEXT(members_of(frame),
              "post-fl fl0-fl2, post-fr fr0-fr2, post-bl bl0-bl2, post-br br0-br2, "
              "front-1 fl1-fr1, back-1 bl1-br1, left-1 fl1-bl1, right-1 fr1-br1, "
              "front-2 fl2-fr2, back-2 bl2-br2, left-2 fl2-bl2, right-2 fr2-br2");
    SAME_TEXT(frame->shelves.items[0].name, "shelf-1");
    SAME_TEXT(frame->shelves.items[1].name, "shelf-2");
    SAME_TEXT(frame->members.items[frame->shelves.items[1].rails[0]].name, "front-2");
    stands_at(frame, "bl2", 0.75, 23.625, 47.25); /* top rails half a rail down */
}

Test(shape, a_gable_of_three_frames) {
    /* 8 ft over 1x2 posts: 94.5 in between the axes, more than one and less than two times 4 ft */
    const struct frame *frame = made("kind: gable, wide: 8 ft, deep: 6 ft, high: 7 ft, "
                                     "eave-high: 5 ft, sheet: film-6mil, "
                                     "covers: {roof: stapled, left: screwed}");
    SAME_TEXT(members_of(frame),
              "post-fl fl0-fl1, post-fr fr0-fr1, post-bl bl0-bl1, post-br br0-br1, "
              "post-f1 f1-0-f1-1, post-b1 b1-0-b1-1, "
              "front-1 fl1-fr1, back-1 bl1-br1, left-1 fl1-bl1, right-1 fr1-br1, "
              "slope-left-front fl1-rl, slope-left-back bl1-rl, slope-1-front f1-1-r1, "
              "slope-1-back b1-1-r1, slope-right-front fr1-rr, slope-right-back br1-rr, "
              "ridge rl-rr");
    stands_at(frame, "f1-0", 48, 0.375, 0);
    stands_at(frame, "b1-1", 48, 71.625, 59.25);
    stands_at(frame, "rl", 0.75, 36, 83.25);
    stands_at(frame, "r1", 48, 36, 83.25);
    cr_assert_eq(frame->supports.count, 6);
    SAME_TEXT(panels_of(frame), "left fl0 bl0 bl1 fl1, roof-front fl1 fr1 rr rl, "
                                "roof-back bl1 br1 rr rl");
}

/* Frames in thirds, middle posts in sixths: posts 2 and 4 of five belong to frames. */
Test(shape, middle_posts_between_the_frames_of_a_gable) {
    const struct frame *frame = made("kind: gable, wide: 8 ft, deep: 6 ft, high: 7 ft, "
                                     "eave-high: 5 ft, frames: 4, middle-posts: 5, posts: thin");
    cr_assert(member(frame, "post-f5") && !member(frame, "post-f6"));
    cr_assert(member(frame, "slope-2-front") && member(frame, "slope-4-back"));
    cr_assert(!member(frame, "slope-1-front") && !member(frame, "slope-3-front"));
    stands_at(frame, "f2-0", 1.75 + 92.5 / 3, 0.75, 0);
    stands_at(frame, "r4", 1.75 + 92.5 * 2 / 3, 36, 83.25);
}

Test(shape, a_bench_with_an_upstand) {
    const struct frame *frame = made("kind: bench, wide: 60, deep: 24, high: 36, under: 12, "
                                     "back-rail: 6, posts: thin, rails: thin, "
                                     "deck: {slats: slat, count: 9}, braces: {back: all}");
    SAME_TEXT(members_of(frame),
              "post-fl fl0-fl2, post-fr fr0-fr2, post-bl bl0-bl3, post-br br0-br3, "
              "front-1 fl1-fr1, back-1 bl1-br1, left-1 fl1-bl1, right-1 fr1-br1, "
              "front-2 fl2-fr2, back-2 bl2-br2, left-2 fl2-bl2, right-2 fr2-br2, "
              "back-3 bl3-br3, brace-back-1 bl0-br1, brace-back-2 br1-bl2");
    stands_at(frame, "fl1", 1.75, 0.75, 10.25);
    stands_at(frame, "fl2", 1.75, 0.75, 34.25);
    stands_at(frame, "bl3", 1.75, 23.25, 40.25);
    SAME_TEXT(frame->shelves.items[0].name, "under");
    SAME_TEXT(frame->shelves.items[1].name, "top");
}

Test(shape, a_cold_frame_with_its_lid) {
    const struct frame *frame = made("kind: cold-frame, wide: 48, deep: 36, high: 16, "
                                     "front-high: 10, bottom-rails: 3, sheet: twin-wall-8mm, "
                                     "covers: {back: screwed}, feet: {on: soil, hold-down: 20}, "
                                     "lid: {framed: rail, opens: 40 deg, weight: 12 lb}");
    SAME_TEXT(members_of(frame),
              "post-fl fl0-fl2, post-fr fr0-fr2, post-bl bl0-bl2, post-br br0-br2, "
              "front-1 fl1-fr1, back-1 bl1-br1, left-1 fl1-bl1, right-1 fr1-br1, "
              "front-2 fl2-fr2, back-2 bl2-br2, slope-left fl2-bl2, slope-right fr2-br2");
    SAME_TEXT(panels_of(frame), "back bl1 br1 br2 bl2, lid fl2 fr2 br2 bl2");
    const struct panel *lid = &frame->panels.items[1];
    cr_assert(lid->held == HELD_HINGED && lid->opens && !lid->stay && lid->framed == 1);
    NEAR_REL(lid->opens_angle, 40 * 3.14159265358979 / 180, 1e-12);
    SAME_TEXT(joint_name(frame, lid->hinge[0]), "bl2");
    SAME_TEXT(joint_name(frame, lid->hinge[1]), "br2");
    NEAR_REL(frame->supports.items[3].hold_down.value, 20 * 4.4482216152605, 1e-12);
}

/* ---- options of every kind ---- */

Test(shape, measured_from_axis_to_axis) {
    const struct frame *frame = made("kind: stand, wide: 48, deep: 24, high: 48, measured: axes");
    stands_at(frame, "fl0", 0, 0, 0);
    stands_at(frame, "br1", 48, 24, 47.25);
}

Test(shape, posts_that_face_the_side) {
    const char *text = "batten: 1\n"
                       "units: si\n"
                       "sticks:\n"
                       "  leg: {size: [30, 50], species: hem-fir, grade: ungraded, faces: side}\n"
                       "  bar: {size: [20, 60], species: hem-fir, grade: ungraded, stands: flat}\n"
                       "shape: {kind: stand, posts: leg, rails: bar, wide: 1000, deep: 500, "
                       "high: 900}\n";
    const struct frame *frame = frame_of_text(arena, text);
    NEAR_ABS(joint(frame, "br1")->at[0], 0.985, 1e-12); /* half of 30 */
    NEAR_ABS(joint(frame, "br1")->at[1], 0.475, 1e-12); /* half of 50 */
    NEAR_ABS(joint(frame, "br1")->at[2], 0.890, 1e-12); /* half of 20 */
}

Test(shape, rails_under_the_middle_of_trays) {
    const struct frame *frame = made("kind: stand, wide: 72, deep: 24, high: 48, middle-posts: 1, "
                                     "shelves: {low: 12}, rails-across: 4, ends: butt");
    SAME_TEXT(members_of(frame),
              "post-fl fl0-fl2, post-fr fr0-fr2, post-bl bl0-bl2, post-br br0-br2, "
              "post-f1 f1-0-f1-2, post-b1 b1-0-b1-2, "
              "front-1 fl1-fr1, back-1 bl1-br1, left-1 fl1-bl1, right-1 fr1-br1, "
              "cross-1-1 f1-1-b1-1, front-2 fl2-fr2, back-2 bl2-br2, left-2 fl2-bl2, "
              "right-2 fr2-br2, mid-1-2 l2-1-r2-1, mid-1-3 l3-1-r3-1");
    stands_at(frame, "f1-1", 36, 0.375, 11.25);
    stands_at(frame, "l2-1", 0.75, 0.375 + 23.25 / 3, 11.25);
    stands_at(frame, "m1-3-1", 36, 0.375 + 2 * 23.25 / 3, 11.25);
    cr_assert_eq(frame->shelves.items[0].rail_count, 4);
    SAME_TEXT(frame->members.items[frame->shelves.items[0].rails[1]].name, "mid-1-2");
    SAME_TEXT(frame->connections.items[member(frame, "mid-1-3")->ends[0]].name, "butt");
    SAME_TEXT(frame->connections.items[member(frame, "right-2")->ends[1]].name, "butt");
    cr_assert_eq(member(frame, "post-f1")->ends[0], -1);
}

Test(shape, every_way_to_brace) {
    const struct frame *frame = made("kind: stand, wide: 48, deep: 24, high: 48, shelves: [12], "
                                     "diagonals: thin, "
                                     "braces: {front: long, back: x, left: tie, right: 1}");
    SAME_TEXT(strstr(members_of(frame), "brace-front"),
              "brace-front-long fl0-fr2, brace-back-1 bl0-br1, brace-back-1-x br0-bl1, "
              "brace-back-2 bl1-br2, brace-back-2-x br1-bl2, brace-left-1 fl0-bl1, "
              "brace-left-1-x bl0-fl1, brace-left-2 fl1-bl2, brace-left-2-x bl1-fl2, "
              "brace-right-1 fr0-br1");
    const struct member *tie = member(frame, "brace-left-1"),
                        *brace = member(frame, "brace-back-2");
    cr_assert(tie->acts_as == ACTS_AS_TIE && tie->ends[0] == CONNECTION_INDEX_PINNED);
    cr_assert(brace->acts_as == ACTS_AS_BRACE && brace->ends[0] == -1);
    cr_assert_eq(tie->stick, 3);
}

/* ---- the file's own entries ---- */

Test(shape, an_entry_of_the_same_name_replaces_a_made_one) {
    const struct frame *frame = frame_of_text(
        arena, with("kind: stand, wide: 48, deep: 24, high: 48, shelves: {low: 12}",
                    "members:\n"
                    "  extra: {from: fl1, to: br1, stick: thin}\n"
                    "  front-1: {from: fl1, to: fr1, stick: thin, ends: butt}\n"
                    "joints: {bl2: [0.75, 23.625, 50]}\n"
                    "supports: {fl0: fixed}\n"
                    "shelves: {low: {rails: [front-1, back-1], trays: {load: 5 psf}}}\n"));
    cr_assert_eq(member(frame, "front-1")->stick, 3);
    SAME_TEXT(frame->members.items[4].name, "front-1"); /* where the made one stood */
    SAME_TEXT(frame->members.items[frame->members.count - 1].name, "extra");
    stands_at(frame, "bl2", 0.75, 23.625, 50);
    cr_assert(frame->supports.items[0].held[5] && !frame->supports.items[0].foot);
    cr_assert_eq(frame->supports.count, 4);
    cr_assert_eq(frame->shelves.count, 1);
    cr_assert(frame->shelves.items[0].trays == TRAYS_LOAD);
}

Test(shape, what_is_left_out_takes_its_joints_along) {
    const struct frame *frame =
        frame_of_text(arena, with("kind: stand, wide: 72, deep: 24, high: 48, middle-posts: 1, "
                                  "shelves: [12], braces: {back: 1}, "
                                  "leave-out: [post-b1, brace-back-1]",
                                  "leave-out: [post-fl]\n"
                                  "members: {short: {from: fl1, to: fl2, stick: post}}\n"));
    cr_assert(!member(frame, "post-b1") && !member(frame, "brace-back-1"));
    cr_assert(!member(frame, "post-fl") && member(frame, "short"));
    cr_assert_eq(frame->supports.count, 4); /* six feet but those of the two posts */
    for (size_t k = 0; k < frame->joints.count; k++)
        cr_assert(strcmp(frame->joints.items[k].name, "b1-0") != 0 &&
                  strcmp(frame->joints.items[k].name, "fl0") != 0);
    joint(frame, "b1-1"); /* a rail passes there */
}

Test(shape, a_shelf_whose_rail_is_left_out_lies_on_the_others) {
    const struct frame *frame = made("kind: stand, wide: 48, deep: 24, high: 48, shelves: [12], "
                                     "rails-across: 3, leave-out: [front-1]");
    cr_assert_eq(frame->shelves.items[0].rail_count, 2);
    SAME_TEXT(frame->members.items[frame->shelves.items[0].rails[0]].name, "mid-1-2");
}

/* ---- expanding ---- */

static struct result judged(const struct frame *frame) {
    struct result result;
    struct judge_options options = {0};
    judge_frame(arena, frame, &options, &result);
    return result;
}

static const char *expanded(const char *text) {
    struct text out = text_new(arena);
    expand_text(&out, frame_of_text(arena, text), text, strlen(text));
    return text_string(&out);
}

static void same_frame(const struct frame *a, const struct frame *b, const char *what) {
    cr_assert(a->joints.count == b->joints.count && a->members.count == b->members.count &&
                  a->supports.count == b->supports.count && a->shelves.count == b->shelves.count &&
                  a->panels.count == b->panels.count,
              "%s", what);
    for (size_t k = 0; k < a->joints.count; k++)
        for (int c = 0; c < 3; c++)
            cr_assert(a->joints.items[k].at[c] == b->joints.items[k].at[c], "%s", what);
    SAME_TEXT(members_of(a), members_of(b));
    SAME_TEXT(panels_of(a), panels_of(b));
}

/* The same ids, and ratios to 1e-9. */
static void same_checks(const char *text) {
    const char *full = expanded(text);
    cr_assert_null(strstr(full, "\nshape:"), "%s", full);
    struct result a = judged(frame_of_text(arena, text)), b = judged(frame_of_text(arena, full));
    cr_assert(a.checks.count == b.checks.count && a.verdict == b.verdict, "%s", text);
    for (size_t k = 0; k < a.checks.count; k++) {
        const struct check *x = &a.checks.items[k], *y = &b.checks.items[k];
        SAME_TEXT(x->id, y->id);
        /* not finite: nothing holds the foot, or no rule */
        cr_assert(is_near(y->ratio, x->ratio, 1e-9, 1e-9) || (isnan(x->ratio) && isnan(y->ratio)) ||
                      (isinf(x->ratio) && x->ratio == y->ratio),
                  "%s: %.17g, %.17g", x->id, x->ratio, y->ratio);
    }
}

Test(shape, expanded_files_check_alike) {
    static const char *const shapes[] = {
        CABINET,
        "kind: stand, wide: 48, deep: 24, high: 48, shelves: [12, 48], braces: {back: x}, "
        "trays: {load: 9 psf}, deck: {weight: 1 psf}, standing: short",
        "kind: stand, wide: 5 ft 7/16 in, deep: 22 in, high: 1 m, middle-posts: 2, "
        "rails-across: 3, shelves: {low: 300 mm}, laps: inside, measured: axes, ends: butt, "
        "trays: {weight: 50 lb}, braces: {left: long, right: tie}",
        "kind: lean-to, wide: 40, deep: 20, high: 50, front-high: 50, bottom-rails: 4, "
        "covers: {back: screwed}, sheet: plywood-1/4in, posts: thin",
        "kind: gable, wide: 9 ft, deep: 5 ft, high: 7 ft, eave-high: 5 ft, posts: thin, "
        "slopes: thin, shelves: [60], covers: {roof: screwed, roof-front: hinged}, "
        "sheet: twin-wall-8mm",
        "kind: gable, wide: 40, deep: 30, high: 50, eave-high: 36, frames: 2, middle-posts: 1, "
        "braces: {front: 1}, leave-out: [front-1]",
        "kind: bench, wide: 60, deep: 24, high: 36, under: 12, back-rail: 6, posts: thin, "
        "rails: thin, deck: {slats: slat, count: 30}, trays: {load: 10 psf}, "
        "braces: {back: all, left: 2}",
        "kind: cold-frame, wide: 48, deep: 36, high: 16, front-high: 10, sheet: twin-wall-8mm, "
        "lid: {framed: rail, stay: yes}, bottom-rails: 3",
        "kind: cold-frame, wide: 48, deep: 36, high: 16, front-high: 10, sheet: twin-wall-8mm, "
        "covers: {lid: sliding}, feet: {on: grass, hold-down: 9 kg}"};
    for (size_t k = 0; k < sizeof shapes / sizeof *shapes; k++) {
        same_checks(with(shapes[k], "site: {place: outdoors}\n"));
        same_checks(with(shapes[k], "site: {place: indoors}\n"
                                    "members: {mine: {from: fl0, to: br1, stick: thin}}\n"));
    }
}

/* The two slopes of a roof without diagonals can slide along its eaves, and no load drives that: a
 * frame of hinges folds so, without any shape of buckling to tell. */
Test(shape, a_gable_of_hinges_folds) {
    const char *text = "batten: 1\n"
                       "sticks: {post: {size: 2x3, species: hem-fir, grade: stud}}\n"
                       "connections: {default: {type: pinned}}\n"
                       "shape: {kind: gable, rails: post, wide: 72, deep: 48, high: 56, "
                       "eave-high: 36, bottom-rails: 4, "
                       "braces: {front: all, back: all, left: all, right: all}}\n"
                       "site: {place: indoors}\n";
    cr_assert_eq(judged(frame_of_text(arena, text)).verdict, VERDICT_FOLDS);
}

/* ---- random shapes ---- */

struct dice {
    uint64_t state;
    struct text text;
};

static double between(struct dice *dice, double low, double high) {
    return low + (high - low) * random_next(&dice->state);
}

static int upto(struct dice *dice, int most) {
    return (int)(random_next(&dice->state) * (most + 1));
}

static void add_braces(struct dice *dice) {
    static const char *const ways[] = {"1", "2", "all", "long", "x", "tie"};
    static const char *const faces[] = {"front", "back", "left", "right"};
    text_add(&dice->text, ", braces: {");
    for (int face = 0, any = 0; face < 4; face++)
        if (upto(dice, 1)) {
            text_print(&dice->text, "%s%s: %s", any ? ", " : "", faces[face], ways[upto(dice, 5)]);
            any = 1;
        }
    text_add(&dice->text, "}");
}

static void add_covers(struct dice *dice, const char *kind) {
    static const char *const helds[] = {"screwed", "hinged", "taped", "loose"};
    text_print(&dice->text, ", sheet: %s, covers: {left: %s, back: %s",
               upto(dice, 1) ? "twin-wall-6mm" : "plywood-1/4in", helds[upto(dice, 3)],
               helds[upto(dice, 3)]);
    if (strcmp(kind, "lean-to") == 0 || strcmp(kind, "gable") == 0)
        text_print(&dice->text, ", roof: %s", helds[upto(dice, 3)]);
    text_add(&dice->text, "}");
}

static void add_shelves(struct dice *dice, double low) {
    double height = between(dice, 100, 300);
    text_add(&dice->text, ", shelves: [");
    for (int k = 0; k < 4 && height < low - 120; k++, height += between(dice, 150, 500))
        text_print(&dice->text, "%s%.3f mm", k ? ", " : "", height);
    text_print(&dice->text, "], rails-across: %d, trays: {load: 0.4 kPa}", 2 + upto(dice, 2));
}

/* Sizes in mm with three decimals, in a file of either system; not every one is possible. */
static const char *random_shape(unsigned seed) {
    static const char *const kinds[] = {"stand", "lean-to", "gable", "bench", "cold-frame"};
    struct dice dice = {seed * 7919u + 1, text_new(arena)};
    const char *kind = kinds[seed % 5];
    double high = between(&dice, 500, 2200), low = high * between(&dice, 0.5, 0.95);
    text_print(&dice.text,
               "%sunits: %s\nshape: {kind: %s, wide: %.3f mm, deep: %.3f mm, "
               "high: %.3f mm, middle-posts: %d",
               head, upto(&dice, 1) ? "si" : "us", kind, between(&dice, 400, 3000),
               between(&dice, 300, 1500), high, upto(&dice, 2));
    bool sloped = strcmp(kind, "stand") != 0 && strcmp(kind, "bench") != 0;
    if (sloped)
        text_print(&dice.text, ", %s: %.3f mm", strcmp(kind, "gable") ? "front-high" : "eave-high",
                   low);
    if (strcmp(kind, "cold-frame") != 0 && upto(&dice, 2))
        add_shelves(&dice, sloped ? low : high);
    if (upto(&dice, 1))
        add_braces(&dice);
    if (upto(&dice, 1) || strcmp(kind, "cold-frame") == 0)
        add_covers(&dice, kind);
    text_add(&dice.text, "}\n");
    return text_string(&dice.text);
}

static bool is_possible(const char *text) {
    struct problems problems = problems_new(arena);
    return frame_read(arena, text, strlen(text), (struct frame_limits){0}, &problems) != NULL;
}

Test(shape, random_shapes_expand_to_themselves) {
    enum { SHAPES = 400, JUDGED = 20 };
    int possible = 0;
    for (unsigned seed = 0; seed < SHAPES; seed++) {
        const char *text = random_shape(seed);
        if (!is_possible(text))
            continue;
        const char *full = expanded(text);
        same_frame(frame_of_text(arena, text), frame_of_text(arena, full), text);
        SAME_TEXT(expanded(full), full);
        if (possible++ < JUDGED)
            same_checks(text);
    }
    cr_assert(possible > SHAPES / 2, "only %d", possible);
}

/* ---- the text ---- */

/* What stands above the shape. */
#define ABOVE                                                                                      \
    "# A stand.\n"                                                                                 \
    "batten: 1\n"                                                                                  \
    "title:   'It''s a \"stand\": mine'   # mine\n"                                                \
    "\n"                                                                                           \
    "sticks:\n"                                                                                    \
    "  # two kinds\n"                                                                              \
    "  post: {size: 2x2, species: hem-fir, grade: ungraded}\n"                                     \
    "  rail: {size: 1x2, species: hem-fir, grade: ungraded}\n"                                     \
    "\n"                                                                                           \
    "# What follows is made.\n"

Test(shape, the_rest_of_the_file_stays_as_it_is) {
    SAME_TEXT(expanded(ABOVE "shape:\n"
                             "  kind: stand     # open\n"
                             "  wide: 3 ft\n"
                             "  deep: 20\n"
                             "  high: 30\n"
                             "  feet: {on: deck, hold-down: 10 lb}\n"
                             "\n"
                             "# Where it stands.\n"
                             "site: {place: indoors}\n"
                             "leave-out: [right-1]\n"
                             "members:\n"
                             "  right-1: {from: fr1, to: br1,\n"
                             "            stick: post}\n"),
              ABOVE "joints:\n"
                    "  fl0: [0.75, 0.75, 0]\n"
                    "  fr0: [35.25, 0.75, 0]\n"
                    "  bl0: [0.75, 19.25, 0]\n"
                    "  br0: [35.25, 19.25, 0]\n"
                    "  fl1: [0.75, 0.75, 29.25]\n"
                    "  fr1: [35.25, 0.75, 29.25]\n"
                    "  bl1: [0.75, 19.25, 29.25]\n"
                    "  br1: [35.25, 19.25, 29.25]\n"
                    "members:\n"
                    "  post-fl: {from: fl0, to: fl1, stick: post}\n"
                    "  post-fr: {from: fr0, to: fr1, stick: post}\n"
                    "  post-bl: {from: bl0, to: bl1, stick: post}\n"
                    "  post-br: {from: br0, to: br1, stick: post}\n"
                    "  front-1: {from: fl1, to: fr1, stick: rail}\n"
                    "  back-1: {from: bl1, to: br1, stick: rail}\n"
                    "  left-1: {from: fl1, to: bl1, stick: rail}\n"
                    "  right-1: {from: fr1, to: br1, stick: post}\n"
                    "supports:\n"
                    "  fl0: {foot: {on: deck, hold-down: 10 lb}}\n"
                    "  fr0: {foot: {on: deck, hold-down: 10 lb}}\n"
                    "  bl0: {foot: {on: deck, hold-down: 10 lb}}\n"
                    "  br0: {foot: {on: deck, hold-down: 10 lb}}\n"
                    "\n"
                    "# Where it stands.\n"
                    "site: {place: indoors}\n");
}

Test(shape, plain_decimals_in_the_file_s_own_unit) {
    const char *full = expanded("batten: 1\n"
                                "units: si\n"
                                "sticks: {post: {size: 2x2, species: hem-fir, grade: ungraded}}\n"
                                "shape: {kind: stand, rails: post, wide: 1000, deep: 600, "
                                "high: 2 ft, middle-posts: 2}\n");
    /* 1000 - 2 x 19.05 in thirds: 320.6333... + 19.05 */
    cr_assert(strstr(full, "  f1-0: [339.6833333333, 19.05, 0]\n"), "%s", full);
    cr_assert(strstr(full, "  b2-1: [660.3166666667, 580.95, 590.55]\n"), "%s", full);
}

/* A file on few lines, and one with other ends of lines: written anew, or line by line. */
Test(shape, files_laid_out_in_other_ways) {
    const char *flow =
        "{batten: 1, title: \"a: \\\"b\\\" \\\\ \\u00e9\", sticks: {post: {size: 2x2, "
        "species: hem-fir, grade: ungraded, slope-of-grain: 1:12}},\n"
        "prices: {post: 3.20 per 8 ft}, keep-open: [front],\n"
        "shape: {kind: stand, rails: post, wide: 36, deep: 20, high: 30}}\n";
    const char *full = expanded(flow);
    SAME_TEXT(frame_of_text(arena, full)->title, frame_of_text(arena, flow)->title);
    same_frame(frame_of_text(arena, flow), frame_of_text(arena, full), full);
    cr_assert(strstr(full, "keep-open:\n  - front\n"), "%s", full);
    const char *column_one = "{\nbatten: 1,\n\"sticks\": {post: {size: 2x2, species: hem-fir, "
                             "grade: ungraded}},\nshape: {kind: stand, rails: post, wide: 36, "
                             "deep: 20, high: 30}\n}\n";
    same_frame(frame_of_text(arena, column_one), frame_of_text(arena, expanded(column_one)), "");
    const char *carriage = "batten: 1\r\nsticks: {post: {size: 2x2, species: hem-fir, grade: "
                           "ungraded}}\r\nshape: {kind: stand, rails: post, wide: 36, deep: 20, "
                           "high: 30}\r\n\r\nsite: {place: shed}";
    full = expanded(carriage);
    cr_assert(strncmp(full, "batten: 1\r\nsticks", 17) == 0);
    cr_assert(strstr(full, "\r\nsite: {place: shed}\n"), "%s", full);
}

Test(shape, a_file_without_a_shape_stays_as_it_is) {
    const char *text = text_of_file(arena, "examples/truss.yaml");
    SAME_TEXT(expanded(text), text);
}

Test(shape, the_starters_are_there) {
    static const char *const kinds[] = {"stand", "lean-to", "gable", "bench", "cold-frame"};
    for (int k = 0; k < 5; k++)
        for (enum unit_system units = UNITS_US; units <= UNITS_SI; units++) {
            const struct starter *starter = starter_find(kinds[k], units);
            cr_assert_not_null(starter, "%s", kinds[k]);
            cr_assert(frame_of_text(arena, starter->text)->units == units);
            same_checks(starter->text);
        }
    cr_assert_null(starter_find("house", UNITS_US));
}
