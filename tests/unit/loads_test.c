/* Loads on sticks, shelves and panels, shared out by hand: level arms, areas, published weights. */
#include "loaded.h"
#include "loads/panels.h"
#include "loads/push.h"
#include "loads/shelves.h"

#include <math.h>

TestSuite(loads, .init = set_up, .fini = tear_down);

static const double G = 9.80665;

/* ---- on sticks ---- */

#define BEAM(loads)                                                                                \
    LOADED "joints: {a: [0, 0, 0], b: [2000, 0, 0], m: [500, 0, 0], t: [500, 0, 800]}\n"           \
           "members: {beam: {from: a, to: b, stick: bar}, post: {from: m, to: t, stick: bar}}\n"   \
           "supports: {a: fixed, b: fixed}\nsite: {place: indoors}\nloads: [" loads "]\n"

/* A joint 0.5 m along cuts the beam: 100 N/m are 50 N and 150 N; a force lies on one part only. */
Test(loads, cut_where_a_joint_is) {
    const struct loads *loads =
        loads_of_text(BEAM("{case: line, member: beam, line: [0, 0, -100]}, "
                           "{case: point, member: beam, point: [0, 0, -70], at: 1200}, "
                           "{case: end, member: beam, point: [0, 0, -30], at: 2000}"));
    const struct load_set *line = set_of(loads, "line"), *point = set_of(loads, "point"),
                          *end = set_of(loads, "end");
    cr_assert(line->on_segments.count == 2 && point->on_segments.count == 1 &&
              end->on_segments.count == 1);
    weighs(loads, line, "beam", 200.0, 1.0);
    weighs(loads, point, "beam", 70.0, 1.2);
    weighs(loads, end, "beam", 30.0, 2.0);
    cr_assert(point->on_segments.items[0].segment == 1 && end->on_segments.items[0].segment == 1);
    NEAR_REL(line->largest, 150.0, 1e-12);
    NEAR_REL(point->largest, 70.0, 1e-12);
}

/* Loads of one stick stand in the order of their places, whatever the order in the file. */
#define LINE "{case: c, member: beam, line: [0, 0, -100]}"
#define NEAR_END "{case: c, member: beam, point: [0, 0, -7], at: 0}"
#define FARTHER "{case: c, member: beam, point: [0, 0, -8], at: 400}"

Test(loads, ordered_by_place) {
    static const char *const texts[] = {BEAM(LINE ", " NEAR_END ", " FARTHER),
                                        BEAM(FARTHER ", " NEAR_END ", " LINE)};
    static const double a[] = {0.0, 0.0, 0.4, 0.0}, b[] = {0.0, 0.5, 0.4, 1.5};
    for (int k = 0; k < 2; k++) {
        const struct load_set *set = set_of(loads_of_text(texts[k]), "c");
        cr_assert(set->on_segments.count == 4);
        for (int i = 0; i < 4; i++) {
            NEAR_ABS(set->on_segments.items[i].a, a[i], 1e-12);
            NEAR_ABS(set->on_segments.items[i].b, b[i], 1e-12);
        }
    }
}

/* 40 x 40 mm of 450 kg/m3, 2 m and 0.8 m of it; a load of 100 N/m and one of 7 N hang there too. */
Test(loads, weights_add_up) {
    const char *text = BEAM("{case: self, member: beam, line: [0, 0, -100]}, "
                            "{case: self, member: beam, point: [0, 0, -7], at: 1200}, "
                            "{case: self, joint: t, force: [3, 2, -5]}");
    const char *off = strstr(text, "self-weight: no");
    const struct loads *none = loads_of_text(text);
    NEAR_REL(loads_weight(none, SET_SELF), 212.0, 1e-12);
    const struct loads *own = loads_of_text(
        arena_print(arena, "%.*s%s", (int)(off - text), text, off + strlen("self-weight: no")));
    NEAR_REL(loads_weight(own, SET_SELF), 212.0 + 2.8 * 1.6e-3 * 450 * G, 1e-9);
}

