/* Panels as snow and wind meet them, and what no panel covers: areas and coefficients by hand
 * (tables of loads.md 5.3, 5.5 and 5.6). */
#include "base/vector.h"
#include "loaded.h"
#include "loads/bare.h"
#include "loads/weather.h"

#include <math.h>

TestSuite(covers, .init = set_up, .fini = tear_down);

static const double INCH = 0.0254, DEGREE = 3.14159265358979323846 / 180.0;

/* A box 1.2 m wide (x) and 0.9 m deep (y), 0.4 m high in front and 0.6 m at the back. */
#define BOX(joints, members, panels)                                                               \
    LOADED                                                                                         \
    "joints: {fl0: [0, 0, 0], fr0: [1200, 0, 0], bl0: [0, 900, 0], br0: [1200, 900, 0], "          \
    "fl1: [0, 0, 400], fr1: [1200, 0, 400], bl1: [0, 900, 600], br1: [1200, 900, 600]" joints      \
    "}\n"                                                                                          \
    "members: {fl: {from: fl0, to: fl1, stick: bar}, fr: {from: fr0, to: fr1, stick: bar}, "       \
    "bl: {from: bl0, to: bl1, stick: bar}, br: {from: br0, to: br1, stick: bar}, "                 \
    "front: {from: fl1, to: fr1, stick: bar}, back: {from: bl1, to: br1, stick: bar}, "            \
    "left: {from: fl1, to: bl1, stick: bar}, right: {from: fr1, to: br1, stick: bar}" members      \
    "}\n"                                                                                          \
    "supports: {fl0: fixed, fr0: fixed, bl0: fixed, br0: fixed}\n"                                 \
    "site: {place: outdoors, wind: 40 m/s, exposure: B}\npanels: {" panels "}\n"
#define SHEETED "sheet: twin-wall-6mm, held: loose}"
#define FRONT "front: {corners: [fl0, fr0, fr1, fl1], " SHEETED ", "
#define BACK "back: {corners: [bl0, br0, br1, bl1], " SHEETED ", "
#define LEFT "left: {corners: [fl0, bl0, bl1, fl1], " SHEETED ", "
#define RIGHT "right: {corners: [fr0, br0, br1, fr1], " SHEETED ", "
#define LID "lid: {corners: [fl1, fr1, br1, bl1], " SHEETED ", "

static struct bare bare_of(const struct loads *loads) {
    const struct weather *weather = loads->weather;
    return (struct bare){loads->model, loads->shelves, weather->covers, weather->cover_count,
                         &weather->wind};
}

static struct lattice lattice_of(const char *text, enum wind_from from) {
    struct bare bare = bare_of(loads_of_text(text));
    return bare_lattice(&bare, from, WIND_IN);
}

/* ---- what lies over what ---- */

/* The level way down the slope, wherever it stands: 0.8 m along x, along y; a level one 1.2 m. */
Test(covers, level_run) {
    static const struct {
        const char *corners;
        double run;
    } rows[] = {{"a: [300, 100, 500], b: [300, 1300, 500], c: [1100, 1300, 700], d: [1100, 100, "
                 "700]",
                 0.8},
                {"a: [100, 300, 500], b: [1300, 300, 500], c: [1300, 1100, 300], d: [100, 1100, "
                 "300]",
                 0.8},
                {"a: [100, 300, 500], b: [1300, 300, 500], c: [1300, 1100, 500], d: [100, 1100, "
                 "500]",
                 1.2}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct model *model = model_of_text(arena_print(
            arena,
            LOADED "joints: {%s}\nmembers: {s: {from: a, to: b, stick: bar}, t: {from: c, to: d, "
                   "stick: bar}}\nsupports: {a: fixed, b: fixed, c: fixed, d: fixed}\n"
                   "site: {place: outdoors}\npanels: {roof: {corners: [a, b, c, d], " SHEETED "}\n",
            rows[k].corners));
        NEAR_REL(covers_of(arena, model)[0].level_run, rows[k].run, 1e-12);
    }
}

