/* From pieces to a model: axes, hosts, hinges, fastenings, joints on sticks. */
#include "judge/judge.h"
#include "model/axes.h"
#include "model/fastening.h"
#include "model/hosts.h"
#include "model/model.h"
#include "near.h"
#include "second_frame.h"

#include <math.h>

#define WOOD "sticks: {a: {size: [45, 70], material: {E: 9 GPa, density: 420}}}\n"
#define HEAD "batten: 1\nunits: si\nself-weight: no\nsite: {place: indoors}\n"

static const struct model *model_of(struct arena *arena, const char *text) {
    struct problems problems = problems_new(arena);
    const struct model *model = model_build(arena, frame_of_text(arena, text), &problems);
    cr_assert(model != NULL && problems.count == 0, "no model");
    return model;
}

/* ---- axes ---- */

Test(model, axes_of_level_sloped_and_upright_sticks) {
    static const struct {
        double to[3], turn, want[3][3];
    } rows[] = {
        {{2, 0, 0}, 0, {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}},
        {{-2, 0, 0}, 0, {{-1, 0, 0}, {0, -1, 0}, {0, 0, 1}}},
        {{0, 3, 0}, 0, {{0, 1, 0}, {-1, 0, 0}, {0, 0, 1}}},
        {{0, 0, 1}, 0, {{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}},
        {{0, 0, -1}, 0, {{0, 0, -1}, {-1, 0, 0}, {0, 1, 0}}},
        {{3, 0, 4}, 0, {{0.6, 0, 0.8}, {0, 1, 0}, {-0.8, 0, 0.6}}},
        /* a turn of 90 degrees takes y to where z was */
        {{2, 0, 0}, 1.5707963267948966, {{1, 0, 0}, {0, 0, 1}, {0, -1, 0}}},
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        double axes[3][3];
        axes_local((const double[3]){0, 0, 0}, rows[k].to, rows[k].turn, axes);
        for (int i = 0; i < 9; i++)
            NEAR_ABS(axes[i / 3][i % 3], rows[k].want[i / 3][i % 3], 1e-15);
    }
}

Test(model, upright_means_a_run_under_a_millionth) {
    cr_assert(axes_vertical((const double[3]){0, 0, 0}, (const double[3]){0.9e-6, 0, 1}), "under");
    cr_assert(!axes_vertical((const double[3]){0, 0, 0}, (const double[3]){1.1e-6, 0, 1}), "over");
}

Test(model, sizes_along_the_axes) {
    double y, z;
    axes_sizes(false, (struct attitude){0}, 1.0, 2.0, &y, &z);
    cr_assert(y == 1.0 && z == 2.0, "on edge where nothing is said");
    axes_sizes(false, (struct attitude){.stands = STANDS_FLAT}, 1.0, 2.0, &y, &z);
    cr_assert(y == 2.0 && z == 1.0, "flat");
    axes_sizes(true, (struct attitude){0}, 1.0, 2.0, &y, &z);
    cr_assert(y == 2.0 && z == 1.0, "upright, facing front: larger side along x, which is y");
    axes_sizes(true, (struct attitude){.faces = FACES_SIDE}, 1.0, 2.0, &y, &z);
    cr_assert(y == 1.0 && z == 2.0, "upright, facing the side");
}

/* ---- hosts and hinges ---- */

#define CROSS                                                                                      \
    "members:\n"                                                                                   \
    "  ends: {from: m, to: e, stick: a, ends: rigid}\n"                                            \
    "  through-1: {from: a, to: b, stick: a}\n"                                                    \
    "  through-2: {from: c, to: d, stick: a}\n"                                                    \
    "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n"

Test(model, the_first_that_runs_through_is_host) {
    struct arena *arena = arena_new();
    const struct model *model = model_of(
        arena, HEAD WOOD "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [500, -500, 0], d: [500, 500, "
                         "0], m: [500, 0, 0], e: [500, 0, 900]}\n" CROSS);
    cr_assert(model->host[4] == 1, "host is %d", model->host[4]);
    cr_assert(model->segment_count == 5, "%zu segments", model->segment_count);
    /* the other one keeps its own turning: six joints with two slots, one slot more */
    cr_assert(model->slot_count == 13, "%zu slots", model->slot_count);
    cr_assert(model->slots[12].joint == 4 && model->slots[12].member == 2 &&
                  model->slots[12].turning,
              "own turning of the second");
    arena_free(arena);
}

Test(model, the_named_stick_is_host) {
    struct arena *arena = arena_new();
    const struct model *model =
        model_of(arena, HEAD WOOD "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [500, -500, 0], d: "
                                  "[500, 500, 0], m: {at: [500, 0, 0], host: ends}, e: [500, 0, "
                                  "900]}\n" CROSS);
    cr_assert(model->host[4] == 0, "host is %d", model->host[4]);
    cr_assert(model->slot_count == 14, "%zu slots: both run through as guests", model->slot_count);
    arena_free(arena);
}

#define TEE(ends, supports, loads)                                                                 \
    HEAD WOOD "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [500, 0, 800]}\n"                        \
              "members: {m: {from: a, to: c, stick: a, ends: " ends                                \
              "}, n: {from: b, to: c, stick: a, ends: " ends "}}\nsupports: " supports "\n" loads

Test(model, plain_hinges) {
    static const struct {
        const char *text;
        bool hinge;
    } rows[] = {
        {TEE("pinned", "{a: pinned, b: pinned}", ""), true},
        {TEE("rigid", "{a: pinned, b: pinned}", ""), false},
        {TEE("pinned", "{a: pinned, b: pinned, c: [ry]}", ""), false},
        {TEE("pinned", "{a: pinned, b: pinned, c: [y]}", ""), true},
        {TEE("pinned", "{a: pinned, b: pinned}",
             "loads: [{case: tray, joint: c, moment: [0, 5, 0]}]\n"),
         false},
        {TEE("pinned", "{a: pinned, b: pinned}",
             "loads: [{case: tray, joint: c, force: [0, 5, 0], moment: [0, 0, 0]}]\n"),
         true},
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        struct arena *arena = arena_new();
        const struct model *model = model_of(arena, rows[k].text);
        cr_assert((model->turn_slot[2] < 0) == rows[k].hinge, "row %zu", k);
        cr_assert(model->turn_slot[0] >= 0, "row %zu: one stick alone makes no hinge", k);
        arena_free(arena);
    }
}

/* ---- joints beside an axis ---- */

/* Within 1 mm is on it: the frame is judged, and moves as if the joint were exactly there. */
Test(model, a_joint_just_beside_an_axis_is_on_it) {
    double sag[2];
    for (int k = 0; k < 2; k++) {
        struct arena *arena = arena_new();
        struct frame *frame = frame_of_text(
            arena, arena_print(arena,
                               HEAD WOOD "connections: {default: rigid}\n"
                                         "joints: {p: [0, 0, 0], q: [1000, 0, 0], m: [500, %s, 0], "
                                         "t: [500, %s, 800]}\n"
                                         "members: {rail: {from: p, to: q, stick: a}, post: {from: "
                                         "m, to: t, stick: a}}\n"
                                         "supports: {p: fixed, q: fixed}\n"
                                         "loads: [{case: tray, joint: t, force: [10, 20, -300]}]\n",
                               k ? "0.4" : "0", k ? "0.4" : "0"));
        struct result result;
        struct judge_options options = {0};
        judge_frame(arena, frame, &options, &result);
        cr_assert(result.verdict != VERDICT_FAILED, "%s", result.trouble ? result.trouble : "");
        cr_assert(result.cases.count > 0, "no cases");
        sag[k] = NAN;
        for (size_t c = 0; c < result.cases.count; c++)
            if (strcmp(result.cases.items[c].name, "tray") == 0)
                sag[k] = result.cases.items[c].joints[2][2];
        arena_free(arena);
    }
    NEAR_REL(sag[1], sag[0], 0.01);
}

/* ---- fastenings ---- */

#define LAP_HEAD                                                                                   \
    HEAD "sticks: {post: {size: 1x2, species: spruce-pine-fir, grade: ungraded}, rail: {size: "    \
         "1x2, species: spruce-pine-fir, grade: ungraded, stands: on-edge}}\n"                     \
         "joints: {a: [0, 0, 0], b: [0, 0, 1000], c: [0, 0, 500], d: [800, 0, 500]}\n"             \
         "members: {p: {from: a, to: b, stick: post}, r: {from: c, to: d, stick: rail, ends: "     \
         "[j, rigid]}}\nsupports: {a: fixed, d: fixed}\n"

static const double *springs_of(struct arena *arena, const char *text, int which) {
    return model_of(arena, text)->members[1].ends[0].springs[which].k;
}

/* SPF 0.42: rho 12 = 470.4/1.04536 = 449.99 kg/m3; No.8 d = 0.164 in = 4.1656 mm;
 * Kser = 449.99^1.5 x 4.1656/23 = 1728.8 N/mm. 1x2 on 1x2, both 38.1 mm wide in the lap:
 * 38.1 - 20.828 = 17.272 mm, the line is 24.426 mm, r^2 twice (12.213 mm)^2 = 298.32 mm2. */
#define KSER 1728.8e3

Test(model, a_lap_of_two_screws) {
    struct arena *arena = arena_new();
    const char *text =
        LAP_HEAD "connections: {j: {type: screwed-lap, screw: 8, length: 1-1/4 in, count: 2}}\n";
    static const double range[3] = {0.5, 1.0, 2.0};
    for (int s = 0; s < 3; s++) {
        const double *k = springs_of(arena, text, s);
        NEAR_REL(k[0], 2.0 * KSER * range[s], 1e-4);
        cr_assert(isinf(k[1]), "along the screws, which is y: rigid");
        NEAR_REL(k[2], 2.0 * KSER * range[s], 1e-4);
        cr_assert(isinf(k[3]), "torsion: rigid");
        NEAR_REL(k[4], KSER * 298.32e-6 * range[s], 1e-4);
        cr_assert(k[5] == 0.0, "the other turn: free");
    }
    arena_free(arena);
}

Test(model, three_screws_spacing_and_wet) {
    struct arena *arena = arena_new();
    /* three: the outer two r = 12.213 mm as before, one in the middle */
    const double *k = springs_of(
        arena,
        LAP_HEAD "connections: {j: {type: screwed-lap, screw: 8, length: 1-1/4 in, count: 3}}\n",
        1);
    NEAR_REL(k[0], 3.0 * KSER, 1e-4);
    NEAR_REL(k[4], KSER * 298.32e-6, 1e-4);
    /* 10 mm apart: three on 20 mm, 2 x 10^2 mm2 */
    k = springs_of(arena,
                   LAP_HEAD "connections: {j: {type: screwed-lap, screw: 8, length: 1-1/4 in, "
                            "count: 3, spacing: 10 mm}}\n",
                   1);
    NEAR_REL(k[4], KSER * 200e-6, 1e-4);
    /* 20 mm apart does not fit */
    const struct model *model =
        model_of(arena, LAP_HEAD "connections: {j: {type: screwed-lap, screw: 8, length: 1-1/4 in, "
                                 "count: 3, spacing: 20 mm}}\n");
    NEAR_REL(model->members[1].ends[0].springs[1].k[4], KSER * 298.32e-6, 1e-4);
    cr_assert(model->cautions.count >= 1, "said that the spacing is cut");
    arena_free(arena);
}

Test(model, a_single_screw_turns_with_friction) {
    struct arena *arena = arena_new();
    const char *text =
        LAP_HEAD "connections: {j: {type: screwed-lap, screw: 8, length: 1-1/4 in, count: 1}}\n";
    static const double range[3] = {1.0 / 3.0, 1.0, 3.0};
    for (int s = 0; s < 3; s++)
        NEAR_REL(springs_of(arena, text, s)[4], 100.0 * (38.1 / 38.0) * (38.1 / 38.0) * range[s],
                 1e-12);
    NEAR_REL(springs_of(arena, text, 1)[0], KSER, 1e-4);
    arena_free(arena);
}

Test(model, a_butt_turns_by_whole_pairs) {
    static const struct {
        const char *count;
        double each;
    } rows[] = {{"1", 100.0}, {"2", 300.0}, {"3", 300.0}, {"4", 600.0}};
    for (int r = 0; r < 4; r++) {
        struct arena *arena = arena_new();
        const char *text = arena_print(arena,
                                       LAP_HEAD "connections: {j: {type: screwed-butt, screw: 8, "
                                                "length: 2-1/2 in, count: %s}}\n",
                                       rows[r].count);
        static const double range[3] = {1.0 / 3.0, 1.0, 3.0};
        for (int s = 0; s < 3; s++) {
            const double *k = springs_of(arena, text, s);
            for (int c = 0; c < 4; c++)
                cr_assert(isinf(k[c]), "translations and torsion are rigid");
            /* on edge: 38.1 mm high (about y), 19.05 mm thick (about z) */
            NEAR_REL(k[4], rows[r].each * pow(38.1 / 38.0, 2.0) * range[s], 1e-12);
            NEAR_REL(k[5], rows[r].each * pow(19.05 / 38.0, 2.0) * range[s], 1e-12);
        }
        arena_free(arena);
    }
}

Test(model, wet_screws_slip_more) {
    struct arena *arena = arena_new();
    static const char text[] =
        "batten: 1\nunits: si\nself-weight: no\n"
        "sticks: {s: {size: [45, 45], material: {E: 9 GPa, density: 420}}}\n"
        "joints: {a: [0, 0, 0], b: [0, 0, 1000], c: [0, 0, 500], d: [800, 0, 500]}\n"
        "members: {p: {from: a, to: b, stick: s}, r: {from: c, to: d, stick: s, ends: [j, "
        "rigid]}}\n"
        "connections: {j: {type: screwed-lap, screw: 8, length: 2 in, count: 2}}\n"
        "supports: {a: fixed, d: fixed}\n";
    /* 420^1.5 x 4.1656/23 x 2/3 = 1039.2 N/mm */
    NEAR_REL(springs_of(arena, text, 1)[0], 2.0 * 1039.2e3, 1e-4);
    arena_free(arena);
}
