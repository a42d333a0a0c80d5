/* Snow and wind on whole frames, against hand statics: what the feet carry in all is pressure times
 * area; which cases act together, with which factors (ASCE 7-16 2.4.1, 7-22: 0.7 S; loads.md 3.1).
 */
#include "judged.h"
#include "loads/weather.h"

#include <math.h>
#include <stdio.h>

TestSuite(weather_frame, .init = set_up, .fini = tear_down);

/* Without weight of its own, stiff, held at four joints on the ground; 1.2 m wide, 0.9 m deep, the
 * front 0.4 m and the back 0.6 m high: the lid slopes by atan(2/9). */
#define STICKS                                                                                     \
    "batten: 1\nunits: si\nself-weight: no\nsticks:\n"                                             \
    "  bar: {section: {A: 3382 mm2, Iy: 2.2324e6 mm4, Iz: 2.2324e6 mm4, J: 1e6 mm4, Ay: 2818 "     \
    "mm2, "                                                                                        \
    "Az: 2818 mm2}, material: {E: 10 GPa, G: 0.625 GPa, density: 450}}\n"                          \
    "connections: {default: rigid}\n"
#define BOX_JOINTS                                                                                 \
    "joints: {fl0: [0, 0, 0], fr0: [1200, 0, 0], bl0: [0, 900, 0], br0: [1200, 900, 0], "          \
    "fl1: [0, 0, 400], fr1: [1200, 0, 400], bl1: [0, 900, 600], br1: [1200, 900, 600]}\n"          \
    "members:\n"                                                                                   \
    "  fl: {from: fl0, to: fl1, stick: bar}\n  fr: {from: fr0, to: fr1, stick: bar}\n"             \
    "  bl: {from: bl0, to: bl1, stick: bar}\n  br: {from: br0, to: br1, stick: bar}\n"             \
    "  front: {from: fl1, to: fr1, stick: bar, ends: pinned}\n"                                    \
    "  back: {from: bl1, to: br1, stick: bar, ends: pinned}\n"                                     \
    "  left: {from: fl1, to: bl1, stick: bar}\n  right: {from: fr1, to: br1, stick: bar}\n"        \
    "supports: {fl0: fixed, fr0: fixed, bl0: fixed, br0: fixed}\n"
#define WALLS                                                                                      \
    "  front: {corners: [fl0, fr0, fr1, fl1], sheet: twin-wall-6mm, held: screwed}\n"              \
    "  back: {corners: [bl0, br0, br1, bl1], sheet: twin-wall-6mm, held: screwed}\n"               \
    "  left: {corners: [fl0, bl0, bl1, fl1], sheet: twin-wall-6mm, held: screwed}\n"               \
    "  right: {corners: [fr0, br0, br1, fr1], sheet: twin-wall-6mm, held: screwed}\n"
#define LID "  lid: {corners: [fl1, fr1, br1, bl1], sheet: twin-wall-6mm, held: screwed}\n"
#define LID_THAT_OPENS                                                                             \
    "  lid: {corners: [fl1, fr1, br1, bl1], sheet: twin-wall-6mm, held: hinged, "                  \
    "hinge: [bl1, br1], opens: 60 deg}\n"
#define BOX(lid, site) STICKS BOX_JOINTS "panels:\n" WALLS lid "site: " site "\n"

static const double WIDE = 1.2, DEEP = 0.9, FRONT = 0.4, BACK = 0.6;

/* 0.00256 Kz Kd V^2 psf, V in mph (loads.md 5.1), at 40 m/s: 0.70 and 0.85 in exposure B. */
static double wind_q(double Kz) {
    double mph = 40.0 / 0.44704;
    return 0.00256 * Kz * 0.85 * mph * mph * 47.88025898033584;
}

static const struct case_result *case_if_any(const struct result *result, const char *name) {
    for (size_t k = 0; k < result->cases.count; k++)
        if (strcmp(result->cases.items[k].name, name) == 0)
            return &result->cases.items[k];
    return NULL;
}