/* Heights are those over the lowest support: a lid from 0.4 m to 0.6 m over ground at 2 m; the box
 * around its joints is 0.9 m by 0.6 m from the left. */
Test(covers, heights_above_the_ground) {
    const struct loads *loads = loads_of_text(
        LOADED "joints: {a: [0, 0, 2000], b: [1200, 0, 2000], c: [1200, 900, 2000], d: [0, 900, "
               "2100], e: [0, 0, 2400], f: [1200, 0, 2400], g: [1200, 900, 2600], h: [0, 900, "
               "2600]}\n"
               "members: {ae: {from: a, to: e, stick: bar}, bf: {from: b, to: f, stick: bar}, "
               "cg: {from: c, to: g, stick: bar}, dh: {from: d, to: h, stick: bar}}\n"
               "supports: {d: fixed, a: fixed, b: fixed, c: fixed}\n"
               "site: {place: outdoors, wind: 40 m/s}\n"
               "panels: {lid: {corners: [e, f, g, h], " SHEETED "}\n");
    NEAR_REL(loads->weather->covers[0].low, 0.4, 1e-9);
    NEAR_REL(loads->weather->covers[0].top, 0.6, 1e-9);
    NEAR_REL(loads->weather->wind.question.height, 0.6, 1e-9);
    struct bare bare = bare_of(loads);
    NEAR_REL(bare_lattice(&bare, WIND_FROM_LEFT, WIND_IN).outline, 0.9 * 0.6, 1e-9);
    NEAR_REL(bare_lattice(&bare, WIND_FROM_BACK, WIND_IN).outline, 1.2 * 0.6, 1e-9);
}

/* A sheet half-way up a box with a lid: no wind on it, and none of it is in the way. */
Test(covers, a_sheet_under_the_lid_is_inside) {
    const struct loads *loads = loads_of_text(
        BOX(", a: [0, 0, 200], b: [1200, 0, 200], c: [1200, 900, 200], d: [0, 900, 200]", "",
            LID "inner: {corners: [a, b, c, d], " SHEETED));
    const struct weather *weather = loads->weather;
    const struct cover *inner = &weather->covers[1];
    double force[3];
    cr_assert(weather->covers[0].kind == COVER_ROOF && inner->kind == COVER_INSIDE);
    wind_on_cover(&weather->wind, &weather->box, inner, WIND_FROM_LEFT, WIND_OUT, force);
    NEAR_ABS(vector_length(force), 0.0, 0.0);
    cr_assert(weather->box.covered && !weather->box.walls && weather->box.opens == 0);
    /* from the front: four posts 40 mm wide, the rest lies under the lid */
    struct bare bare = bare_of(loads);
    NEAR_REL(bare_lattice(&bare, WIND_FROM_FRONT, WIND_IN).sticks, 0.04 * (0.4 + 0.4 + 0.6 + 0.6),
             1e-9);
}

/* ---- the box as a whole ---- */

static struct wind_box box_of(const char *text) {
    return loads_of_text(text)->weather->box;
}

/* A roof and walls on three sides of four is a box with a hole, unless a house closes it; with all
 * four, with two or with no roof it is not. */
Test(covers, a_box_with_a_hole) {
    static const char HOUSE[] = "beside: {house: {eave: 3 m, depth: 6 m, slope: 25 deg}}, exposure";
    const char *three = BOX("", "", LID FRONT LEFT RIGHT);
    cr_assert(box_of(three).gapes);
    cr_assert(!box_of(BOX("", "", LID FRONT LEFT RIGHT BACK)).gapes);
    cr_assert(!box_of(BOX("", "", LID FRONT LEFT)).gapes);
    cr_assert(!box_of(BOX("", "", FRONT LEFT RIGHT)).gapes);
    const char *at = strstr(three, "exposure");
    const char *beside =
        arena_print(arena, "%.*s%s%s", (int)(at - three), three, HOUSE, at + strlen("exposure"));
    cr_assert(!box_of(beside).gapes);
}

