/* How much of a load until the first check fails. */
#include "in_arena.h"
#include "judged.h"
#include "margin/curves.h"
#include "margin/margin.h"
#include "near.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

static void quiet(void) {
    gsl_set_error_handler_off();
    set_up();
}

TestSuite(margin, .init = quiet, .fini = tear_down);

/* A simple beam of the user's own stuff on two supports, one line load of trays: only sag has a
 * limit that is near. */
static const char BEAM[] =
    "batten: 1\n"
    "units: si\n"
    "self-weight: no\n"
    "sticks:\n"
    "  plank: {size: [20, 100], stands: flat, material: {E: 9 GPa, density: 0}}\n"
    "joints: {a: [0, 0, 0], b: [1000, 0, 0], c: [0, 500, 0], d: [1000, 500, 0]}\n"
    "members:\n"
    "  one: {from: a, to: b, stick: plank}\n"
    "  two: {from: c, to: d, stick: plank}\n"
    "supports: {a: pinned, b: [y, z, rx], c: pinned, d: [y, z, rx]}\n"
    "shelves: {s: {rails: [one, two], trays: {weight: 100 N}}}\n"
    "site: {place: indoors}\n"
    "limits: {shelf-sag: span/240}\n";

/* By hand: each plank carries 50 N evenly over 1 m. I = 100 x 20^3 / 12 = 66 667 mm4; first sag
 * 5 w L^4 / (384 E I) = 5 x 0.05 x 1e12 / (384 x 9000 x 66 667) = 1.0851 mm, with creep 1.6276 mm;
 * limit 1000 / 240 = 4.1667 mm: 2.56 times. */
Test(margin, of_a_simple_beam) {
    struct margin_answer *answer = margin_find(arena, frame_of_text(arena, BEAM));
    const struct margin *trays = &answer->loads[MARGIN_TRAY];
    cr_assert(trays->reach == REACH_FOUND);
    NEAR(trays->value, 2.56, 1e-9, 0.0);
    cr_assert_eq(strncmp(trays->first, "sag/s/", 6), 0, "%s", trays->first);
    cr_assert(answer->loads[MARGIN_SNOW].reach == REACH_NOT_ASKED);
    cr_assert(answer->loads[MARGIN_WIND].reach == REACH_NOT_ASKED);
}

/* Twice the trays leave half the factor. */
Test(margin, halves_when_the_trays_double) {
    char text[sizeof BEAM + 8];
    strcpy(text, BEAM);
    char *weight = strstr(text, "100 N");
    cr_assert_not_null(weight);
    memcpy(weight, "200 N", 5);
    struct margin_answer *answer = margin_find(arena, frame_of_text(arena, text));
    NEAR(answer->loads[MARGIN_TRAY].value, 1.28, 1e-9, 0.0);
}

/* Wind: pressure goes with the square of the speed, so where nothing but wind makes a check fail
 * the ratio at the speed found is one. Checked by judging the frame again at that speed. */
static const char SCREEN[] =
    "batten: 1\n"
    "sticks:\n"
    "  post: {size: 2x4, species: spruce-pine-fir, grade: no-2, faces: side}\n"
    "joints: {a: [0, 0, 0], b: [0, 0, 48], c: [0, 24, 0], d: [0, 24, 48]}\n"
    "members:\n"
    "  front: {from: a, to: b, stick: post}\n"
    "  back: {from: c, to: d, stick: post}\n"
    "  top: {from: b, to: d, stick: post, ends: rigid}\n"
    "supports: {a: fixed, c: fixed}\n"
    "site: {place: outdoors, wind: %s, exposure: C}\n";

static struct result at_wind(const char *speed) {
    struct result result;
    const struct judge_options plain = {0};
    judge_frame(arena, frame_of_text(arena, arena_print(arena, SCREEN, speed)), &plain, &result);
    return result;
}

Test(margin, at_the_wind_found_the_first_check_is_at_its_limit) {
    struct margin_answer *answer =
        margin_find(arena, frame_of_text(arena, arena_print(arena, SCREEN, "90 mph")));
    const struct margin *wind = &answer->loads[MARGIN_WIND];
    cr_assert(wind->reach == REACH_FOUND);
    struct result result = at_wind(arena_print(arena, "%.17g m/s", wind->value));
    const struct check *first = check_of(&result, wind->first);
    NEAR(first->ratio, 1.0, 1e-8, 0.0);
    for (size_t k = 0; k < result.checks.count; k++)
        cr_assert(!(result.checks.items[k].ratio > 1.0 + 1e-8));
}

/* The same beam: its sag, and so the ratio, goes with the trays, 1 / 2.56 = 0.390625 of the limit
 * for each of them as described. */
Test(margin, curve_of_a_simple_beam) {
    struct margin_answer *answer = margin_find(arena, frame_of_text(arena, BEAM));
    margin_curves(arena, answer);
    const struct margin_plot *plot = &answer->loads[MARGIN_TRAY].plot;
    cr_assert(plot->count >= 1 && plot->count <= MARGIN_CURVES);
    const struct margin_curve *sag = &plot->curves[0];
    cr_assert_str_eq(sag->id, answer->loads[MARGIN_TRAY].first);
    NEAR(sag->limit_at, 2.56, 1e-9, 0.0);
    NEAR(plot->to, 1.25 * 2.56, 1e-6, 0.0);
    bool as_described = false;
    for (size_t k = 0; k < sag->count; k++) {
        NEAR_ABS(sag->points[k].ratio, 0.390625 * sag->points[k].load, 1e-9);
        cr_assert(!k || sag->points[k].load > sag->points[k - 1].load);
        as_described |= sag->points[k].load == 1.0;
    }
    cr_assert(as_described);
    cr_assert_eq(sag->count, 11); /* nine even steps, as described, at the limit */
    cr_assert_eq(answer->loads[MARGIN_SNOW].plot.count, 0);
}

/* Three checks at most, no two of a kind, the one that fails first before the others; and where
 * another passes its limit the frame judged again has it at its limit. */
Test(margin, curves_under_wind) {
    struct margin_answer *answer =
        margin_find(arena, frame_of_text(arena, arena_print(arena, SCREEN, "90 mph")));
    margin_curves(arena, answer);
    const struct margin *wind = &answer->loads[MARGIN_WIND];
    cr_assert(wind->plot.count >= 2 && wind->plot.count <= MARGIN_CURVES);
    cr_assert_str_eq(wind->plot.curves[0].id, wind->first);
    for (size_t c = 0; c < wind->plot.count; c++) {
        const struct margin_curve *curve = &wind->plot.curves[c];
        cr_assert(!c || strcmp(curve->kind, wind->plot.curves[c - 1].kind) != 0);
        double speed = isfinite(curve->limit_at) ? curve->limit_at : curve->points[5].load;
        double wanted = isfinite(curve->limit_at) ? 1.0 : curve->points[5].ratio;
        struct result result = at_wind(arena_print(arena, "%.17g m/s", speed));
        NEAR(check_of(&result, curve->id)->ratio, wanted, 1e-8, 0.0);
    }
}
