/* Joints through whole runs: what `check` finds of frames whose joints are plain statics. */
#include "judged.h"
#include "redo.h"

#include <gsl/gsl_rng.h>

TestSuite(joint_frames, .init = set_up, .fini = tear_down);

static const double INCH = 0.0254, POUND = 4.4482216152605, PSI = 6894.757293168361;

/* A rail on two posts that cannot move where it meets them: each end carries half. */
struct two_posts {
    const char *post, *rail, *connection, *duration;
    double load; /* lb, at the middle */
    bool wet;
};

static struct result on_two_posts(struct two_posts how) {
    return judged_text(arena_print(
        arena,
        "batten: 1\nself-weight: no\nsite: {place: indoors, wet-service: %s}\n"
        "sticks:\n  post: %s\n  rail: %s\n"
        "joints: {p0: [0, 0, 0], c: [0, 0, 24], p1: [0, 0, 48], q0: [36, 0, 0], d: [36, 0, 24], "
        "q1: "
        "[36, 0, 48]}\n"
        "members: {post-l: {from: p0, to: p1, stick: post}, post-r: {from: q0, to: q1, stick: "
        "post}, rail: {from: c, to: d, stick: rail}}\n"
        "connections: {default: %s}\n"
        "supports: {p0: fixed, p1: fixed, q0: fixed, q1: fixed, c: fixed, d: fixed}\n"
        "loads: [{case: middle, member: rail, point: [0, 0, -%.6f lb], at: 18 in}]\n"
        "combine: {standing: {middle: 1, duration: %s}}\n",
        how.wet ? "yes" : "no", how.post, how.rail, how.connection, how.load,
        how.duration ? how.duration : "ten-years"));
}

#define POST_2X4 "{size: 2x4, species: spruce-pine-fir, grade: no-2, faces: front}"
#define RAIL_2X4 "{size: 2x4, species: spruce-pine-fir, grade: no-2}"

static struct two_posts all_2x4(const char *connection, double load) {
    return (struct two_posts){
        .post = POST_2X4, .rail = RAIL_2X4, .connection = connection, .load = load};
}

/* 30 lb on an arm of half of 3/4 and 1-1/2 in, 1.125 in: 33.75 lb-in bends the post flat, 3-1/2 x
 * 1-1/2^2 / 6 = 1.3125 in3: 25.71 psi. Nothing else bends it. */
Test(joint_frames, a_lap_bends_its_host) {
    struct result result =
        on_two_posts((struct two_posts){.post = POST_2X4,
                                        .rail = "{size: 1x2, species: spruce-pine-fir, grade: "
                                                "ungraded}",
                                        .connection = "{type: screwed-lap, screw: 8, length: 2 in, "
                                                      "count: 1}",
                                        .load = 60.0});
    const struct check *check = check_of(&result, "bend/post-l");
    NEAR_REL(check->demand, 33.75 / 1.3125 * PSI, 1e-6);
    SAME_TEXT(check->governs, "bending flatwise");
    /* a butt of the same stick pushes along the axis */
    result = on_two_posts((struct two_posts){.post = POST_2X4,
                                             .rail = "{size: 1x2, species: spruce-pine-fir, grade: "
                                                     "ungraded}",
                                             .connection = "{type: screwed-butt, screw: 8, length: "
                                                           "2 in, count: 1}",
                                             .load = 60.0});
    cr_assert(fabs(check_of(&result, "bend/post-l")->ratio) < 1e-6, "a butt bends nothing");
}

/* 2x4 on 2x4, two No.10 (D 0.190): each diagonal leaves 3.5 - 0.95 = 2.55 in both ways, the outer
 * screws reach 1.275 in from the middle: de = 1.75 + 1.275 = 3.025 in of 3.5. The rail ends 1.75 in
 * past them, under 5 x 3.5 in: 2/3 x 135 x 1.5 x 3.025 x (3.025 / 3.5)^2 = 305.05 lb. */