/* The largest single load: a moment counts by the diagonal of the frame, 2.154 m. */
Test(loads, largest_of_a_set) {
    const struct loads *loads =
        loads_of_text(BEAM("{case: force, joint: t, force: [3, -40, 5]}, "
                           "{case: moment, joint: t, moment: [2, -100, 1]}, "
                           "{case: both, joint: t, force: [60, 0, 0], moment: [100, 0, 0]}"));
    NEAR_REL(set_of(loads, "force")->largest, 40.0, 1e-12);
    NEAR_REL(set_of(loads, "moment")->largest, 100.0 / hypot(2.0, 0.8), 1e-12);
    NEAR_REL(set_of(loads, "both")->largest, 60.0, 1e-12);
}

/* A frame out of plumb carries the weight of snow sideways, as it does that of trays; wind and what
 * is the user's own push as they are said to. */
Test(loads, snow_leans_and_wind_does_not) {
    const struct loads *loads = loads_of_text(BEAM("{case: snow, joint: t, force: [0, 0, -9]}, "
                                                   "{case: wind-left, joint: t, force: [9, 0, 0]}, "
                                                   "{case: tray, joint: t, force: [0, 0, -9]}, "
                                                   "{case: mine, joint: t, force: [0, 0, -9]}"));
    cr_assert(set_of(loads, "snow")->leans && set_of(loads, "tray")->leans);
    cr_assert(!set_of(loads, "wind-left")->leans && !set_of(loads, "mine")->leans);
}

Test(loads, a_combination_in_which_nothing_acts) {
    const struct loads *loads =
        loads_of_text(BEAM("{case: mine, joint: t, force: [0, 0, -9]}") "combine: {winter: {snow: "
                                                                        "1}, own: {mine: 1.5}}\n");
    cr_assert(loads->combination_count == 1, "%zu combinations", loads->combination_count);
    SAME_TEXT(loads->combinations[0].name, "own");
    cr_assert(warned(loads, "winter names the case snow, in which nothing acts here"));
}

static const struct load_combination *combination(const struct loads *loads, const char *name) {
    for (size_t k = 0; k < loads->combination_count; k++)
        if (strcmp(loads->combinations[k].name, name) == 0)
            return &loads->combinations[k];
    return NULL;
}

/* Only what is there: no D of a frame without weight, no T without trays, no push to the back of a
 * plane frame, none at all where nothing stands upright. */
Test(loads, combinations_of_what_is_there) {
    static const char *const names[] = {"D",           "D+T", "D+push right", "D+T+push left",
                                        "D+push back", "D+S"};
    static const struct {
        const char *text;
        bool there[6];
    } rows[] = {
        {BEAM(""), {false, false, true, false, true, false}},
        {BEAM("{case: tray, joint: t, force: [0, 0, -9]}"), {false, true, true, true, true, false}},
        {BEAM("{case: self, joint: t, force: [0, 0, -9]}, {case: snow, joint: t, force: [0, 0, "
              "-9]}"),
         {true, false, true, false, true, true}},
        {LOADED "joints: {a: [0, 0], b: [0, 900]}\nmembers: {m: {from: a, to: b, stick: bar}}\n"
                "supports: {a: fixed}\nsite: {place: indoors}\n",
         {false, false, true, false, false, false}},
        {LOADED "joints: {a: [0, 0, 0], b: [900, 0, 0]}\nmembers: {m: {from: a, to: b, stick: bar}}"
                "\nsupports: {a: fixed}\nsite: {place: indoors}\n",
         {false, false, false, false, false, false}}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct loads *loads = loads_of_text(rows[k].text);
        for (size_t n = 0; n < sizeof names / sizeof *names; n++)
            cr_assert((combination(loads, names[n]) != NULL) == rows[k].there[n], "row %zu: %s", k,
                      names[n]);
        cr_assert(warned(loads, "nobody is taken to lean on the frame") == (k == 4), "row %zu", k);
    }
}