/* Through the hole the wind presses more: lid 0.9 in and 1.7 out, walls 1.6 and 2.0; the wall
 * behind takes what 1.3 on the whole box leaves over 1.6: nothing. */
Test(covers, coefficients_of_a_box_with_a_hole) {
    const struct loads *loads = loads_of_text(BOX("", "", LID FRONT LEFT RIGHT));
    const struct weather *weather = loads->weather;
    static const struct {
        size_t cover;
        enum wind_from from;
        enum wind_way way;
        double outward;
    } rows[] = {{0, WIND_FROM_LEFT, WIND_IN, -0.9}, {0, WIND_FROM_LEFT, WIND_OUT, 1.7},
                {1, WIND_FROM_LEFT, WIND_IN, 2.0},  {2, WIND_FROM_LEFT, WIND_IN, -1.6},
                {3, WIND_FROM_LEFT, WIND_IN, 0.0},  {3, WIND_FROM_LEFT, WIND_OUT, 2.0},
                {2, WIND_FROM_LEFT, WIND_OUT, 0.0}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const struct cover *cover = &weather->covers[rows[k].cover];
        double force[3];
        wind_on_cover(&weather->wind, &weather->box, cover, rows[k].from, rows[k].way, force);
        NEAR(vector_dot(force, cover->normal), rows[k].outward * weather->wind.q * cover->area,
             1e-9, 1e-9);
    }
    bool told = false;
    for (size_t k = 0; k < weather->cautions.count; k++)
        told |= strstr(weather->cautions.items[k], "one side has no panel") != NULL;
    cr_assert(told);
}

/* A lid propped by 60 deg: 2.2 q A along its normal, half of it turned to that of the shut lid. */
#define PROPPED(hinge)                                                                             \
    BOX("", "",                                                                                    \
        FRONT BACK LEFT RIGHT "lid: {corners: [fl1, fr1, br1, bl1], sheet: twin-wall-6mm, held: "  \
                              "hinged, hinge: " hinge ", opens: 60 deg}")

static double plate_of(const struct loads *loads) {
    return 2.2 * loads->weather->wind.q * 1.2 * hypot(0.9, 0.2);
}

/* It is the largest load of all: at the hinges |open - shut/2| = sqrt(1 + 1/4 - 1/2) of it. */
Test(covers, a_propped_lid_is_the_largest_load) {
    const struct loads *loads = loads_of_text(PROPPED("[bl1, br1]"));
    double plate = plate_of(loads);
    const struct load_set *set = set_of(loads, "wind-front/open");
    NEAR_REL(set->largest, plate * sqrt(0.75), 1e-9);
    /* at each free corner a quarter, square to the shut lid, which is 0.9 m deep and 0.2 m high */
    NEAR_ABS(set->joints[4][0], 0.0, 1e-9);
    NEAR_REL(set->joints[4][1], plate / 4.0 * -0.2 / hypot(0.9, 0.2), 1e-9);
    NEAR_REL(set->joints[5][2], plate / 4.0 * 0.9 / hypot(0.9, 0.2), 1e-9);
}

/* The same hinged in front: wind from there presses it shut, and its free corners are at the back.
 */
Test(covers, a_lid_hinged_in_front) {
    const struct loads *loads = loads_of_text(PROPPED("[fl1, fr1]"));
    double plate = plate_of(loads);
    const struct load_set *set = set_of(loads, "wind-front/open");
    for (int j = 6; j < 8; j++) {
        NEAR_REL(set->joints[j][1], plate / 4.0 * 0.2 / hypot(0.9, 0.2), 1e-9);
        NEAR_REL(set->joints[j][2], plate / 4.0 * -0.9 / hypot(0.9, 0.2), 1e-9);
    }
}

/* The worst on one sheet: walls 1.2 in and 1.6 out, a lid 0.6, 1.3 and 2.5 at its edges; where
 * another one can stand open 1.6 and 2.0, 0.9, 1.7 and 2.9. A lid that opens is no hole to itself.
 */
