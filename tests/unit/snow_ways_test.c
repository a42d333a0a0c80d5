/* How snow lies on roofs and shelves: pressure times level area by hand (ASCE 7-16 chapter 7,
 * loads.md 4). Ce 1 and Is 0.8 (exposure C, risk category 1) where nothing is said. */
#include "loaded.h"
#include "loads/weather.h"
#include "redo.h"

#include <math.h>
#include <stdio.h>

TestSuite(snow_ways, .init = set_up, .fini = tear_down);

static const double DEGREE = 3.14159265358979323846 / 180.0;

/* Weight of a case that has one set, N. */
static double weight(const struct loads *loads, const char *name) {
    return loads_weight(loads, (int)(set_of(loads, name) - loads->sets));
}

static bool told(const struct loads *loads, const char *words) {
    for (size_t k = 0; k < loads->weather->cautions.count; k++)
        if (strstr(loads->weather->cautions.items[k], words))
            return true;
    return false;
}

#define ROOF(corners) "{corners: " corners ", sheet: twin-wall-6mm, held: loose}"

/* ---- warm roofs ---- */

/* 1.2 m by 0.9 m, 12.5 deg, on four posts; `high` over the ground in front. */
static const char *lid(int high, const char *sheet, const char *site) {
    return arena_print(
        arena,
        LOADED "joints: {a: [0, 0, 0], b: [1200, 0, 0], c: [1200, 900, 0], d: [0, 900, 0], "
               "e: [0, 0, %d], f: [1200, 0, %d], g: [1200, 900, %d], h: [0, 900, %d]}\n"
               "members: {ae: {from: a, to: e, stick: bar}, bf: {from: b, to: f, stick: bar}, "
               "cg: {from: c, to: g, stick: bar}, dh: {from: d, to: h, stick: bar}}\n"
               "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n"
               "panels: {lid: {corners: [e, f, g, h], sheet: %s, held: loose}}\n"
               "site: {place: outdoors, ground-snow: 2.5 kPa%s}\n",
        high, high, high + 200, high + 200, sheet, site);
}

/* Ct (Table 7.3-2): 0.85 on clear roofs as of a greenhouse, 1.0 on wood, 1.2 unheated; under 3 ft a
 * heated one counts as any building's, and all of the ground snow lies on it. */
Test(snow_ways, heat_under_a_roof) {
    double clear = weight(loads_of_text(lid(1400, "twin-wall-6mm", ", heated: yes")), "snow");
    NEAR_REL(clear, 0.7 * 0.85 * 0.8 * 2500 * 1.2 * 0.9, 1e-9);
    double wood = weight(loads_of_text(lid(1400, "plywood-1/2in", ", heated: yes")), "snow");
    NEAR_REL(wood, 0.7 * 1.0 * 0.8 * 2500 * 1.2 * 0.9, 1e-9);
    double low = weight(loads_of_text(lid(400, "twin-wall-6mm", ", heated: yes")), "snow");
    NEAR_REL(low, 1.0 * 1.0 * 0.8 * 2500 * 1.2 * 0.9, 1e-9);
    double cold = weight(loads_of_text(lid(1400, "twin-wall-6mm", ", heated: no")), "snow");
    NEAR_REL(cold, 0.7 * 1.2 * 0.8 * 2500 * 1.2 * 0.9, 1e-9);
}

Test(snow_ways, what_is_said_about_heat) {
    cr_assert(told(loads_of_text(lid(1400, "twin-wall-6mm", ", heated: yes")),
                   "not slippery, heated all winter, risk"));
    cr_assert(told(loads_of_text(lid(1400, "twin-wall-6mm", ", heated: no")),
                   "slippery, unheated, risk"));
    cr_assert(told(loads_of_text(lid(1400, "twin-wall-6mm", "")), "unheated (not said), risk"));
}

/* A single slope may lean on a house, a box as low as the snow beside it does not. */
Test(snow_ways, what_is_said_about_a_lid) {
    const struct loads *high = loads_of_text(lid(1400, "twin-wall-6mm", ""));
    const struct loads *low = loads_of_text(lid(400, "twin-wall-6mm", ""));
    cr_assert(told(high, "often stands against a house"));
    cr_assert(!told(low, "often stands against a house"));
    cr_assert(told(low, "panel lid: no stick lies under one of its ends"));
}