Test(joint_frames, a_rail_hangs_on_its_screws) {
    struct two_posts how =
        all_2x4("{type: screwed-lap, screw: 10, length: 2-1/2 in, count: 2}", 200.0);
    struct result result = on_two_posts(how);
    const struct check *check = check_of(&result, "hang/c/rail");
    NEAR_REL(check->demand, 100.0 * POUND, 1e-6);
    NEAR_REL(check->limit, 305.05 * POUND, 1e-4);
    cr_assert(redo_all(check->working) >= 1, "working");
    /* ten minutes: x 1.6; wet: CM 0.97 of shear */
    how.duration = "ten-minutes";
    result = on_two_posts(how);
    NEAR_REL(check_of(&result, "hang/c/rail")->limit, 305.05 * 1.6 * POUND, 1e-4);
    how.wet = true;
    result = on_two_posts(how);
    NEAR_REL(check_of(&result, "hang/c/rail")->limit, 305.05 * 1.6 * 0.97 * POUND, 1e-4);
    /* a single screw in the middle: de = 1.75: 2/3 x 135 x 1.5 x 1.75 / 4 = 59.06 lb */
    how = all_2x4("{type: screwed-lap, screw: 10, length: 2-1/2 in, "
                  "count: 1}",
                  200.0);
    result = on_two_posts(how);
    NEAR_REL(check_of(&result, "hang/c/rail")->limit, 59.0625 * POUND, 1e-6);
    /* the post carries nothing across its grain, and runs on for more than 5 depths */
    cr_assert(!check_if_any(&result, "hang/c/post-l/rail"), "the post runs on");
}

/* Each type: 100 lb down at each end, which three No.8 share. */
Test(joint_frames, shear_of_each_type) {
    static const struct {
        const char *connection;
        double each; /* lb on the worst */
    } rows[] = {
        {"{type: cleat, screw: 8, length: 2-1/2 in, count: 3}", 100.0 / 3.0},
        {"{type: hinge, screw: 8, length: 1-1/4 in, count: 4}", 25.0},
        {"{type: screwed-butt, screw: 8, length: 5-1/2 in, count: 4}", 25.0},
        {"{type: screwed-lap, lag: 1/4 in, length: 3 in, count: 1}", 100.0},
        {"{type: screwed-lap, nail: 16d, count: 1}", 100.0},
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        struct result result = on_two_posts(all_2x4(rows[k].connection, 200.0));
        const struct check *check = check_of(&result, "screw/c/rail");
        cr_assert(is_near(check->demand, rows[k].each * POUND, 1e-6, 0.0), "%s: %g lb, want %g",
                  rows[k].connection, check->demand / POUND, rows[k].each);
        cr_assert(check->working && redo_all(check->working) > 5, "%s: working",
                  rows[k].connection);
    }
}

/* How the worst screw of a group gets its load is in the working, and can be redone. */
Test(joint_frames, the_share_of_the_worst_screw_is_shown) {
    static const char *const connections[] = {
        "{type: screwed-lap, screw: 8, length: 2-1/2 in, count: 3}",
        "{type: screwed-lap, bolt: 3/8 in, count: 2}",
        "{type: gusset, sheet: plywood-1/2in, screw: 8, length: 1-1/2 in, count: 3}"};
    for (size_t k = 0; k < sizeof connections / sizeof *connections; k++) {
        struct result result = on_two_posts(all_2x4(connections[k], 200.0));
        const struct check *check = check_of(&result, "screw/c/rail");
        cr_assert(redo_all(check->working) > 10, "%s", connections[k]);
        NEAR_REL(noted(check->working, "Fy"), 100.0, 1e-6);
        NEAR_REL(noted(check->working, "Vs"), check->demand / POUND, 1e-9);
        cr_assert(noted(check->working, "Vs") > 100.0 / noted(check->working, "n"), "a moment too");
    }
}

/* A screw that does not reach the wood behind at all has no yield limit value to tell (it was told
 * as "? lb"). */
