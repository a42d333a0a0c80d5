/* Sheets under weather, their screws and hinges: by hand, with the span table of loads.md 2.3, the
 * envelope of 5.6 and the screw values of joints.md 1. */
#include "check/hinge.h"
#include "check/sheet.h"
#include "margin/margin.h"

#include "judged.h"
#include "redo.h"

#include <math.h>

TestSuite(panels, .init = set_up, .fini = tear_down);

static const double FOOT = 0.3048, INCH = 0.0254, POUND = 4.4482216152605, G = 9.80665;
static const double RIGHT = 3.14159265358979323846 / 2.0;
#define PSF (POUND / (FOOT * FOOT))

static struct cited plain(double value) {
    return (struct cited){value, "", MARK_TRADE};
}

static struct rating span(const char *sheet, double kg, double m, double height) {
    struct working working = {.arena = arena};
    const struct sheet_span_input input = {
        .sheet = sheet,
        .span = m,
        .height = height,
        .press = {.snow = kg * G, .with_snow = 1.0, .with_weight = 1.0}};
    struct rating rating = check_sheet_span(&input, &working);
    cr_assert(redo_all(&working) > 0);
    return rating;
}

/* Twin-wall 6 mm: 900, 800, 650, 500 mm at 50, 80, 100, 120 kg/m2. Between 50 and 80 the 800 holds:
 * 0.85 m at 60 kg/m2 fails, which a straight line between the rows (867 mm) would pass. */
Test(panels, the_next_higher_load_holds) {
    NEAR_REL(span("twin-wall-6mm", 50.0, 0.45, 0.0).ratio, 0.5, 1e-12);
    NEAR_REL(span("twin-wall-6mm", 60.0, 0.85, 0.0).limit, 0.8, 1e-12);
    NEAR_REL(span("twin-wall-6mm", 60.0, 0.85, 0.0).ratio, 0.85 / 0.8, 1e-12);
    NEAR_REL(span("twin-wall-6mm", 120.0, 0.45, 0.0).ratio, 0.9, 1e-12);
}

Test(panels, outside_the_table_is_not_covered) {
    cr_assert(!span("twin-wall-6mm", 121.0, 0.1, 0.0).covered, "past the last load");
    cr_assert(!span("twin-wall-4mm", 51.0, 0.1, 0.0).covered, "past its only load");
    cr_assert(!span("plywood-1/2in", 10.0, 0.1, 0.0).covered, "no row");
    cr_assert(!span("twin-wall-4mm", 10.0, 0.1, 1.0).covered, "no roof over 3 ft");
    char endless[200] = "";
    memset(endless, 'x', sizeof endless - 1);
    cr_assert(!span(endless, 10.0, 0.1, 0.0).covered, "a name longer than any row");
    NEAR_REL(span("twin-wall-4mm", 10.0, 0.2, 0.9).ratio, 0.5, 1e-12);
}

/* At 60 degrees: 100 x 0.5 + 1000 x 0.25 = 300 Pa in; 0.6 x 600 x 1.6 - 0.6 x 100 x 0.5 = 546 Pa
 * out, which is 55.7 kg/m2: the row of 80. */
Test(panels, suction_counts_where_it_is_more) {
    struct working working = {.arena = arena};
    struct sheet_span_input input = {.sheet = "twin-wall-6mm",
                                     .span = 0.4,
                                     .press = {.weight = 100.0,
                                               .snow = 1000.0,
                                               .wind = 600.0,
                                               .slope = RIGHT * 2.0 / 3.0,
                                               .in = plain(0.0),
                                               .out = plain(1.6),
                                               .with_weight = 1.0,
                                               .with_snow = 1.0}};
    check_sheet_span(&input, &working);
    redo_all(&working);
    NEAR_REL(noted(&working, "p") * PSF, 300.0, 1e-9);
    struct working out = {.arena = arena};
    input.press.with_weight = input.press.with_wind = 0.6;
    input.press.with_snow = 0.0;
    struct rating rating = check_sheet_span(&input, &out);
    redo_all(&out);
    NEAR_REL(noted(&out, "p") * PSF, 546.0, 1e-9);
    NEAR_REL(rating.limit, 0.8, 1e-12);
}