/* What the frame pushes on the ground in all, against the loads that it carries. */
static void carries(const struct result *result, const char *name, double x, double y, double z) {
    const struct case_result *found = case_if_any(result, name);
    const double want[3] = {x, y, z};
    cr_assert(found && found->solved, "no case %s", name);
    for (int c = 0; c < 3; c++) {
        double sum = 0.0;
        for (int s = 0; s < 4; s++)
            sum -= found->reactions[s][c];
        NEAR(sum, want[c], 1e-9, 1e-6);
    }
}

/* Under 3 ft, unheated, risk 1, ground snow 1.2 kPa: 1.0 x 1.2 x 0.8 x 1.2 kPa on the level area,
 * more than the minimum of 0.8 x 20 psf. */
Test(weather_frame, snow_is_pressure_times_level_area) {
    struct result result = judged_text(BOX(LID, "{place: outdoors, ground-snow: 1.2 kPa}"));
    carries(&result, "snow", 0, 0, -1.0 * 1.2 * 0.8 * 1200 * WIDE * DEEP);
    cr_assert(!case_if_any(&result, "snow/front"), "a lid with one slope is no gable");
    cr_assert(!case_if_any(&result, "wind-left"));
    cr_assert(cautioned(&result, "not checked: wind"));
}

/* 7-22 leaves Is out; 300 mm of settled snow (250 kg/m3) lies as it is. */
Test(weather_frame, snow_of_the_other_edition_and_by_depth) {
    struct result later =
        judged_text(BOX(LID, "{place: outdoors, ground-snow: 1.2 kPa, edition: asce7-22}"));
    carries(&later, "snow", 0, 0, -1.2 * 1200 * WIDE * DEEP);
    struct result depth =
        judged_text(BOX(LID, "{place: outdoors, snow-depth: 300, snow-kind: settled}"));
    carries(&depth, "snow", 0, 0, -0.3 * 250 * 9.80665 * WIDE * DEEP);
}

Test(weather_frame, nothing_given_is_not_checked) {
    struct result result = judged_text(BOX(LID, "{place: outdoors}"));
    cr_assert(cautioned(&result, "not checked: snow"));
    cr_assert(cautioned(&result, "not checked: wind"));
    cr_assert(!case_if_any(&result, "snow"));
    for (size_t k = 0; k < result.combinations.count; k++)
        cr_assert(!strchr(result.combinations.items[k].name, 'S') &&
                      !strchr(result.combinations.items[k].name, 'W'),
                  "%s", result.combinations.items[k].name);
}

/* loads.md 5.6, shut: 1.3 on the box as a whole; lid pushed with 0.6 (up to 35 deg), lifted with
 * 1.3; walls beside sucked out with 1.6. A force on the lid has the areas of its shadows. */
Test(weather_frame, wind_on_a_shut_box) {
    struct result result = judged_text(BOX(LID, "{place: outdoors, wind: 40 m/s, exposure: B}"));
    double q = wind_q(0.70), side = DEEP * (FRONT + BACK) / 2, level = WIDE * DEEP;
    double step = WIDE * (BACK - FRONT); /* the lid as seen from the front */
    double beside = 1.6 * step;          /* back more than front */
    carries(&result, "wind-left", 1.3 * q * side, q * (beside + 0.6 * step), -0.6 * q * level);
    carries(&result, "wind-right", -1.3 * q * side, q * (beside + 0.6 * step), -0.6 * q * level);
    carries(&result, "wind-left/out", 1.6 * q * side, q * (beside - 1.3 * step), 1.3 * q * level);
    /* from the front 1.2 on the front, the 0.1 that 1.3 lacks on the back */
    carries(&result, "wind-front", 0, q * (1.2 * WIDE * FRONT + 0.1 * WIDE * BACK + 0.6 * step),
            -0.6 * q * level);
    carries(&result, "wind-back/out", 0, q * (-1.6 * WIDE * FRONT - 1.3 * step), 1.3 * q * level);
    cr_assert(!case_if_any(&result, "wind-left/open"));
}