/* The working of what counts on a lid: redone, 0.7 x 1.2 x 0.8 x 2.5 kPa = 1680 Pa; nearly level
 * under 20 psf with its rain: 0.672 x 0.9 kPa + 5 psf = 844.2 Pa, more than the minimum. */
Test(snow_ways, working_of_the_snow_on_a_roof) {
    const double psf = 47.88025898033584;
    const struct weather *weather = loads_of_text(lid(1400, "twin-wall-6mm", ""))->weather;
    struct working working = {.arena = arena};
    double on = snow_on_cover(&weather->snow, weather->covers, 1, 0, SNOW_EVEN, &working);
    NEAR_REL(on, 1680.0, 1e-9);
    cr_assert(redo_all(&working) > 0);
    NEAR_REL(noted(&working, "s") * psf, 1680.0, 1e-9);

    struct site_snow snow = weather->snow;
    struct cover level = weather->covers[0];
    struct working rain = {.arena = arena};
    snow.question.ground = 900.0;
    level.slope = 0.0;
    on = snow_on_cover(&snow, &level, 1, 0, SNOW_EVEN, &rain);
    NEAR_REL(on, 0.672 * 900.0 + 5.0 * psf, 1e-9);
    cr_assert(redo_all(&rain) > 0);

    snow.by_depth = true;
    snow.depth_load = 700.0;
    struct working depth = {.arena = arena};
    NEAR_REL(snow_on_cover(&snow, &level, 1, 0, SNOW_EVEN, &depth), 700.0, 1e-12);
    NEAR_REL(noted(&depth, "s") * psf, 700.0, 1e-9);
    /* other ways to lie note nothing; without snow there is none */
    struct working other = {.arena = arena};
    NEAR_REL(snow_on_cover(&weather->snow, weather->covers, 1, 0, SNOW_DRIFT, &other), 1680.0,
             1e-9);
    cr_assert(other.count == 0);
    snow.given = false;
    NEAR_ABS(snow_on_cover(&snow, &level, 1, 0, SNOW_EVEN, NULL), 0.0, 0.0);
    NEAR_ABS(snow_on_shelf(&snow, 1.0, 0.5, SNOW_EVEN), 0.0, 0.0);
}

/* ---- gables ---- */

/* Two roofs of 1.2 m by 0.4 m (level) whose ridge runs along x, or along y where `turned`; eaves at
 * 1 m. */
static const char *gable(bool turned, int ridge, const char *panels, const char *site) {
    static const int at[][3] = {
        {0, 0, 0},       {1200, 0, 0},   {0, 800, 0},       {1200, 800, 0}, {0, 0, 1000},
        {1200, 0, 1000}, {0, 800, 1000}, {1200, 800, 1000}, {0, 400, 0},    {1200, 400, 0},
        {600, 400, 0},   {600, 0, 1000}, {600, 800, 1000},  {0, 240, 1400}, {1200, 240, 1400}};
    static const char *const names[] = {"fl0", "fr0", "bl0", "br0", "fl", "fr", "bl", "br",
                                        "l",   "r",   "m",   "fm",  "bm", "ul", "ur"};
    char joints[600] = "";
    for (size_t k = 0; k < sizeof at / sizeof *at; k++)
        snprintf(joints + strlen(joints), sizeof joints - strlen(joints), "%s: [%d, %d, %d], ",
                 names[k], at[k][turned], at[k][!turned], k >= 8 && k <= 10 ? ridge : at[k][2]);
    return arena_print(
        arena,
        LOADED "joints: {%s}\nmembers: {a: {from: fl0, to: fl, stick: bar}, b: {from: fr0, to: fr, "
               "stick: bar}, c: {from: bl0, to: bl, stick: bar}, d: {from: br0, to: br, stick: "
               "bar}, ridge: {from: l, to: r, stick: bar}, eave: {from: fl, to: fr, stick: bar}, "
               "eave-2: {from: bl, to: br, stick: bar}, up: {from: ul, to: ur, stick: bar}}\n"
               "supports: {fl0: fixed, fr0: fixed, bl0: fixed, br0: fixed}\npanels: {%s}\n"
               "site: {place: outdoors, %s}\n",
        joints, panels, site);
}
#define TWO_ROOFS "front: " ROOF("[fl, fr, r, l]") ", back: " ROOF("[bl, br, r, l]")
#define SNOW "ground-snow: 1.2 kPa"