/* A push that the file gives is taken as it is; 1.5 % out of plumb goes with trays and snow. */
Test(loads, what_goes_with_a_push) {
    const struct loads *loads =
        loads_of_text(BEAM("{case: push-x, joint: m, force: [7, 0, 0]}, "
                           "{case: tray, joint: t, force: [0, 0, -9]}, "
                           "{case: self, joint: t, force: [0, 0, -9]}, "
                           "{case: snow, joint: t, force: [0, 0, -9]}, "
                           "{case: wind-back, joint: t, force: [0, -9, 0]}"));
    NEAR_REL(loads->sets[SET_PUSH_X].joints[2][0], 7.0, 1e-12);
    NEAR_ABS(loads->sets[SET_PUSH_X].joints[3][0], 0.0, 0.0);
    static const struct {
        const char *name;
        bool out_of_plumb;
    } rows[] = {{"D", false},
                {"D+T", true},
                {"D+S", true},
                {"D+T+S", true},
                {"0.6D+0.6W from back", false},
                {"D+T+0.6W from back", true},
                {"D+push front", false},
                {"D+T+push front", true}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct load_combination *found = combination(loads, rows[k].name);
        cr_assert(found, "no %s", rows[k].name);
        cr_assert(found->out_of_plumb == rows[k].out_of_plumb, "%s", rows[k].name);
    }
}

/* Trays count as often as a combination of the file says. */
Test(loads, trays_of_a_combination) {
    const struct loads *loads = loads_of_text(
        BEAM("{case: tray, joint: t, force: [0, 0, -9]}") "combine: {half: {tray: 0.5}}\n");
    NEAR_REL(loads_tray_factor(loads, 0, false), 0.5, 1e-12);
    NEAR_REL(loads_tray_factor(loads, 0, true), 0.5, 1e-12);
    NEAR_ABS(loads_case_factor(loads, 0, CASE_SNOW), 0.0, 0.0);
}

/* ---- shelves ---- */

/* Rails at y = 0, 0.2 and 0.8 m from x = 0 to 1.2 m; the last is drawn from x = 1.5 back to 0.4 m,
 * so that all three lie beside each other from 0.4 to 1.2 m. */
#define SHELF(what)                                                                                \
    LOADED "joints: {a: [0, 0, 0], b: [1200, 0, 0], c: [0, 200, 0], d: [1200, 200, 0], e: [1500, " \
           "800, 0], f: [400, 800, 0]}\n"                                                          \
           "members: {front: {from: a, to: b, stick: bar}, middle: {from: c, to: d, stick: bar}, " \
           "back: {from: e, to: f, stick: bar}}\n"                                                 \
           "supports: {a: fixed, b: fixed, c: fixed, d: fixed, e: fixed, f: fixed}\n"              \
           "site: {place: indoors}\nshelves: {s: {rails: [front, middle, back], " what "}}\n"

/* Half of the gaps beside it over 0.8 m: 0.1, 0.4 and 0.3 of 0.8 m. */
Test(loads, a_shelf_on_three_rails) {
    const struct loads *loads = loads_of_text(SHELF("trays: {weight: 800 N}"));
    const struct load_set *trays = set_of(loads, "tray");
    weighs(loads, trays, "front", 100.0, 0.8);
    weighs(loads, trays, "middle", 400.0, 0.8);
    weighs(loads, trays, "back", 300.0, 1.5 - 0.8);
    NEAR_REL(loads_weight(loads, SET_TRAY_LONG), 800.0, 1e-12);
}

/* 0.8 m long, 0.84 m over the outer faces of the outer rails. Plywood 1/2 in weighs 1.5 psf; three
 * slats of 1000 mm2 are 0.84 m long each. */
Test(loads, decks) {
    double psf = 4.4482216152605 / (0.3048 * 0.3048);
    NEAR_REL(loads_of_text(SHELF("deck: {sheet: plywood-1/2in}"))->shelves[0].deck,
             1.5 * psf * 0.8 * 0.84, 1e-9);
    NEAR_REL(loads_of_text(SHELF("deck: {slats: thin, count: 3}"))->shelves[0].deck,
             3 * 0.84 * 1e-3 * 450 * G, 1e-9);
    NEAR_REL(loads_of_text(SHELF("deck: {slats: bar, count: 3}"))->shelves[0].deck,
             3 * 0.84 * 1.6e-3 * 450 * G, 1e-9);
    NEAR_REL(loads_of_text(SHELF("deck: {weight: 100 Pa}"))->shelves[0].deck, 100 * 0.8 * 0.84,
             1e-9);
    NEAR_ABS(loads_of_text(SHELF("deck: none"))->shelves[0].deck, 0.0, 0.0);
}