/* With the lid up by 60 deg it is a plate of 2.2, along its normal; walls take 1.6 in, 2.0 out. */
Test(weather_frame, wind_on_a_box_with_its_lid_open) {
    struct result result =
        judged_text(BOX(LID_THAT_OPENS, "{place: outdoors, wind: 40 m/s, exposure: B}"));
    double q = wind_q(0.70), slope = atan2(BACK - FRONT, DEEP), up = 60 * acos(-1.0) / 180;
    double plate = 2.2 * q * WIDE * hypot(DEEP, BACK - FRONT);
    carries(&result, "wind-front/open", 0, q * 1.6 * WIDE * FRONT + plate * sin(up - slope),
            plate * cos(up - slope));
    carries(&result, "wind-left/open-out", q * 2.0 * DEEP * (FRONT + BACK) / 2,
            q * 2.0 * WIDE * (BACK - FRONT) - plate * sin(up - slope), -plate * cos(up - slope));
    carries(&result, "wind-left", 1.3 * q * DEEP * (FRONT + BACK) / 2,
            q * (1.6 + 0.6) * WIDE * (BACK - FRONT), -0.6 * q * WIDE * DEEP);
}

/* Hinged in front it stands up against the wind from there, 60 deg steeper than shut: pushed back
 * and down. One that lies loose and stands open is away: the walls alone, 1.6 in front. */
Test(weather_frame, wind_on_other_open_lids) {
    double q = wind_q(0.70), steep = atan2(BACK - FRONT, DEEP) + 60 * acos(-1.0) / 180;
    double plate = 2.2 * q * WIDE * hypot(DEEP, BACK - FRONT), wall = q * 1.6 * WIDE * FRONT;
    struct result hinged = judged_text(
        BOX("  lid: {corners: [fl1, fr1, br1, bl1], sheet: twin-wall-6mm, held: hinged, hinge: "
            "[fl1, fr1], opens: 60 deg}\n",
            "{place: outdoors, wind: 40 m/s, exposure: B}"));
    carries(&hinged, "wind-front/open", 0, wall + plate * sin(steep), -plate * cos(steep));
    struct result loose = judged_text(
        BOX("  lid: {corners: [fl1, fr1, br1, bl1], sheet: twin-wall-6mm, held: loose, opens: yes}"
            "\n",
            "{place: outdoors, wind: 40 m/s, exposure: B}"));
    carries(&loose, "wind-front/open", 0, wall, 0);
}

/* A low roof on bare posts, nothing but sticks 38 mm thick: coefficient 2.0 where they fill less
 * than a tenth of the outline, 1.8 to 0.3 (ASCE 7-16 Table 29.4-2), 1.6 above. */
Test(weather_frame, coefficient_of_bare_sticks) {
    NEAR_ABS(lattice_coefficient(0.05, false), 2.0, 0);
    NEAR_ABS(lattice_coefficient(0.2, false), 1.8, 0);
    NEAR_ABS(lattice_coefficient(0.5, false), 1.6, 0);
    /* a wall with holes (loads.md 5.5): half of it solid, 1.45 x (1 - 0.5^1.5) / 0.5 */
    NEAR_REL(lattice_coefficient(0.5, true), 1.45 * (1 - 0.35355339059327379) / 0.5, 1e-12);
    NEAR_REL(lattice_coefficient(1.0, true), 1.45, 1e-12);
}

/* The roof panel hangs on the front and the back rail, half each: 5 w L^4 / 384 E I and
 * w L^2 / (8 G As), without creep; the limit is span/180. */