Test(covers, the_worst_on_a_sheet) {
    static const char opening[] =
        "lid: {corners: [fl1, fr1, br1, bl1], sheet: twin-wall-6mm, held: "
        "loose, opens: yes}";
    static const struct {
        const char *text;
        double wall[3], lid[3];
    } rows[] = {{BOX("", "", BACK FRONT LEFT RIGHT LID), {1.2, 1.6, 1.6}, {0.6, 1.3, 2.5}},
                {BOX("", "", BACK FRONT LEFT RIGHT "%s"), {1.6, 2.0, 2.0}, {0.6, 1.3, 2.5}},
                {BOX("", "", BACK FRONT LEFT "%s"), {1.6, 2.0, 2.0}, {0.9, 1.7, 2.9}}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const char *at = strstr(rows[k].text, "%s");
        const char *text = at ? arena_print(arena, "%.*s%s%s", (int)(at - rows[k].text),
                                            rows[k].text, opening, at + 2)
                              : rows[k].text;
        const struct weather *weather = loads_of_text(text)->weather;
        struct cover_wind wall = wind_worst_on_cover(&weather->box, &weather->covers[0]);
        struct cover_wind lid =
            wind_worst_on_cover(&weather->box, &weather->covers[weather->cover_count - 1]);
        const double got[2][3] = {{wall.in.value, wall.out.value, wall.edge.value},
                                  {lid.in.value, lid.out.value, lid.edge.value}};
        for (int c = 0; c < 3; c++) {
            NEAR_REL(got[0][c], rows[k].wall[c], 1e-12);
            NEAR_REL(got[1][c], rows[k].lid[c], 1e-12);
        }
    }
}

/* A fence of one sheet: 1.3 along the wind from either side, nothing from its ends. */
Test(covers, a_lone_wall) {
    const struct loads *loads = loads_of_text(
        LOADED "joints: {a: [0, 0, 0], b: [1500, 0, 0], c: [1500, 0, 900], d: [0, 0, 900]}\n"
               "members: {l: {from: a, to: d, stick: bar}, r: {from: b, to: c, stick: bar}}\n"
               "supports: {a: fixed, b: fixed}\nsite: {place: outdoors, wind: 40 m/s}\n"
               "panels: {fence: {corners: [a, b, c, d], " SHEETED "}\n");
    const struct weather *weather = loads->weather;
    static const double along[][2] = {{0, 0}, {0, 0}, {0, 1.3}, {0, -1.3}};
    for (int from = 0; from < WIND_SIDES; from++)
        for (int way = WIND_IN; way <= WIND_OUT; way++) {
            double force[3];
            wind_on_cover(&weather->wind, &weather->box, &weather->covers[0], (enum wind_from)from,
                          (enum wind_way)way, force);
            for (int c = 0; c < 2; c++)
                NEAR(force[c], along[from][c] * weather->wind.q * 1.35, 1e-9, 1e-9);
        }
}

/* A roof on posts alone, 1.2 m wide and 1 m deep: gust factor 0.85 times the mean of both halves.
 * Level 0.75 down and 0.85 up; at 15 deg 1.45 and 1.35; half-way to 22.5 deg 1.6 and 1.45; past 45
 * deg as at 45: 2.35 and 1.8. */