Test(joint_frames, nothing_to_tell_where_nothing_is_reached) {
    struct result result =
        on_two_posts(all_2x4("{type: screwed-butt, screw: 8, length: 3 in, count: 2}", 20.0));
    const struct check *check = check_of(&result, "screw/c/rail");
    cr_assert(check->verdict == VERDICT_NOT_COVERED && !*check->beside.words);
    result = on_two_posts(all_2x4("{type: screwed-lap, screw: 8, length: 2 in, count: 2}", 20.0));
    check = check_of(&result, "screw/c/rail");
    cr_assert(check->verdict == VERDICT_NOT_COVERED && *check->beside.words,
              "half an inch is told");
    cr_assert(check->beside.value > 0.0);
}

/* A block 3/4 in thick under a 1-1/2 in rail: 100 lb on 1.125 in2 = 88.9 psi. A notch 1/2 in deep
 * in a post 3-1/2 in wide: 100 / 1.75 = 57.1 psi, and its screws have nothing to carry down. */
Test(joint_frames, seats_of_cleats_and_notches) {
    struct two_posts how = all_2x4("{type: cleat, screw: 8, length: 2-1/2 in, count: 3}", 200.0);
    struct result result = on_two_posts(how);
    NEAR_REL(check_of(&result, "bearing/c/rail")->demand, 100.0 / 1.125 * PSI, 1e-6);
    how.connection = "{type: notched, depth: 1/2 in, screw: 8, length: 2-1/2 in, count: 2}";
    result = on_two_posts(how);
    NEAR_REL(check_of(&result, "bearing/c/rail")->demand, 100.0 / 1.75 * PSI, 1e-6);
    cr_assert(check_of(&result, "screw/c/rail")->demand < 1.0 * POUND, "nothing on the screws");
}

/* Glue, 3-1/2 x 3-1/2 in: the moment of the lap is the rail's clamping, found by the frame; the
 * force alone is 100 / 12.25 = 8.16 psi. Dry it is judged, wet it is not. */
Test(joint_frames, glue_dry_and_wet) {
    struct two_posts how = all_2x4("{type: glued-lap}", 200.0);
    struct result result = on_two_posts(how);
    const struct check *check = check_of(&result, "screw/c/rail");
    cr_assert(check->verdict != VERDICT_NOT_COVERED, "dry");
    cr_assert(check->demand >= 100.0 / 12.25 * PSI, "at least the force alone");
    NEAR_REL(check->limit, 0.3e6, 1e-12);
    cr_assert(redo_all(check->working) >= 4, "working");
    how.wet = true;
    result = on_two_posts(how);
    cr_assert(check_of(&result, "screw/c/rail")->verdict == VERDICT_NOT_COVERED, "wet");
}

/* A post 40 in high, pushed by 10 lb at its top, to the back: 200 lb-in at a notch 20 in up. 1/2 in
 * of its 1-1/2 in is cut away for a rail let into its front: 3-1/2 x 1^2 / 6 = 0.5833 in3, 342.9
 * psi; the whole post there has 1.3125 in3 (and 400 lb-in at its foot: 304.8 psi). */
Test(joint_frames, a_notch_weakens_its_post) {
    struct result result = judged_text(
        "batten: 1\nself-weight: no\nsite: {place: indoors}\n"
        "sticks: {s: {size: 2x4, species: spruce-pine-fir, grade: no-2, faces: front}}\n"
        "joints: {a: [0, 0, 0], b: [0, 0, 40], c: [0, 0, 20], d: [20, 0, 20]}\n"
        "members: {post: {from: a, to: b, stick: s}, rail: {from: c, to: d, stick: s}}\n"
        "connections: {default: {type: notched, depth: 1/2 in, screw: 8, length: 2-1/2 in, count: "
        "2}}\nsupports: {a: fixed}\n"
        "loads: [{case: wind, joint: b, force: [0, 10 lb, 0]}]\ncombine: {all: {wind: 1}}\n");
    NEAR_REL(check_of(&result, "bend/post/c")->demand, 200.0 / (3.5 / 6.0) * PSI, 1e-5);
    NEAR_REL(check_of(&result, "bend/post")->demand, 400.0 / 1.3125 * PSI, 1e-5);
}