/* 0.6 x 10 psf x 2.5 - 0.6 x 1 psf = 14.4 psf; screws 12 in apart, 1 ft of sheet: 14.4 lb. */
static struct rating screw_into(double gravity, double wind, struct dowel_layer side) {
    struct working working = {.arena = arena};
    struct dowel dowel;
    cr_assert(dowel_find(DOWEL_SCREW, NAIL_COMMON, "8", &dowel), "No.8");
    dowel_set_length(&dowel, side.thickness + 10.0 * 0.164 * INCH);
    const struct sheet_screw_input input = {
        .press = {.weight = PSF,
                  .wind = wind * PSF,
                  .edge = plain(2.5),
                  .with_weight = 0.6,
                  .with_wind = 0.6},
        .spacing = 12.0 * INCH,
        .width = FOOT,
        .dowel = &dowel,
        .side = side,
        .main = {.thickness = INFINITY, .gravity = plain(gravity)},
        .service = {.duration = DURATION_TEN_MINUTES}};
    struct rating rating = check_sheet_screw(&input, &working);
    cr_assert(redo_all(&working) > 0);
    return rating;
}

static struct rating screw(double wind, struct dowel_layer side) {
    return screw_into(0.42, wind, side);
}

/* Plywood 1/2 in: the head goes through at 690 pi 0.312 0.42^2 0.5 x 1.6 = 95.4 lb, the thread
 * holds 2850 x 0.42^2 x 0.164 x (2/3 x 2.14) x 1.6 = 188 lb. */
Test(panels, a_screw_in_plywood) {
    struct rating rating =
        screw(10.0, (struct dowel_layer){.thickness = 0.5 * INCH, .gravity = plain(0.42)});
    NEAR_REL(rating.demand / POUND, 14.4, 1e-9);
    NEAR_ABS(rating.limit / POUND, 95.44, 0.05);
}

/* Under 3/4 in of heavy wood the thread gives first: the head goes through G 0.7 at 690 pi 0.312
 * 0.7^2 0.75 x 1.6 = 398 lb, the thread of 2/3 x 2.39 in holds 82.45 x 1.593 x 1.6 = 210.2 lb. */
Test(panels, a_screw_under_heavy_wood) {
    struct rating rating =
        screw(10.0, (struct dowel_layer){.thickness = 0.75 * INCH, .gravity = plain(0.7)});
    NEAR_ABS(rating.limit / POUND, 210.2, 0.05);
    SAME_TEXT(rating.governs, "pulled out of the wood");
    struct rating plywood =
        screw(10.0, (struct dowel_layer){.thickness = 0.5 * INCH, .gravity = plain(0.42)});
    SAME_TEXT(plywood.governs, "head pulled through the sheet");
}

/* Heads have no value in wood under 5/16 in: not covered, until the thread gives: 82.45 x 2/3
 * x 1.89 x 1.6 = 166.2 lb under 0.6 x 150 x 2.5 - 0.6 = 224.4 lb. */
Test(panels, a_screw_in_thin_plywood) {
    const struct dowel_layer thin = {.thickness = 0.25 * INCH, .gravity = plain(0.42)};
    struct rating light = screw(10.0, thin), strong = screw(150.0, thin);
    cr_assert(!light.covered);
    SAME_TEXT(light.missing, "the side member is thinner or thicker than the published values go");
    NEAR_REL(light.demand / POUND, 14.4, 1e-9);
    NEAR_ABS(strong.limit / POUND, 166.2, 0.05);
    NEAR_REL(strong.ratio, 224.4 / (strong.limit / POUND), 1e-9);
}

/* No withdrawal value holds for wood lighter than 0.31. */
Test(panels, a_screw_into_light_wood) {
    struct rating rating = screw_into(
        0.30, 10.0, (struct dowel_layer){.thickness = 0.5 * INCH, .gravity = plain(0.42)});
    cr_assert(!rating.covered && isnan(rating.ratio));
    SAME_TEXT(rating.missing, "the wood is lighter or heavier than the published values go");
    NEAR_REL(rating.demand / POUND, 14.4, 1e-9);
}

/* Nothing is published under a head on plastic: not covered, until the thread itself gives: 2850 x
 * 0.42^2 x 0.164 x (2/3 x 1.64) x 1.6 = 144 lb, under 0.6 x 100 x 2.5 - 0.6 = 149.4 lb. */
Test(panels, a_screw_in_plastic) {
    const struct dowel_layer plastic = {.thickness = 0.0, .steel = true};
    struct rating light = screw(10.0, plastic), strong = screw(100.0, plastic);
    cr_assert(!light.covered);
    NEAR_REL(light.demand / POUND, 14.4, 1e-9);
    cr_assert(strong.covered);
    NEAR_REL(strong.demand / POUND, 149.4, 1e-9);
    NEAR_ABS(strong.limit / POUND, 144.2, 0.3);
    cr_assert(strong.ratio > 1.0);
}