Test(weather_frame, sag_of_a_roof_stick_under_snow) {
    struct result result = judged_text(
        BOX(LID, "{place: outdoors, ground-snow: 1.2 kPa}") "limits: {roof-sag: span/120}\n");
    const struct check *check = check_of(&result, "sag/lid/front");
    double w = 1.2 * 0.8 * 1200 * DEEP / 2, L = WIDE;
    NEAR_REL(check->demand,
             5 * w * L * L * L * L / (384 * 10e9 * 2.2324e-6) + w * L * L / (8 * 0.625e9 * 2818e-6),
             1e-6);
    NEAR_REL(check->limit, WIDE / 120, 1e-12);
    SAME_TEXT(check->combination, "D+S");
    check_of(&result, "sag/lid/back");
    cr_assert(!check_if_any(&result, "sag/lid/left"), "its corrugation runs down the slope");
    struct result bare = judged_text(BOX(LID, "{place: outdoors}"));
    cr_assert(!check_if_any(&bare, "sag/lid/front"));
}

#define MAST(site)                                                                                 \
    STICKS "joints: {foot: [0, 0, 0], top: [0, 0, 2000]}\n"                                        \
           "members: {mast: {from: foot, to: top, stick: bar}}\nsupports: {foot: fixed}\n"         \
           "loads: [{case: wind-left, joint: top, force: [400 N, 0, 0]}]\nsite: " site "\n"

/* Of a map speed 0.42 W counts for moving sideways, of a real gust 0.7: F L^3 / 3 E I + F L / G As.
 */
Test(weather_frame, service_wind_moves_a_mast) {
    static const struct {
        const char *text, *combination;
        double share;
    } rows[] = {{MAST("{place: outdoors, push: 0, wind: 1 m/s}"), "D+0.42W from left", 0.42},
                {MAST("{place: outdoors, push: 0, gust: 1 m/s}"), "D+0.7W from left", 0.7},
                {MAST("{place: outdoors, push: 0}"), "D+0.42W from left", 0.42}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        struct result result = judged_text(rows[k].text);
        const struct check *check = check_of(&result, "lean/x");
        double F = rows[k].share * 400.0;
        SAME_TEXT(check->combination, rows[k].combination);
        NEAR_REL(check->demand, F * 8 / (3 * 10e9 * 2.2324e-6) + F * 2 / (0.625e9 * 2818e-6), 1e-6);
    }
}

static void acts(const struct result *result, const char *name, double duration,
                 const char *parts) {
    char got[200] = "";
    for (size_t k = 0; k < result->combinations.count; k++) {
        const struct combination_result *found = &result->combinations.items[k];
        if (strcmp(found->name, name) != 0)
            continue;
        for (size_t p = 0; p < found->part_count; p++)
            snprintf(got + strlen(got), sizeof got - strlen(got), "%s%s %g", p ? ", " : "",
                     found->parts[p].name, found->parts[p].factor);
        SAME_TEXT(got, parts);
        NEAR_ABS(found->duration_factor, duration, 0);
        return;
    }
    cr_assert_fail("no combination %s", name);
}

#define WITH_SHELF(standing, site)                                                                 \
    STICKS "joints: {fl0: [0, 0, 0], fr0: [1200, 0, 0], bl0: [0, 900, 0], br0: [1200, 900, 0], "   \
           "fl1: [0, 0, 400], fr1: [1200, 0, 400], bl1: [0, 900, 400], br1: [1200, 900, 400]}\n"   \
           "members:\n"                                                                            \
           "  fl: {from: fl0, to: fl1, stick: bar}\n  fr: {from: fr0, to: fr1, stick: bar}\n"      \
           "  bl: {from: bl0, to: bl1, stick: bar}\n  br: {from: br0, to: br1, stick: bar}\n"      \
           "  front: {from: fl1, to: fr1, stick: bar}\n  back: {from: bl1, to: br1, stick: bar}\n" \
           "supports: {fl0: fixed, fr0: fixed, bl0: fixed, br0: fixed}\n"                          \
           "shelves: {top: {rails: [front, back], trays: {weight: 500 N}" standing "}}\n"          \
           "site: " site "\n"