/* A bolted rail pushed to the back by 40 lb at its middle: 20 lb along each bolt, on 0.540 in2
 * under its washers. */
Test(joint_frames, a_pull_on_a_bolt_presses_its_washers) {
    static const char text[] =
        "batten: 1\nself-weight: no\nsite: {place: indoors}\n"
        "sticks: {s: {size: 2x4, species: spruce-pine-fir, grade: no-2}}\n"
        "joints: {c: [0, 0, 24], p: [0, 0, 0], d: [36, 0, 24], q: [36, 0, 0]}\n"
        "members: {l: {from: p, to: c, stick: s}, r: {from: q, to: d, stick: s}, rail: {from: c, "
        "to: d, stick: s}}\n"
        "connections: {default: {type: screwed-lap, bolt: 3/8 in, count: 1}}\n"
        "supports: {p: fixed, q: fixed, c: fixed, d: fixed}\n"
        "loads: [{case: back, member: rail, point: [0, 40 lb, 0], at: 18 in}]\n"
        "combine: {all: {back: 1}}\n";
    struct result result = judged_text(text);
    const struct check *check = check_of(&result, "screw/c/rail");
    NEAR_REL(check->demand, 20.0 / 0.53996 * PSI, 1e-4);
    NEAR_REL(check->limit, 425.0 * PSI, 1e-6);
    cr_assert(redo_all(check->working) > 10, "working");
    cr_assert(cautioned(&result, "washers under head and nut, at least 2.5 times as wide"));
}

/* ---- what has no value, and what to do ---- */

Test(joint_frames, what_has_no_value) {
    static const struct {
        const char *connection, *missing, *advice;
    } rows[] = {
        {"{type: screwed-lap, screw: 8, count: 2}", "how long its screws are is not said",
         "say how long they are"},
        {"{type: screwed-butt, bolt: 3/8 in, count: 1}", "a bolt into end grain", "lap the sticks"},
        {"{type: screwed-lap, screw: 8, length: 2 in, count: 2}", "it does not reach deep enough",
         "use screws that go at least"},
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        struct result result = on_two_posts(all_2x4(rows[k].connection, 200.0));
        const struct check *check = check_of(&result, "screw/c/rail");
        cr_assert(check->verdict == VERDICT_NOT_COVERED && isnan(check->ratio), "%s",
                  rows[k].connection);
        cr_assert(strstr(check->governs, rows[k].missing), "%s: %s", rows[k].connection,
                  check->governs);
        cr_assert(strstr(check->advice, rows[k].advice), "%s: %s", rows[k].connection,
                  check->advice);
    }
}

Test(joint_frames, own_material_has_one_line) {
    static const char *const connections[] = {
        "{type: screwed-lap, screw: 8, length: 2-1/2 in, count: 2}", "{type: glued-lap}"};
    for (int k = 0; k < 2; k++) {
        struct result result = on_two_posts((struct two_posts){
            .post = "{size: [1.5, 3.5], material: {E: 1.3e6 psi, density: 28 pcf}}",
            .rail = RAIL_2X4,
            .connection = connections[k],
            .load = 200.0});
        cr_assert(check_of(&result, "screw/own-material")->verdict == VERDICT_NOT_COVERED);
        cr_assert(!check_if_any(&result, "screw/c/rail") && !check_if_any(&result, "screw/d/rail"),
                  "one line for all");
    }
}