Test(covers, a_roof_without_walls) {
    static const double rows[][3] = {
        {0, 0.75, 0.85}, {15, 1.45, 1.35}, {18.75, 1.6, 1.45}, {45, 2.35, 1.8}, {55, 2.35, 1.8}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        double back = 1000.0 + 1000.0 * tan(rows[k][0] * DEGREE);
        const struct loads *loads = loads_of_text(arena_print(
            arena,
            LOADED "joints: {a: [0, 0, 0], b: [1200, 0, 0], c: [1200, 1000, 0], d: [0, 1000, 0], "
                   "e: [0, 0, 1000], f: [1200, 0, 1000], g: [1200, 1000, %.9f], h: [0, 1000, "
                   "%.9f]}\n"
                   "members: {ae: {from: a, to: e, stick: bar}, bf: {from: b, to: f, stick: bar}, "
                   "cg: {from: c, to: g, stick: bar}, dh: {from: d, to: h, stick: bar}}\n"
                   "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n"
                   "site: {place: outdoors, wind: 40 m/s}\n"
                   "panels: {roof: {corners: [e, f, g, h], " SHEETED "}\n",
            back, back));
        const struct weather *weather = loads->weather;
        for (int way = WIND_IN; way <= WIND_OUT; way++) {
            double force[3], sign = way == WIND_IN ? -1.0 : 1.0;
            wind_on_cover(&weather->wind, &weather->box, &weather->covers[0], WIND_FROM_LEFT,
                          (enum wind_way)way, force);
            NEAR_REL(force[2], sign * 0.85 * rows[k][1 + way] * weather->wind.q * 1.2, 1e-8);
        }
    }
}

/* ---- sticks and trays ---- */

/* With a wall at the back alone, wind from the front meets the two front posts, the front rail and
 * the two side rails, which rise by 0.2 m; wind from the back meets nothing but the wall. */
Test(covers, sticks_behind_a_wall) {
    const char *text = BOX("", "", BACK);
    NEAR_REL(lattice_of(text, WIND_FROM_FRONT).sticks, 0.04 * (0.4 + 0.4 + 1.2 + 0.2 + 0.2), 1e-9);
    NEAR_ABS(lattice_of(text, WIND_FROM_BACK).sticks, 0.0, 0.0);
}

/* Rails 1 m long in the direction (0.8, 0.6), 0.5 m apart, clear of the origin: from the left the
 * shelf is 1 x 0.6 + 0.54 x 0.8 m wide, from the front 1 x 0.8 + 0.54 x 0.6. Trays are 2.5 in high,
 * round pots as high as wide. */
#define TURNED(trays, more)                                                                        \
    LOADED                                                                                         \
    "joints: {a: [500, 200, 500], b: [1300, 800, 500], c: [200, 600, 500], d: [1000, 1200, "       \
    "500], e: [500, 200, 0], f: [1300, 800, 0]}\n"                                                 \
    "members: {near: {from: a, to: b, stick: bar}, far: {from: c, to: d, stick: bar}, "            \
    "ea: {from: e, to: a, stick: bar}, fb: {from: f, to: b, stick: bar}}\n"                        \
    "supports: {c: fixed, d: fixed, e: fixed, f: fixed}\n"                                         \
    "site: {place: outdoors, wind: 40 m/s}\nshelves: {s: {rails: [near, far], " trays "}" more     \
    "}\n"

Test(covers, trays_on_a_turned_shelf) {
    static const struct {
        const char *text;
        double high;
    } rows[] = {{TURNED("trays: {weight: 100 N}", ""), 2.5},
                {TURNED("trays: {kind: tray-1020-wet, count: 2}", ""), 2.5},
                {TURNED("trays: {kind: pot-1gal-wet, count: 5}", ""), 6.5},
                {TURNED("trays: {weight: 9 N}", ", bare: {rails: [near, far]}"), 2.5},
                {TURNED("trays: none", ""), 0}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        NEAR(lattice_of(rows[k].text, WIND_FROM_LEFT).trays,
             (0.6 + 0.54 * 0.8) * rows[k].high * INCH, 1e-9, 0);
        NEAR(lattice_of(rows[k].text, WIND_FROM_BACK).trays,
             (0.8 + 0.54 * 0.6) * rows[k].high * INCH, 1e-9, 0);
    }
}

/* The same with wind from the front: its outline is 1.1 m by 0.5 m; all of it is q times one
 * coefficient along the wind. Sticks: rails 40 mm high as wide as seen (0.8 m), posts 40 mm wide.
 */