/* Durations: NDS 2018 Table 2.3.2: ten years 1.0, two months 1.15, ten minutes 1.6. */
Test(weather_frame, what_acts_together) {
    struct result map =
        judged_text(WITH_SHELF("", "{place: outdoors, ground-snow: 1 kPa, wind: 40 m/s}"));
    acts(&map, "D+T", 1.0, "tray 1");
    acts(&map, "D+S", 1.15, "snow 1");
    acts(&map, "D+T+S", 1.15, "tray 1, snow 1");
    acts(&map, "D+T+0.6W from left", 1.6, "tray 1, wind-left 0.6");
    acts(&map, "D+T+0.75S+0.45W from back", 1.6, "tray 1, snow 0.75, wind-back 0.45");
    acts(&map, "0.6D+0.6W from right", 1.6, "wind-right 0.6");
    struct result later = judged_text(
        WITH_SHELF("", "{place: outdoors, ground-snow: 1 kPa, gust: 40 m/s, edition: asce7-22}"));
    acts(&later, "D+T+0.7S", 1.15, "tray 1, snow 0.7");
    acts(&later, "D+T+W from left", 1.6, "tray 1, wind-left 1");
    acts(&later, "D+T+0.525S+0.75W from left", 1.6, "tray 1, snow 0.525, wind-left 0.75");
    acts(&later, "0.6D+W from left", 1.6, "wind-left 1");
    struct result shortly = judged_text(
        WITH_SHELF(", standing: short", "{place: outdoors, ground-snow: 1 kPa, wind: 40 m/s}"));
    acts(&shortly, "D+T", 1.0, "tray 1");
    acts(&shortly, "D+T+S", 1.15, "tray 0.75, snow 1");
    acts(&shortly, "D+T+0.6W from left", 1.6, "tray 0.75, wind-left 0.6");
}

/* An open shelf 0.4 m high: under 3 ft, level, risk 1: 1.2 x 0.8 x 1 kPa on 1.2 m by 0.9 m (plus
 * the rails' width) is more than the minimum 0.8 x 0.958 kPa. */
Test(weather_frame, snow_on_an_open_shelf) {
    struct result result = judged_text(WITH_SHELF("", "{place: outdoors, ground-snow: 1 kPa}"));
    const struct case_result *snow = case_if_any(&result, "snow");
    double sum = 0.0;
    cr_assert_not_null(snow);
    for (int s = 0; s < 4; s++)
        sum += snow->reactions[s][2];
    double width = sum / (1.2 * 0.8 * 1000 * WIDE);
    cr_assert(width >= DEEP && width <= DEEP + 0.1, "%g m wide", width);
}

/* 3 m of settled snow on ten slats of 20 x 70 mm laid flat: 1.2 m x (0.9 m + 38 mm) of it, spread
 * over ten spans of 0.9 m; M = w L^2 / 8 over 70 x 20^2 / 6. */