/* Two rails end to end between posts: nothing says how far they lie on each other. */
Test(joint_frames, sticks_that_run_the_same_way) {
    static const char *const types[] = {"{type: screwed-lap, screw: 8, length: 2-1/2 in, count: 2}",
                                        "{type: glued-lap}"};
    for (int k = 0; k < 2; k++) {
        struct result result = judged_text(arena_print(
            arena,
            "batten: 1\nself-weight: no\nsite: {place: indoors}\nsticks: {s: %s}\n"
            "joints: {a: [0, 0, 0], b: [24, 0, 0], c: [48, 0, 0]}\n"
            "members: {left: {from: a, to: b, stick: s}, right: {from: b, to: c, stick: s}}\n"
            "connections: {default: %s}\nsupports: {a: fixed, b: fixed, c: fixed}\n"
            "loads: [{case: down, member: right, line: [0, 0, -5 plf]}]\n"
            "combine: {all: {down: 1}}\n",
            RAIL_2X4, types[k]));
        const struct check *check = check_of(&result, "screw/b/right");
        cr_assert(check->verdict == VERDICT_NOT_COVERED, "%s", types[k]);
        cr_assert(strstr(check->advice, "gusset"), "%s", check->advice);
    }
    struct result result = judged_text(arena_print(
        arena,
        "batten: 1\nself-weight: no\nsite: {place: indoors}\nsticks: {s: %s}\n"
        "joints: {a: [0, 0, 0], b: [24, 0, 0], c: [48, 0, 0]}\n"
        "members: {left: {from: a, to: b, stick: s}, right: {from: b, to: c, stick: s}}\n"
        "connections: {default: {type: gusset, sheet: plywood-1/2in, plates: 2, screw: 8, length: "
        "1-1/2 in, count: 3}}\nsupports: {a: fixed, b: fixed, c: fixed}\n"
        "loads: [{case: down, member: right, line: [0, 0, -5 plf]}]\ncombine: {all: {down: 1}}\n",
        RAIL_2X4));
    cr_assert(check_of(&result, "screw/b/right")->verdict != VERDICT_NOT_COVERED, "a gusset");
}

/* ---- cautions of the workshop ---- */

Test(joint_frames, a_point_that_comes_out_is_a_caution) {
    struct two_posts how =
        all_2x4("{type: screwed-lap, screw: 8, length: 3-1/2 in, count: 2}", 20.0);
    struct result result = on_two_posts(how);
    cr_assert(cautioned(&result, "come out the other side by up to 1/2 in: rail on post-l at c and "
                                 "1 more"),
              "said, with its place");
    cr_assert(result.problems.count == 0, "no error");
    how.connection = "{type: screwed-lap, screw: 8, length: 3 in, count: 2}";
    result = on_two_posts(how);
    cr_assert(!cautioned(&result, "come out"), "just as long as both are thick");
    how.connection = "{type: screwed-lap, bolt: 3/8 in, length: 4 in, count: 1}";
    result = on_two_posts(how);
    cr_assert(!cautioned(&result, "come out"), "a bolt must");
}

/* No.8 that is not predrilled: 15 D = 2.46 in to the end; the rail ends 1.75 in past the middle. A
 * 3/8 in bolt: 7 D = 2-5/8 in. 2.5 D = 0.41 in to the edge: a stick 3/4 in wide has 3/8. */
Test(joint_frames, too_near_to_an_end_or_an_edge) {
    struct two_posts how = all_2x4("{type: screwed-lap, screw: 8, length: 3 in, count: 1}", 20.0);
    struct result result = on_two_posts(how);
    cr_assert(cautioned(&result, "nearer than 2-7/16 in to the end of a stick"), "No.8");
    cr_assert(cautioned(&result, "7/64 in for the thread and 9/64 in for the shank"), "lead holes");
    how.connection = "{type: screwed-lap, bolt: 3/8 in, count: 1}";
    result = on_two_posts(how);
    cr_assert(cautioned(&result, "nearer than 2-5/8 in to the end of a stick"), "bolt");
    how.connection = "{type: screwed-lap, screw: 8, length: 2-1/4 in, count: 1}";
    how.rail = "{size: 1x2, species: spruce-pine-fir, grade: ungraded, stands: flat}";
    result = on_two_posts(how);
    cr_assert(cautioned(&result, "2-7/16 in to the end or 7/16 in to the edge of a stick"), "edge");
}