/* Blown over a ridge (26.6 deg, not 20 ft wide): all of the ground snow x Is on one side, the other
 * bare (7.6.1). A ridge that runs from front to back has a left and a right. */
Test(snow_ways, a_ridge_from_front_to_back) {
    const struct loads *loads = loads_of_text(gable(true, 1200, TWO_ROOFS, SNOW));
    NEAR_REL(weight(loads, "snow"), 0.7 * 1.2 * 0.8 * 1200 * 1.2 * 0.8, 1e-9);
    NEAR_REL(weight(loads, "snow/left"), 0.8 * 1200 * 1.2 * 0.4, 1e-9);
    NEAR_REL(weight(loads, "snow/right"), 0.8 * 1200 * 1.2 * 0.4, 1e-9);
    cr_assert(!case_if_any(loads, "snow/front") && !case_if_any(loads, "snow/back"));
    const struct weather *weather = loads->weather;
    NEAR_REL(snow_on_cover(&weather->snow, weather->covers, 2, 0, SNOW_ON_LEFT, NULL), 960.0, 1e-9);
    NEAR_ABS(snow_on_cover(&weather->snow, weather->covers, 2, 0, SNOW_ON_RIGHT, NULL), 0.0, 0.0);
}

/* One that runs from side to side has a front and a back. Snow leans with a frame that is out of
 * plumb, wind does not. */
Test(snow_ways, a_ridge_from_side_to_side) {
    const struct loads *loads = loads_of_text(gable(false, 1200, TWO_ROOFS, SNOW ", wind: 40 m/s"));
    const struct weather *weather = loads->weather;
    NEAR_REL(snow_on_cover(&weather->snow, weather->covers, 2, 0, SNOW_ON_FRONT, NULL), 960.0,
             1e-9);
    NEAR_ABS(snow_on_cover(&weather->snow, weather->covers, 2, 0, SNOW_ON_BACK, NULL), 0.0, 0.0);
    NEAR_REL(snow_on_cover(&weather->snow, weather->covers, 2, 1, SNOW_ON_BACK, NULL), 960.0, 1e-9);
    cr_assert(set_of(loads, "snow")->leans && set_of(loads, "snow/front")->leans);
    cr_assert(!set_of(loads, "wind-left")->leans && !set_of(loads, "wind-left/out")->leans);
}

/* Snow typed by its depth has no rule for the wind: one side bare. 0.3 m of 250 kg/m3. */
Test(snow_ways, typed_snow_on_a_gable) {
    const struct loads *loads =
        loads_of_text(gable(false, 1200, TWO_ROOFS, "snow-depth: 300, snow-kind: settled"));
    double side = 0.3 * 250 * 9.80665 * 1.2 * 0.4;
    NEAR_REL(weight(loads, "snow"), 2 * side, 1e-9);
    NEAR_REL(weight(loads, "snow/front"), side, 1e-9);
    NEAR_REL(weight(loads, "snow/back"), side, 1e-9);
}

/* Steeper than 30.2 deg there is no unbalanced snow: at 45 deg (Cs 1, cold) it lies evenly. */
Test(snow_ways, a_steep_gable) {
    const struct loads *loads = loads_of_text(gable(false, 1400, TWO_ROOFS, SNOW));
    NEAR_REL(weight(loads, "snow"), 0.7 * 1.2 * 0.8 * 1200 * 1.2 * 0.8, 1e-9);
    cr_assert(!case_if_any(loads, "snow/front") && !case_if_any(loads, "snow/back"));
    /* at 66.04 deg both are walls, on which Cs is (70 - 66.04)/25 */
    const struct loads *walls = loads_of_text(gable(false, 1900, TWO_ROOFS, SNOW));
    double Cs = (70.0 - atan2(900, 400) / DEGREE) / 25.0;
    NEAR_REL(weight(walls, "snow"), Cs * 0.7 * 1.2 * 0.8 * 1200 * 1.2 * 0.8, 1e-9);
    cr_assert(!case_if_any(walls, "snow/front"));
}