Test(weather_frame, slats_carry_the_snow) {
    struct result result = judged_text(
        "batten: 1\nunits: si\nself-weight: no\nsticks:\n"
        "  bar: {size: [38, 89], stands: on-edge, material: {E: 10 GPa, Fcp: 2 MPa, density: "
        "450}}\n"
        "  slat: {size: [20, 70], material: {E: 10 GPa, Fb: 20 MPa, Fv: 2 MPa, Fcp: 2 MPa, "
        "density: 450}}\n"
        "connections: {default: rigid}\n"
        "joints: {fl: [0, 0, 400], fr: [1200, 0, 400], bl: [0, 900, 400], br: [1200, 900, 400]}\n"
        "members: {front: {from: fl, to: fr, stick: bar}, back: {from: bl, to: br, stick: bar}}\n"
        "supports: {fl: fixed, fr: fixed, bl: fixed, br: fixed}\n"
        "shelves: {top: {rails: [front, back], deck: {slats: slat, count: 10}}}\n"
        "limits: {shelf-sag: span/10}\n"
        "site: {place: outdoors, snow-depth: 3000, snow-kind: settled}\n");
    const struct check *check = check_of(&result, "slat/top");
    double w = 3 * 250 * 9.80665 * 1.2 * 0.938 / (0.9 * 10);
    NEAR_REL(check->demand, w * 0.81 / 8 / (0.07 * 0.0004 / 6), 1e-9);
    SAME_TEXT(check->combination, "D+S");
    const struct check *seat = check_of(&result, "bearing/top/front");
    SAME_TEXT(seat->combination, "D+S");
    NEAR_REL(seat->demand, w * 0.9 / 2 / (0.07 * 0.038), 1e-9);
}

/* Beside snow or wind 0.75 of the trays that stand shortly, all of the others. */
Test(weather_frame, short_and_long_standing_trays) {
    const char *text =
        WITH_SHELF(", standing: short}, low: {rails: [front, back], trays: {weight: 300 N}",
                   "{place: outdoors, ground-snow: 1 kPa}");
    struct problems problems = problems_new(arena);
    const struct loads *loads =
        loads_build(arena, model_build(arena, frame_of_text(arena, text), &problems));
    size_t seen = 0;
    for (size_t c = 0; c < loads->combination_count; c++) {
        bool snow = strcmp(loads->combinations[c].name, "D+T+S") == 0;
        if (!snow && strcmp(loads->combinations[c].name, "D+T") != 0)
            continue;
        NEAR_ABS(loads_tray_factor(loads, (int)c, true), snow ? 0.75 : 1.0, 0);
        NEAR_ABS(loads_tray_factor(loads, (int)c, false), 1.0, 0);
        seen++;
    }
    cr_assert(seen == 2, "%zu of D+T and D+T+S", seen);
}

/* 1.2 m wide and 0.8 m deep, eaves 1.0 m and ridge 1.2 m above the ground: 26.6 deg. */
#define GABLE(more)                                                                                \
    STICKS                                                                                         \
    "joints: {fl0: [0, 0, 0], fr0: [1200, 0, 0], bl0: [0, 800, 0], br0: [1200, 800, 0], "          \
    "fl1: [0, 0, 1000], fr1: [1200, 0, 1000], bl1: [0, 800, 1000], br1: [1200, 800, 1000], "       \
    "l: [0, 400, 1200], r: [1200, 400, 1200]}\n"                                                   \
    "members:\n"                                                                                   \
    "  fl: {from: fl0, to: fl1, stick: bar}\n  fr: {from: fr0, to: fr1, stick: bar}\n"             \
    "  bl: {from: bl0, to: bl1, stick: bar}\n  br: {from: br0, to: br1, stick: bar}\n"             \
    "  front: {from: fl1, to: fr1, stick: bar}\n  back: {from: bl1, to: br1, stick: bar}\n"        \
    "  lf: {from: fl1, to: l, stick: bar}\n  lb: {from: bl1, to: l, stick: bar}\n"                 \
    "  rf: {from: fr1, to: r, stick: bar}\n  rb: {from: br1, to: r, stick: bar}\n"                 \
    "  ridge: {from: l, to: r, stick: bar}\n"                                                      \
    "supports: {fl0: fixed, fr0: fixed, bl0: fixed, br0: fixed}\n"                                 \
    "panels:\n"                                                                                    \
    "  front: {corners: [fl1, fr1, r, l], sheet: twin-wall-6mm, held: screwed}\n"                  \
    "  back: {corners: [bl1, br1, r, l], sheet: twin-wall-6mm, held: screwed}\n" more

/* Even: 0.7 x 1.2 x 0.8 of the ground snow on both sides; blown over a ridge not 20 ft from its
 * eave: all of it x Is on the lee side, none on the other (ASCE 7-16 7.6.1; loads.md 4.3). */