Test(joint_frames, rust) {
    static const struct {
        const char *wood, *metal, *says;
        bool wet;
    } rows[] = {
        {"spruce-pine-fir, grade: no-2, treated: yes", "", "treated wood eats", false},
        {"spruce-pine-fir, grade: no-2, treated: yes", ", metal: plain", "treated wood eats",
         false},
        {"spruce-pine-fir, grade: no-2, treated: yes", ", metal: galvanized", "", true},
        {"western-cedars, grade: no-2", ", metal: plain", "cedar and redwood stain", true},
        {"western-cedars, grade: no-2", ", metal: stainless", "", true},
        {"spruce-pine-fir, grade: no-2", ", metal: plain", "rust and snap", true},
        {"spruce-pine-fir, grade: no-2", "", "where it is damp use", true},
        {"spruce-pine-fir, grade: no-2", ", metal: galvanized", "", true},
        {"spruce-pine-fir, grade: no-2", ", metal: plain", "", false},
    };
    static const char *const all[] = {"treated wood eats", "cedar and redwood stain",
                                      "rust and snap"};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const char *stick = arena_print(arena, "{size: 2x4, species: %s}", rows[k].wood);
        struct result result = on_two_posts((struct two_posts){
            .post = stick,
            .rail = stick,
            .connection =
                arena_print(arena, "{type: screwed-lap, screw: 8, length: 2-1/2 in, count: 2%s}",
                            rows[k].metal),
            .load = 20.0,
            .wet = rows[k].wet});
        if (*rows[k].says)
            cr_assert(cautioned(&result, rows[k].says), "row %zu", k);
        else
            for (int n = 0; n < 3; n++)
                cr_assert(!cautioned(&result, all[n]), "row %zu: %s", k, all[n]);
    }
}

/* ---- slip ---- */

/* Two rails share 100 lb of trays: 25 lb at each end on two No.8. SPF 450 kg/m3: 1728.8 N/mm each;
 * dry 25 lb / 3457.6 N/mm = 0.03216 mm, in the long run 2 x 1.5 - 1 = 2 times; wet slip x 2/3,
 * 0.04825 mm, 2 x 2 - 1 = 3 times; a short load once. */
Test(joint_frames, slip_with_its_creep_stands_beside_sag) {
    static const struct {
        const char *wet, *standing;
        double mm;
    } rows[] = {{"no", "long", 0.06432}, {"yes", "long", 0.14474}, {"no", "short", 0.0}};
    for (int k = 0; k < 3; k++) {
        struct result result = judged_text(arena_print(
            arena,
            "batten: 1\nself-weight: no\nsite: {place: indoors, wet-service: %s}\n"
            "sticks: {s: %s}\n"
            "joints: {a: [0, 0, 0], b: [36, 0, 0], c: [0, 20, 0], d: [36, 20, 0], "
            "a0: [0, 0, -20], b0: [36, 0, -20], c0: [0, 20, -20], d0: [36, 20, -20]}\n"
            "members: {pa: {from: a0, to: a, stick: s}, pb: {from: b0, to: b, stick: s}, "
            "pc: {from: c0, to: c, stick: s}, pd: {from: d0, to: d, stick: s}, "
            "front: {from: a, to: b, stick: s}, back: {from: c, to: d, stick: s}}\n"
            "connections: {default: {type: screwed-lap, screw: 8, length: 2-1/2 in, count: 2}}\n"
            "supports: {a: fixed, b: fixed, c: fixed, d: fixed, a0: fixed, b0: fixed, c0: fixed, "
            "d0: fixed}\n"
            "shelves: {top: {rails: [front, back], deck: none, trays: {weight: 100 lb}, standing: "
            "%s}}\n",
            rows[k].wet, RAIL_2X4, rows[k].standing));
        const struct check *check = check_of(&result, "sag/top/front");
        if (rows[k].mm > 0.0)
            NEAR_REL(check->beside.value, rows[k].mm / 1000.0, 1e-3);
        else
            cr_assert(!*check->beside.words, "0.03 mm is not told");
    }
}

/* ---- joint-moment: just where the frame needs it ---- */