Test(covers, wind_on_sticks_and_trays) {
    const struct loads *loads = loads_of_text(TURNED("trays: {weight: 100 N}", ""));
    const struct load_set *set = set_of(loads, "wind-front");
    double sticks = 2 * 0.8 * 0.04 + 2 * 0.5 * 0.04, trays = (0.8 + 0.54 * 0.6) * 2.5 * INCH;
    double solid = (sticks / 2.0 + trays) / (1.1 * 0.5), sum[3] = {0};
    for (size_t k = 0; k < set->on_segments.count; k++) {
        const struct segment_load *load = &set->on_segments.items[k];
        for (int c = 0; c < 3; c++)
            sum[c] += load->force[c] * (load->b - load->a);
    }
    double coefficient = 1.45 * (1.0 - pow(1.0 - solid, 1.5)) / solid;
    NEAR_REL(sum[1], coefficient * loads->weather->wind.q * (sticks + trays), 1e-9);
    NEAR_ABS(sum[0], 0.0, 1e-9);
    NEAR_ABS(sum[2], 0.0, 1e-9);
}

/* In a box that is shut all round nothing inside meets the wind. */
Test(covers, trays_in_a_shut_box) {
    const char *text =
        BOX(", a: [0, 0, 200], b: [1200, 0, 200], c: [1200, 900, 200], d: [0, 900, 200]",
            ", near: {from: a, to: b, stick: bar}, far: {from: d, to: c, stick: bar}",
            FRONT BACK LEFT RIGHT LID) "shelves: {s: {rails: [near, far], trays: {weight: 9 N}}}\n";
    for (int from = 0; from < WIND_SIDES; from++) {
        struct lattice lattice = lattice_of(text, (enum wind_from)from);
        NEAR_ABS(lattice.sticks, 0.0, 0.0);
        NEAR_ABS(lattice.trays, 0.0, 0.0);
    }
}

/* The limit of (1 - (1 - e)^1.5)/e as e goes to nothing is 1.5. */
Test(covers, coefficient_of_next_to_nothing) {
    NEAR_REL(lattice_coefficient(0.0, true), 1.5 * 1.45, 1e-12);
    NEAR_REL(lattice_coefficient(2e-9, true), 1.5 * 1.45, 1e-6);
}

/* ---- which cases ---- */

#define POST(joints, loads)                                                                        \
    LOADED "joints: {" joints "}\nmembers: {post: {from: a, to: b, stick: bar}}\n"                 \
           "supports: {a: fixed}\nsite: {place: outdoors, wind: 40 m/s}\n" loads

/* A load that the file gives for a side replaces what is made for that side, and for no other:
 * 2.0 q on 40 mm by 2 m. */
Test(covers, a_load_of_the_file_replaces_its_side) {
    const struct loads *loads =
        loads_of_text(POST("a: [0, 0, 0], b: [0, 0, 2000]",
                           "loads: [{case: wind-back, joint: b, force: [0, -5 N, 0]}]\n"));
    const struct load_set *back = set_of(loads, "wind-back"), *front = set_of(loads, "wind-front");
    cr_assert(back->on_segments.count == 0 && front->on_segments.count == 1);
    NEAR_REL(back->joints[1][1], -5.0, 1e-12);
    NEAR_REL(front->on_segments.items[0].force[1] * 2.0, 2.0 * loads->weather->wind.q * 0.04 * 2.0,
             1e-9);
    cr_assert(case_if_any(loads, "wind-left") && case_if_any(loads, "wind-right"));
}

/* A frame drawn in a plane meets wind from its two sides only. */
Test(covers, a_plane_frame_has_two_sides) {
    const struct loads *loads = loads_of_text(POST("a: [0, 0], b: [0, 2000]", ""));
    cr_assert(case_if_any(loads, "wind-left") && case_if_any(loads, "wind-right"));
    cr_assert(!case_if_any(loads, "wind-front") && !case_if_any(loads, "wind-back"));
}