Test(weather_frame, snow_blown_over_a_ridge) {
    struct result result = judged_text(GABLE("site: {place: outdoors, ground-snow: 1.2 kPa}\n"));
    carries(&result, "snow", 0, 0, -0.7 * 1.2 * 0.8 * 1200 * 1.2 * 0.8);
    carries(&result, "snow/front", 0, 0, -0.8 * 1200 * 1.2 * 0.4);
    carries(&result, "snow/back", 0, 0, -0.8 * 1200 * 1.2 * 0.4);
    cr_assert(!case_if_any(&result, "snow/left"), "nothing is blown along the ridge");
    acts(&result, "D+S/front", 1.15, "snow/front 1");
}

/* A combination of the file that names snow is looked at for each way in which it lies. */
Test(weather_frame, combinations_of_the_file_take_every_way) {
    struct result result =
        judged_text(GABLE("site: {place: outdoors, ground-snow: 1.2 kPa}\n"
                          "combine: {winter: {self: 1, snow: 0.9, duration: two-months}}\n"));
    cr_assert(result.combinations.count == 3, "%zu combinations", result.combinations.count);
    acts(&result, "winter", 1.15, "snow 0.9");
    acts(&result, "winter, snow/front", 1.15, "snow/front 0.9");
    acts(&result, "winter, snow/back", 1.15, "snow/back 0.9");
}

#define HIGH_BOX(site)                                                                             \
    STICKS                                                                                         \
    "joints: {fl0: [0, 0, 0], fr0: [1200, 0, 0], bl0: [0, 900, 0], br0: [1200, 900, 0], "          \
    "fl1: [0, 0, 1400], fr1: [1200, 0, 1400], bl1: [0, 900, 1600], br1: [1200, 900, 1600]}\n"      \
    "members:\n"                                                                                   \
    "  fl: {from: fl0, to: fl1, stick: bar}\n  fr: {from: fr0, to: fr1, stick: bar}\n"             \
    "  bl: {from: bl0, to: bl1, stick: bar}\n  br: {from: br0, to: br1, stick: bar}\n"             \
    "  front: {from: fl1, to: fr1, stick: bar}\n  back: {from: bl1, to: br1, stick: bar}\n"        \
    "supports: {fl0: fixed, fr0: fixed, bl0: fixed, br0: fixed}\n"                                 \
    "panels:\n" LID "site: " site "\n"

/* Against a house 20 ft deep with its eave at 10 ft, pg 25 psf (loads.md 4.3): even 0.7 x 1.2 x 0.8
 * x 25 = 16.8 psf; slid 0.4 x (0.7 x 1.1 x 25) x 10 ft / 15 ft; drifted 17.25 lb/ft3 x (0.43 x
 * 20^(1/3) x 35^(1/4) - 1.5) ft. */