/* A wet 1020 tray weighs 20 lb. */
Test(loads, trays) {
    NEAR_REL(loads_of_text(SHELF("trays: {load: 100 Pa}"))->shelves[0].trays, 100 * 0.8 * 0.84,
             1e-9);
    NEAR_REL(loads_of_text(SHELF("trays: {kind: tray-1020-wet, count: 3}"))->shelves[0].trays,
             3 * 20 * 4.4482216152605, 1e-9);
    NEAR_REL(loads_of_text(SHELF("trays: {weight: 70 N}"))->shelves[0].trays, 70.0, 1e-12);
    NEAR_ABS(loads_of_text(SHELF("trays: none"))->shelves[0].trays, 0.0, 0.0);
}

/* Half-way along what all rails have in common, half-way between the outer axes. */
Test(loads, middle_of_a_shelf) {
    const struct loads *loads = loads_of_text(SHELF("trays: none"));
    double middle[3];
    shelf_middle(loads->model, &loads->model->frame->shelves.items[0], &loads->shelves[0], middle);
    NEAR_REL(middle[0], 0.8, 1e-12);
    NEAR_REL(middle[1], 0.4, 1e-12);
    NEAR_ABS(middle[2], 0.0, 1e-12);
}

/* ---- somebody leans on it ---- */

/* Posts 2, 1.98 and 1.5 m high: the first two tops, within 25 mm, share 20 lb, or 0.02 of all that
 * weighs there where that is more; less than 20 lb only where it is said. */
#define POSTS(weight, site)                                                                        \
    LOADED "joints: {a: [0, 0, 0], b: [500, 0, 0], c: [900, 0, 0], d: [0, 0, 2000], e: [500, 0, "  \
           "1980], f: [900, 0, 1500]}\n"                                                           \
           "members: {ad: {from: a, to: d, stick: bar}, be: {from: b, to: e, stick: bar}, "        \
           "cf: {from: c, to: f, stick: bar}}\n"                                                   \
           "supports: {a: fixed, b: fixed, c: fixed}\nsite: {place: indoors" site "}\n"            \
           "loads: [{case: tray, joint: f, force: [0, 0, -" weight "]}]\n"

Test(loads, a_push_at_the_top) {
    static const struct {
        const char *text;
        double each;
    } rows[] = {{POSTS("100 N", ""), 20 * 4.4482216152605 / 2},
                {POSTS("10000 N", ""), 0.02 * 10000 / 2},
                {POSTS("100 N", ", push: 30 N"), 15}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct loads *loads = loads_of_text(rows[k].text);
        for (int axis = 0; axis < 2; axis++) {
            const struct load_set *push = &loads->sets[axis ? SET_PUSH_Y : SET_PUSH_X];
            NEAR_REL(push->joints[3][axis], rows[k].each, 1e-9);
            NEAR_REL(push->joints[4][axis], rows[k].each, 1e-9);
            NEAR_ABS(push->joints[5][axis], 0.0, 0.0);
            NEAR_REL(push->largest, rows[k].each, 1e-9);
        }
    }
}

/* ---- panels ---- */

/* A level sheet 1.2 m wide (x) and 0.9 m deep; more joints and members follow. */
#define SHEET(joints, members, panel)                                                              \
    LOADED "joints: {a: [0, 0, 0], b: [1200, 0, 0], c: [1200, 900, 0], d: [0, 900, 0]" joints      \
           "}\n"                                                                                   \
           "members: {front: {from: a, to: b, stick: bar}, right: {from: b, to: c, stick: bar}, "  \
           "back: {from: d, to: c, stick: bar}, left: {from: a, to: d, stick: bar}" members "}\n"  \
           "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\nsite: {place: indoors}\n"          \
           "panels: {roof: {sheet: twin-wall-6mm, held: loose, " panel "}}\n"

static size_t bearers_of(const struct model *model, struct bearer **bearers) {
    return panel_bearers(arena, model, &model->frame->panels.items[0], bearers);
}

static void bears(const struct bearer *bearer, int member, double share, double from, double to) {
    cr_assert(bearer->member == member, "member %d and not %d", bearer->member, member);
    NEAR_REL(bearer->share, share, 1e-9);
    NEAR_ABS(bearer->from, from, 1e-9);
    NEAR_ABS(bearer->to, to, 1e-9);
}