static const char *portal(const char *size, const char *feet, const char *ends, const char *more) {
    return arena_print(
        arena,
        "batten: 1\nsite: {place: indoors}\nsticks: {s: {size: %s, species: spruce-pine-fir, "
        "grade: no-2}}\n"
        "joints: {a: [0, 0], b: [0, 40], c: [48, 0], d: [48, 40]}\n"
        "members: {left: {from: a, to: b, stick: s}, right: {from: c, to: d, stick: s}, top: "
        "{from: b, to: d, stick: s, ends: %s}%s}\n"
        "connections: {lap: {type: screwed-lap, screw: 10, length: 3 in, count: 3}, lap-2: {type: "
        "screwed-lap, screw: 10, length: 3 in, count: 3}}\n"
        "supports: {a: %s, c: %s}\n",
        size, ends, more, feet, feet);
}

static int joint_moments(const struct result *result) {
    int count = 0;
    for (size_t k = 0; k < result->checks.count; k++)
        count += strcmp(result->checks.items[k].kind, "joint-moment") == 0;
    return count;
}

Test(joint_frames, a_portal_needs_its_laps) {
    struct result result = judged_text(portal("2x4", "pinned", "lap", ""));
    cr_assert(joint_moments(&result) == 2, "%d", joint_moments(&result));
    const struct check *check = check_of(&result, "joint-moment/b/top");
    cr_assert(check->verdict != VERDICT_NOT_COVERED && redo_all(check->working) > 5, "judged");
    /* the moment allowed: what one screw holds sideways times the length of the line, three screws
     * on 2.55 in each way */
    NEAR_REL(check->limit / (noted(check->working, "Za") * POUND), hypot(2.55, 2.55) * INCH, 1e-6);
}

Test(joint_frames, a_braced_portal_does_not) {
    struct result result = judged_text(
        portal("2x4", "pinned", "lap", ", brace: {from: a, to: d, stick: s, ends: lap}"));
    cr_assert(joint_moments(&result) == 0, "%d", joint_moments(&result));
}

Test(joint_frames, posts_that_stand_by_themselves_do_not) {
    struct result result = judged_text(portal("2x4", "fixed", "lap", ""));
    cr_assert(joint_moments(&result) == 0, "%d", joint_moments(&result));
}

Test(joint_frames, hinges_fold_and_need_no_line) {
    struct result result = judged_text(portal("2x4", "pinned", "pinned", ""));
    cr_assert(result.verdict == VERDICT_FOLDS, "%d", (int)result.verdict);
    cr_assert(joint_moments(&result) == 0, "%d", joint_moments(&result));
}

/* Either end alone would do, so neither entry alone matters; without both it folds. */
Test(joint_frames, two_entries_that_only_together_matter) {
    struct result one = judged_text(portal("2x6", "pinned", "[lap, pinned]", ""));
    struct result both = judged_text(portal("2x6", "pinned", "[lap, lap-2]", ""));
    bool alone = true;
    for (size_t k = 0; k < one.checks.count; k++)
        if (strcmp(one.checks.items[k].kind, "lean") == 0 ||
            strcmp(one.checks.items[k].kind, "sway") == 0)
            alone &= one.checks.items[k].ratio <= 1.0;
    cr_assert(joint_moments(&one) == 1, "%d", joint_moments(&one));
    cr_assert(alone, "the case is made so that one end is enough");
    cr_assert(joint_moments(&both) == 2, "%d", joint_moments(&both));
}

/* ---- what must be true of every run ---- */

struct variant {
    const char *species;
    const char *screw;
    double post, rail; /* in, thickness along the screws */
    double load, length;
    int count;
};

static double uniform(gsl_rng *random, double from, double to) {
    return from + (to - from) * gsl_rng_uniform(random);
}

static struct variant random_variant(gsl_rng *random) {
    static const char *const species[] = {"spruce-pine-fir", "douglas-fir-larch", "hem-fir",
                                          "western-cedars", "southern-pine"};
    static const char *const screws[] = {"6", "8", "10", "12", "14"};
    return (struct variant){species[gsl_rng_uniform_int(random, 5)],
                            screws[gsl_rng_uniform_int(random, 5)],
                            uniform(random, 1.0, 3.5),
                            uniform(random, 0.5, 1.5),
                            uniform(random, 20.0, 400.0),
                            uniform(random, 1.5, 4.0),
                            1 + (int)gsl_rng_uniform_int(random, 4)};
}