Test(weather_frame, snow_from_the_house) {
    struct result result = judged_text(
        HIGH_BOX("{place: outdoors, ground-snow: 25 psf, beside: {house: {eave: 10 ft, depth: 20 "
                 "ft, slope: 25 deg}}}"));
    double area = WIDE * DEEP * 47.88025898033584;
    carries(&result, "snow", 0, 0, -16.8 * area);
    carries(&result, "snow/slid", 0, 0, -(16.8 + 0.4 * 0.7 * 1.1 * 25 * 10 / 15) * area);
    double drift = 17.25 * (0.43 * cbrt(20) * pow(35, 0.25) - 1.5);
    carries(&result, "snow/drift", 0, 0, -(16.8 + drift) * area);
    /* an eave 0.5 m over the top of the lid: snow fills the step, 17.25 lb/ft3 x 1.64 ft in all */
    struct result filled = judged_text(
        HIGH_BOX("{place: outdoors, ground-snow: 25 psf, beside: {house: {eave: 2100, depth: 20 "
                 "ft, slope: 1 deg}}}"));
    carries(&filled, "snow/drift", 0, 0, -17.25 * 0.5 / 0.3048 * area);
    cr_assert(!case_if_any(&filled, "snow/slid"), "its roof is too flat");
    struct result below = judged_text(
        HIGH_BOX("{place: outdoors, ground-snow: 25 psf, beside: {house: {eave: 1500, depth: 20 "
                 "ft, slope: 25 deg}}}"));
    cr_assert(!case_if_any(&below, "snow/drift") && !case_if_any(&below, "snow/slid"));
    struct result alone =
        judged_text(HIGH_BOX("{place: outdoors, ground-snow: 25 psf, beside: none}"));
    cr_assert(!case_if_any(&alone, "snow/slid") && !cautioned(&alone, "often stands against"));
    struct result unsaid = judged_text(HIGH_BOX("{place: outdoors, ground-snow: 25 psf}"));
    cr_assert(cautioned(&unsaid, "often stands against a house"));
}

/* A roof on posts alone (ASCE 7-22 Figure 27.3-4, loads.md 5.3), slope 12.53 deg, gust factor 0.85:
 * pushed with the mean of the halves between 7.5 deg (0.9, 1.5: 1.2) and 15 deg (1.3, 1.6: 1.45),
 * lifted with that of (-0.6, -1.0) and the blocked (-2.1, -0.6: 1.35). Its own sticks are
 * hidden under it but for the four posts, 38 mm or so wide. */
Test(weather_frame, wind_on_a_roof_without_walls) {
    struct result result =
        judged_text(HIGH_BOX("{place: outdoors, wind: 40 m/s, exposure: B, beside: none}"));
    double q = wind_q(0.70), share = (atan2(0.2, 0.9) * 180 / acos(-1.0) - 7.5) / 7.5;
    double push = 0.85 * (1.2 + share * 0.25), lift = 0.85 * (0.8 + share * 0.55);
    const struct case_result *in = case_if_any(&result, "wind-left");
    const struct case_result *out = case_if_any(&result, "wind-left/out");
    double down = 0.0, up = 0.0;
    cr_assert(in && out);
    for (int s = 0; s < 4; s++) {
        down += in->reactions[s][2];
        up -= out->reactions[s][2];
    }
    NEAR_REL(down, push * q * WIDE * DEEP, 1e-9);
    NEAR_REL(up, lift * q * WIDE * DEEP, 1e-9);
}

/* A goal of three sticks 38 x 38 mm, 2 m high and 1 m wide, nothing on it: 2.0 q on each stick's
 * own area, front and side (ASCE 7-16 Table 29.4-2: they fill under a tenth of the outline). */
Test(weather_frame, wind_on_bare_sticks) {
    struct result result =
        judged_text("batten: 1\nunits: si\nself-weight: no\n"
                    "sticks: {bar: {size: [38, 38], material: {E: 10 GPa, density: 450}}}\n"
                    "connections: {default: rigid}\n"
                    "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [0, 0, 2000], d: [1000, 0, 2000]}\n"
                    "members: {ac: {from: a, to: c, stick: bar}, bd: {from: b, to: d, stick: bar}, "
                    "cd: {from: c, to: d, stick: bar}}\nsupports: {a: fixed, b: fixed}\n"
                    "site: {place: outdoors, wind: 40 m/s, exposure: C}\n");
    const struct case_result *front = case_if_any(&result, "wind-front");
    const struct case_result *left = case_if_any(&result, "wind-left");
    cr_assert(front && left);
    NEAR_REL(-front->reactions[0][1] - front->reactions[1][1], 2.0 * wind_q(0.85) * 0.038 * 5,
             1e-9);
    NEAR_REL(-left->reactions[0][0] - left->reactions[1][0], 2.0 * wind_q(0.85) * 0.038 * 4, 1e-9);
}