/* Up and down is from front to back on a level sheet, across is from side to side; the same sheet
 * with its corners told from another one. */
Test(loads, which_way_a_sheet_runs) {
    static const struct {
        const char *text;
        double x, y;
        int ends[2];
    } rows[] = {{SHEET("", "", "corners: [a, b, c, d]"), 0, 0.9, {0, 2}},
                {SHEET("", "", "corners: [a, b, c, d], runs: across"), -1.2, 0, {1, 3}},
                {SHEET("", "", "corners: [b, c, d, a]"), 0, -0.9, {2, 0}},
                {SHEET("", "", "corners: [b, c, d, a], runs: across"), -1.2, 0, {1, 3}}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct model *model = model_of_text(rows[k].text);
        struct bearer *bearers;
        double run[3];
        panel_run(model, &model->frame->panels.items[0], run);
        NEAR_ABS(run[0], rows[k].x, 1e-12);
        NEAR_ABS(run[1], rows[k].y, 1e-12);
        NEAR_REL(panel_longest_run(model, &model->frame->panels.items[0]),
                 hypot(rows[k].x, rows[k].y), 1e-12);
        cr_assert(bearers_of(model, &bearers) == 2);
        for (int end = 0; end < 2; end++)
            bears(&bearers[end], rows[k].ends[end], 0.5, 0.0, rows[k].x != 0 ? 0.9 : 1.2);
    }
}

#define SLOPED(corners)                                                                            \
    LOADED "joints: {" corners "}\n"                                                               \
           "members: {one: {from: a, to: b, stick: bar}, two: {from: c, to: d, stick: bar}}\n"     \
           "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\nsite: {place: indoors}\n"          \
           "panels: {roof: {corners: [b, c, d, a], sheet: twin-wall-6mm, held: loose}}\n"

/* Down the slope, whichever side that is; of one that falls as much to the side as to the front, to
 * the front; the longer edge counts where the two along it differ. */
Test(loads, a_sloped_sheet_runs_down) {
    static const struct {
        const char *text;
        double run[3], longest;
    } rows[] = {
        {SLOPED("a: [0, 0, 500], b: [1200, 0, 800], c: [1200, 900, 800], d: [0, 900, 500]"),
         {-1.2, 0, -0.3},
         1.23693168768529829},
        {SLOPED("a: [0, 0, 500], b: [1200, 0, 500], c: [1200, 900, 800], d: [0, 900, 800]"),
         {0, -0.9, -0.3},
         0.94868329805051377},
        {SLOPED("a: [0, 0, 500], b: [1200, 0, 800], c: [1200, 900, 1100], d: [0, 900, 800]"),
         {0, -0.9, -0.3},
         0.94868329805051377},
        {SLOPED("a: [0, 0, 500], b: [1200, 0, 500], c: [1200, 900, 500], d: [0, 600, 500]"),
         {0, -0.75, 0},
         0.9}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct model *model = model_of_text(rows[k].text);
        const struct panel *panel = &model->frame->panels.items[0];
        double run[3];
        panel_run(model, panel, run);
        for (int c = 0; c < 3; c++)
            NEAR_ABS(run[c], rows[k].run[c], 1e-12);
        NEAR_REL(panel_longest_run(model, panel), rows[k].longest, 1e-12);
    }
}

/* A purlin at a third, drawn from x = 1.5 m back to -0.1 m: the sheet lies on 0.3 to 1.5 m of it.
 * Two that do not bear: one under 0.5 m of the 1.2 m, one whose far end hangs 20 mm low. */
Test(loads, sticks_between_the_ends_of_a_sheet) {
    const struct model *model = model_of_text(
        SHEET(", e: [1500, 300, 0], f: [-100, 300, 0], g: [600, 500, 0], h: [1100, 500, 0], "
              "i: [0, 600, 0], j: [1200, 600, -20]",
              ", purlin: {from: e, to: f, stick: bar}, short: {from: g, to: h, stick: bar}, "
              "low: {from: i, to: j, stick: bar}",
              "corners: [a, b, c, d]"));
    struct bearer *bearers;
    cr_assert(bearers_of(model, &bearers) == 3);
    bears(&bearers[0], 0, 1.0 / 6.0, 0.0, 1.2);
    bears(&bearers[1], 4, 0.5, 0.3, 1.5);
    bears(&bearers[2], 2, 1.0 / 3.0, 0.0, 1.2);
}