/* 10 lb on an upright line of hinges 20 in apart, 24 in wide: 10 (0.5 + 24/40) = 11 lb. Wind 10 psf
 * on 4 ft2: open 0.5 x 0.6 x 10 x 4 x 2.2 = 26.4 lb, shut 0.25 x 0.6 x 10 x 4 x 1.6 = 9.6 lb. */
static struct rating hinge_on(double gravity, double incline, double wind, bool opens) {
    struct working working = {.arena = arena};
    struct dowel dowel;
    cr_assert(dowel_find(DOWEL_SCREW, NAIL_COMMON, "8", &dowel), "No.8");
    dowel_set_length(&dowel, 1.7 * INCH);
    const struct hinge_input input = {
        .weight = 10.0 * POUND,
        .deep = 24.0 * INCH,
        .apart = 20.0 * INCH,
        .incline = incline,
        .area = 4.0 * FOOT * FOOT,
        .wind = wind * PSF,
        .shut = plain(1.6),
        .open = plain(2.2),
        .opens = opens,
        .with_weight = 1.0,
        .with_wind = 0.6,
        .count = 2,
        .screw = {.dowel = &dowel,
                  .side = {.thickness = 0.06 * INCH, .steel = true},
                  .main = {.thickness = INFINITY, .gravity = plain(gravity)},
                  .service = {.duration = DURATION_TEN_MINUTES}}};
    struct rating rating = check_hinge(&input, &working);
    cr_assert(redo_all(&working) > 0);
    return rating;
}

static struct rating hinge(double incline, double wind, bool opens) {
    return hinge_on(0.42, incline, wind, opens);
}

Test(panels, hinges_hanging_shut_and_open) {
    struct rating calm = hinge(RIGHT, 0.0, true);
    NEAR_REL(calm.demand / POUND, 11.0 / 2.0, 1e-9);
    SAME_TEXT(calm.governs, "hanging there");
    NEAR_REL(hinge(0.0, 0.0, true).demand / POUND, 5.0 / 2.0, 1e-9);
    NEAR_REL(hinge(RIGHT, 10.0, true).demand / POUND, (11.0 + 26.4) / 2.0, 1e-9);
    struct rating shut = hinge(RIGHT, 10.0, false);
    NEAR_REL(shut.demand / POUND, (11.0 + 9.6) / 2.0, 1e-9);
    SAME_TEXT(shut.governs, "shut in wind");
}

/* Where its screws have no value the hinge has none, and is not said to be anyhow. */
Test(panels, a_hinge_on_light_wood) {
    struct rating rating = hinge_on(0.30, RIGHT, 0.0, false);
    cr_assert(!rating.covered && isnan(rating.ratio));
    NEAR_REL(rating.demand / POUND, 11.0 / 2.0, 1e-9);
    SAME_TEXT(rating.governs, "");
}

/* ---- in a frame ---- */

#define BOX                                                                                        \
    "batten: 1\n"                                                                                  \
    "sticks:\n"                                                                                    \
    "  post: {size: 2x2, species: spruce-pine-fir, grade: no-2}\n"                                 \
    "connections: {default: rigid}\n"                                                              \
    "joints: {a: [0, 0, 0], b: [36, 0, 0], c: [36, 24, 0], d: [0, 24, 0],\n"                       \
    "  e: [0, 0, 30], f: [36, 0, 30], g: [36, 24, 30], h: [0, 24, 30]}\n"                          \
    "members: {p1: {from: a, to: e, stick: post}, p2: {from: b, to: f, stick: post},\n"            \
    "  p3: {from: c, to: g, stick: post}, p4: {from: d, to: h, stick: post},\n"                    \
    "  r1: {from: e, to: f, stick: post}, r2: {from: h, to: g, stick: post},\n"                    \
    "  s1: {from: e, to: h, stick: post}, s2: {from: f, to: g, stick: post}}\n"                    \
    "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n"
#define ROOF "panels: {roof: {corners: [e, f, g, h], sheet: twin-wall-6mm, "
#define SNOWY "site: {place: outdoors, ground-snow: 25 psf, exposure: C}\n"
#define WINDY "site: {place: outdoors, wind: 90 mph, exposure: B}\n"

/* A level roof 24 in deep under 3 ft: 25 psf x 0.8 x 1.2 = 24 psf (Ce 1, risk category 1) and 0.27
 * psf of its own are 118 kg/m2: 500 mm, so 24 in is 1.22 times too much. */