/* Two roofs that meet in a valley are no gable. */
Test(snow_ways, a_valley) {
    const struct loads *loads = loads_of_text(gable(false, 800, TWO_ROOFS, SNOW));
    cr_assert(case_if_any(loads, "snow") && !case_if_any(loads, "snow/front"));
    cr_assert(!told(loads, "no stick lies under"), "eaves and valley lie on sticks");
}

/* A wall makes no gable with a roof; nor do two roofs that fall alike, or a sheet from the ridge up
 * and back over the front (51 deg, so a roof). With its other side it is one, whatever comes first.
 */
Test(snow_ways, what_makes_a_gable) {
    static const struct {
        const char *panels;
        bool gable;
    } rows[] = {
        {"wall: " ROOF("[fl0, fr0, fr, fl]") ", front: " ROOF("[fl, fr, r, l]"), false},
        {"one: " ROOF("[fl, fm, m, l]") ", two: " ROOF("[fm, fr, r, m]"), false},
        {"front: " ROOF("[fl, fr, r, l]") ", upstand: " ROOF("[l, r, ur, ul]"), false},
        {"upstand: " ROOF("[l, r, ur, ul]") ", front: " ROOF("[fl, fr, r, l]"), false},
        {"wall: " ROOF("[fl0, fr0, fr, fl]") ", " TWO_ROOFS, true},
        {"front: " ROOF("[fl, fr, r, l]") ", back: " ROOF("[bl, br, r, l]"), true},
        {"front: " ROOF("[fl, fm, m, l]") ", back: " ROOF("[bm, br, r, m]"), false},
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct loads *loads = loads_of_text(gable(false, 1200, rows[k].panels, SNOW));
        cr_assert((case_if_any(loads, "snow/front") != NULL) == rows[k].gable, "row %zu", k);
        cr_assert(case_if_any(loads, "snow") != NULL);
    }
}

/* One side in two sheets, the other in one: they meet along the same ridge, so that the lee side
 * takes the ground snow x Is whole. */
Test(snow_ways, sides_of_a_gable_in_other_sheets) {
    const char *panels = "one: " ROOF("[fl, fm, m, l]") ", two: " ROOF(
        "[fm, fr, r, m]") ", back: " ROOF("[bl, br, r, l]");
    const struct loads *loads = loads_of_text(gable(false, 1200, panels, SNOW));
    NEAR_REL(weight(loads, "snow/front"), 0.8 * 1200 * 1.2 * 0.4, 1e-9);
    NEAR_REL(weight(loads, "snow/back"), 0.8 * 1200 * 1.2 * 0.4, 1e-9);
}

/* A ridge that falls by 0.4 m over its 2 m, with 0.2 m on either side of it, is one too: the roof
 * on its left falls 0.4 to the left and 0.2 to the front for each metre, 24.1 deg. */
Test(snow_ways, a_ridge_that_slopes) {
    const struct loads *loads = loads_of_text(
        LOADED "joints: {a: [0, 0, 0], b: [0, 2000, 0], e: [0, 0, 1000], f: [0, 2000, 1400], "
               "g: [-200, 0, 920], h: [-200, 2000, 1320], i: [200, 0, 920], j: [200, 2000, 1320]}\n"
               "members: {ae: {from: a, to: e, stick: bar}, bf: {from: b, to: f, stick: bar}, "
               "gh: {from: g, to: h, stick: bar}, ij: {from: i, to: j, stick: bar}}\n"
               "supports: {a: fixed, b: fixed}\nsite: {place: outdoors, " SNOW "}\n"
               "panels: {one: " ROOF("[e, f, h, g]") ", two: " ROOF("[e, f, j, i]") "}\n");
    NEAR_REL(weight(loads, "snow/left"), 0.8 * 1200 * 2 * 0.2, 1e-9);
    NEAR_REL(weight(loads, "snow/right"), 0.8 * 1200 * 2 * 0.2, 1e-9);
}

/* ---- what keeps snow off ---- */

/* A sheet that leans 66 deg back under the lid: without the lid 1.2 x 0.8 x 2.5 kPa (under 3 ft) x
 * Cs = (70 - 66.04)/(70 - 45) lie on its level 0.4 m; under the lid nothing, nor on a floor. */