/* A purlin at a quarter in two pieces, which meet under the middle, the first from 0.3 m outside:
 * half of what one whole purlin bears each, whichever comes first and however they are drawn. */
Test(loads, two_sticks_share_one_line) {
    static const struct {
        const char *pieces;
        double from[2];
    } rows[] = {{"p: {from: e, to: m, stick: bar}, q: {from: m, to: f, stick: bar}", {0.3, 0.0}},
                {"q: {from: f, to: m, stick: bar}, p: {from: m, to: e, stick: bar}", {0.0, 0.0}}};
    for (int k = 0; k < 2; k++) {
        const struct model *model = model_of_text(
            arena_print(arena,
                        SHEET(", e: [-300, 225, 0], f: [1200, 225, 0], m: [600, 225, 0]", ", %s",
                              "corners: [a, b, c, d]"),
                        rows[k].pieces));
        struct bearer *bearers;
        cr_assert(bearers_of(model, &bearers) == 4);
        bears(&bearers[0], 0, 0.125, 0.0, 1.2);
        for (int i = 0; i < 2; i++)
            bears(&bearers[1 + i], 4 + i, 0.25, rows[k].from[i], rows[k].from[i] + 0.6);
        bears(&bearers[3], 2, 0.375, 0.0, 1.2);
    }
}

/* Without a stick under its ends a sheet hangs on its corners, a quarter of 1.30 kg/m2 on 1.08 m2
 * each; half of it is the largest single load. */
Test(loads, a_sheet_on_its_corners) {
    const struct loads *loads = loads_of_text(
        "batten: 1\nunits: si\nsticks: {bar: {size: [40, 40], material: {E: 10 GPa, density: 450}}}"
        "\nconnections: {default: rigid}\n"
        "joints: {a: [0, 0, 0], b: [1200, 0, 0], c: [1200, 900, 0], d: [0, 900, 0]}\n"
        "members: {left: {from: a, to: d, stick: bar}, right: {from: b, to: c, stick: bar}}\n"
        "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\nsite: {place: indoors}\n"
        "panels: {roof: {corners: [a, b, c, d], sheet: twin-wall-6mm, held: loose}}\n");
    const struct load_set *own = set_of(loads, "self");
    double sheet = 1.30 * 1.08 * G, sticks = 1.8 * 1.6e-3 * 450 * G;
    for (int j = 0; j < 4; j++)
        NEAR_REL(own->joints[j][2], -sheet / 4.0, 1e-9);
    NEAR_REL(loads_weight(loads, SET_SELF), sheet + sticks, 1e-9);
    NEAR_REL(own->largest, sheet / 2.0, 1e-9); /* a stick: 6.4 N, less than 6.9 N */
}

/* 0.1 m over on every side: 1.4 m by 1.1 m. */
Test(loads, a_sheet_with_an_overhang) {
    const struct model *model =
        model_of_text(SHEET("", "", "corners: [a, b, c, d], overhang: 100"));
    NEAR_REL(panel_area(model, &model->frame->panels.items[0]), 1.4 * 1.1, 1e-12);
    NEAR_REL(panel_weight(model, &model->frame->panels.items[0]), 1.30 * 1.4 * 1.1 * G, 1e-9);
}

/* 1.30 kg/m2 on 1.08 m2, and 4.2 m round it of 1000 mm2 (own section) or 1600 mm2. */
Test(loads, a_framed_sheet_weighs) {
    static const struct {
        const char *text;
        double area;
    } rows[] = {{SHEET("", "", "corners: [a, b, c, d], framed: thin"), 1e-3},
                {SHEET("", "", "corners: [a, b, c, d], framed: bar"), 1.6e-3},
                {SHEET("", "", "corners: [a, b, c, d]"), 0}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct model *model = model_of_text(rows[k].text);
        NEAR_REL(panel_weight(model, &model->frame->panels.items[0]) / G,
                 1.30 * 1.08 + 4.2 * rows[k].area * 450, 1e-9);
    }
}