Test(panels, a_level_roof_under_snow) {
    struct result result =
        judged_text(BOX ROOF "held: screwed, screw: 8, spacing: 12 in}}\n" SNOWY);
    const struct check *check = check_of(&result, "panel/roof");
    NEAR_REL(check->demand / INCH, 24.0, 1e-9);
    NEAR_REL(check->limit, 0.5, 1e-9);
    cr_assert(check->verdict == VERDICT_FAILS);
    cr_assert(check_if_any(&result, "panel-screw/roof") == NULL, "no wind, no uplift");
    cr_assert(redo_all(check->working) > 0);
}

/* The same with a stick under its middle spans 12 in. */
Test(panels, a_stick_between_halves_the_span) {
    struct result result = judged_text(
        "batten: 1\n"
        "sticks: {post: {size: 2x2, species: spruce-pine-fir, grade: no-2}}\n"
        "connections: {default: rigid}\n"
        "joints: {a: [0, 0, 0], b: [36, 0, 0], c: [36, 24, 0], d: [0, 24, 0],\n"
        "  e: [0, 0, 30], f: [36, 0, 30], g: [36, 24, 30], h: [0, 24, 30],\n"
        "  m: [0, 12, 30], n: [36, 12, 30]}\n"
        "members: {p1: {from: a, to: e, stick: post}, p2: {from: b, to: f, stick: post},\n"
        "  p3: {from: c, to: g, stick: post}, p4: {from: d, to: h, stick: post},\n"
        "  r1: {from: e, to: f, stick: post}, r2: {from: h, to: g, stick: post},\n"
        "  s1: {from: e, to: h, stick: post}, s2: {from: f, to: g, stick: post},\n"
        "  mid: {from: m, to: n, stick: post}}\n"
        "supports: {a: fixed, b: fixed, c: fixed, d: fixed}\n" ROOF
        "held: screwed, screw: 8, spacing: 12 in}}\n" SNOWY);
    NEAR_REL(check_of(&result, "panel/roof")->demand / INCH, 12.0, 1e-9);
}

Test(panels, what_is_not_screwed_has_no_value_in_wind) {
    static const char *const HELD[] = {"loose", "stapled", "taped", "clipped", "sliding"};
    for (size_t k = 0; k < sizeof HELD / sizeof *HELD; k++) {
        struct result result =
            judged_text(arena_print(arena, "%sheld: %s}}\n%s", BOX ROOF, HELD[k], WINDY));
        cr_assert(check_of(&result, "panel-screw/roof")->verdict == VERDICT_NOT_COVERED, "%s",
                  HELD[k]);
    }
}

Test(panels, indoors_nothing_presses) {
    struct result result = judged_text(BOX ROOF "held: loose}}\nsite: {place: indoors}\n");
    cr_assert(check_if_any(&result, "panel/roof") == NULL);
    cr_assert(check_if_any(&result, "panel-screw/roof") == NULL);
}

/* A lid hinged at the back, 24 lb, level hinges: 12 lb on each, 6 lb on each of two screws. */
Test(panels, a_lid_on_its_hinges) {
    const char *lid = BOX ROOF "held: hinged, hinge: [h, g], opens: yes, framed: post, screw: 8, "
                               "weight: 24 lb}}\n";
    struct result calm = judged_text(arena_print(arena, "%ssite: {place: outdoors}\n", lid));
    NEAR_REL(check_of(&calm, "hinge/roof")->demand / POUND, 6.0, 1e-9);
    struct result windy = judged_text(arena_print(arena, "%s%s", lid, WINDY));
    cr_assert(check_of(&windy, "hinge/roof")->demand > 6.0 * POUND);
    cr_assert(cautioned(&windy, "give it a stay"));
    cr_assert(cautioned(&windy, "plastic sheet grows in the sun"));
}

/* Snow raised past the last load of the table: 120 kg/m2 = 24.578 psf less 0.266 psf of its own,
 * over 0.8 x 1.2 (under 3 ft, Ce 1, risk category 1): 25.24 psf on the ground, though nothing
 * fails. */
Test(panels, a_margin_ends_where_the_table_does) {
    const char *text =
        BOX "panels: {roof: {corners: [e, f, g, h], sheet: twin-wall-10mm, held: screwed, screw: "
            "8, spacing: 12 in}}\n" SNOWY;
    struct margin_answer *answer = margin_find(arena, frame_of_text(arena, text));
    const struct margin *snow = &answer->loads[MARGIN_SNOW];
    cr_assert(snow->reach == REACH_FOUND);
    NEAR_REL(snow->value, (120.0 * G - 1.70 * G) / 0.96, 1e-8);
    cr_assert_str_eq(snow->first, "panel/roof");
}