Test(snow_ways, a_steep_sheet_under_a_lid) {
    static const char *const panels[] = {
        "lid: " ROOF("[e, f, g, h]") ", ", "",
        "lid: " ROOF("[e, f, g, h]") ", floor: " ROOF("[a, b, c, d]") ", "};
    double Cs = (70.0 - atan2(0.9, 0.4) / DEGREE) / 25.0;
    double got[3];
    for (int k = 0; k < 3; k++)
        got[k] = weight(
            loads_of_text(arena_print(
                arena,
                LOADED
                "joints: {a: [0, 0, 0], b: [1200, 0, 0], c: [1200, 900, 0], d: [0, 900, 0], "
                "e: [0, 0, 1400], f: [1200, 0, 1400], g: [1200, 900, 1400], h: [0, 900, 1400], "
                "i: [0, 400, 900], j: [1200, 400, 900]}\n"
                "members: {ae: {from: a, to: e, stick: bar}, bf: {from: b, to: f, stick: bar}, "
                "cg: {from: c, to: g, stick: bar}, dh: {from: d, to: h, stick: bar}, "
                "ij: {from: i, to: j, stick: bar}}\n"
                "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n"
                "panels: {%scheek: %s}\nsite: {place: outdoors, ground-snow: 2.5 kPa}\n",
                panels[k], ROOF("[a, b, j, i]"))),
            "snow");
    NEAR_REL(got[0], 0.7 * 1.2 * 0.8 * 2500 * 1.2 * 0.9, 1e-9);
    NEAR_REL(got[2], got[0], 1e-9);
    NEAR_REL(got[1], 1.2 * 0.8 * 2500 * Cs * 1.2 * 0.4, 1e-9);
}

/* Shelves 1 m by 0.54 m (over the rails) on ground at z = 2 m: the first 0.3 m above it, the next
 * three 0.6 m above it: not over the middle of the first to the right and behind, and over it. */
static const char *shelves(const char *names) {
    static const int at[][3] = {{0, 0, 2300}, {700, 0, 2600}, {0, 400, 2600}, {0, 0, 2600}};
    char joints[900] = "", members[900] = "", list[900] = "";
    for (int k = 0; names[k]; k++) {
        const int *o = at[names[k] - '0'];
        snprintf(joints + strlen(joints), sizeof joints - strlen(joints),
                 "a%d: [%d, %d, %d], b%d: [%d, %d, %d], c%d: [%d, %d, %d], d%d: [%d, %d, %d], ", k,
                 o[0], o[1], o[2], k, o[0] + 1000, o[1], o[2], k, o[0], o[1] + 500, o[2], k,
                 o[0] + 1000, o[1] + 500, o[2]);
        snprintf(members + strlen(members), sizeof members - strlen(members),
                 "f%d: {from: a%d, to: b%d, stick: bar}, b%d: {from: c%d, to: d%d, stick: bar}, ",
                 k, k, k, k, k, k);
        snprintf(list + strlen(list), sizeof list - strlen(list), "s%d: {rails: [f%d, b%d]}, ", k,
                 k, k);
    }
    return arena_print(arena,
                       LOADED "joints: {%sp: [0, 0, 2000]}\nmembers: {%spost: {from: p, to: a0, "
                              "stick: bar}}\nsupports: {p: fixed}\nshelves: {%s}\n"
                              "site: {place: outdoors, ground-snow: 2.5 kPa}\n",
                       joints, members, list);
}

/* Under 3 ft above its ground each open shelf takes 1.2 x 0.8 x 2.5 kPa; the one with a shelf over
 * its middle takes none. */
Test(snow_ways, shelves_over_and_beside_each_other) {
    double one = 1.2 * 0.8 * 2500 * 1.0 * 0.54;
    NEAR_REL(weight(loads_of_text(shelves("0")), "snow"), one, 1e-9);
    NEAR_REL(weight(loads_of_text(shelves("01")), "snow"), 2 * one, 1e-9);
    NEAR_REL(weight(loads_of_text(shelves("02")), "snow"), 2 * one, 1e-9);
    const struct loads *over = loads_of_text(shelves("03"));
    NEAR_REL(weight(over, "snow"), one, 1e-9);
    NEAR_ABS(over->weather->shelf_snow[0], 0.0, 0.0);
    NEAR_REL(over->weather->shelf_snow[1], one, 1e-9);
}