static const char *sized(const struct variant *of, double thickness) {
    return arena_print(arena, "{size: [%.4f, 3.5], species: %s, grade: no-2}", thickness,
                       of->species);
}

/* Ratio of the worst screw; infinite where it has no value. */
static double screw_ratio(const struct variant *of, const char *type, const char *more, bool wet,
                          const char *duration) {
    struct result result = on_two_posts((struct two_posts){
        .post = sized(of, of->post),
        .rail = sized(of, of->rail),
        .connection = arena_print(arena, "{type: %s, screw: %s, length: %.4f in, count: %d%s}",
                                  type, of->screw, of->length, of->count, more),
        .load = of->load,
        .wet = wet,
        .duration = duration});
    const struct check *check = check_of(&result, "screw/c/rail");
    return check->verdict == VERDICT_NOT_COVERED ? INFINITY : check->ratio;
}

enum { ROUNDS = 60 };

Test(joint_frames, a_longer_screw_never_holds_less) {
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 20266);
    int known = 0;
    for (int k = 0; k < ROUNDS; k++) {
        struct variant variant = random_variant(random);
        double before = screw_ratio(&variant, "screwed-lap", "", false, "ten-years");
        variant.length += uniform(random, 0.05, 1.5);
        double after = screw_ratio(&variant, "screwed-lap", "", false, "ten-years");
        known += isfinite(before);
        cr_assert(after <= before * (1.0 + 1e-9), "round %d: %g, then %g", k, before, after);
    }
    gsl_rng_free(random);
    cr_assert(known > ROUNDS / 4, "%d have a value", known);
}

/* A lap of one screw carries the same force wet or dry, soon or long. */
Test(joint_frames, wet_and_long_never_hold_more) {
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 20267);
    for (int k = 0; k < ROUNDS; k++) {
        struct variant variant = random_variant(random);
        variant.count = 1;
        double dry = screw_ratio(&variant, "screwed-lap", "", false, "ten-years");
        double wet = screw_ratio(&variant, "screwed-lap", "", true, "ten-years");
        double gust = screw_ratio(&variant, "screwed-lap", "", false, "ten-minutes");
        double always = screw_ratio(&variant, "screwed-lap", "", false, "permanent");
        cr_assert(wet >= dry && gust <= dry && always >= dry, "round %d: %g %g %g %g", k, dry, wet,
                  gust, always);
        if (isfinite(dry)) {
            NEAR_REL(wet, dry / 0.7, 1e-6);
            NEAR_REL(gust, dry / 1.6, 1e-6);
            NEAR_REL(always, dry / 0.9, 1e-6);
        }
    }
    gsl_rng_free(random);
}

/* Where the joint passes no moment, n screws share alike: one more lowers the ratio from 1/n to
 * 1/(n+1); twice the load doubles it. */
Test(joint_frames, screws_of_a_cleat_share_alike) {
    gsl_rng *random = gsl_rng_alloc(gsl_rng_mt19937);
    gsl_rng_set(random, 20268);
    for (int k = 0; k < ROUNDS; k++) {
        struct variant variant = random_variant(random);
        double once = screw_ratio(&variant, "cleat", "", false, "ten-years");
        struct variant more = variant, twice = variant;
        more.count++;
        twice.load *= 2.0;
        double of_more = screw_ratio(&more, "cleat", "", false, "ten-years");
        double of_twice = screw_ratio(&twice, "cleat", "", false, "ten-years");
        cr_assert(isfinite(once) == isfinite(of_more), "more of them reach no deeper");
        if (!isfinite(once))
            continue;
        NEAR_REL(of_more, once * variant.count / more.count, 1e-6);
        NEAR_REL(of_twice, 2.0 * once, 1e-6);
    }
    gsl_rng_free(random);
}
