/* How many builds pass: against the laws that the inputs are drawn from. */
#include "in_arena.h"
#include "judged.h"
#include "near.h"
#include "report/spread_text.h"
#include "spread/build.h"
#include "spread/rank.h"
#include "spread/spread.h"

#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

static void quiet(void) {
    gsl_set_error_handler_off();
    set_up();
}

TestSuite(spread, .init = quiet, .fini = tear_down);

/* Two simple beams of table lumber; nothing else varies. */
static const char BEAM[] =
    "batten: 1\n"
    "units: si\n"
    "self-weight: no\n"
    "sticks:\n"
    "  plank: {size: 2x4, stands: flat, species: spruce-pine-fir, grade: no-2}\n"
    "joints: {a: [0, 0, 0], b: [2000, 0, 0], c: [0, 500, 0], d: [2000, 500, 0]}\n"
    "members:\n"
    "  one: {from: a, to: b, stick: plank}\n"
    "  two: {from: c, to: d, stick: plank}\n"
    "supports: {a: pinned, b: [y, z, rx], c: pinned, d: [y, z, rx]}\n"
    "shelves: {s: {rails: [one, two], trays: {weight: 460 N}}}\n"
    "site: {place: indoors}\n"
    "limits: {shelf-sag: span/240}\n";

static const struct spread_check *line_of(const struct spread_answer *answer, const char *id) {
    for (size_t k = 0; k < answer->checks.count; k++)
        if (strcmp(answer->checks.items[k].id, id) == 0)
            return &answer->checks.items[k];
    cr_assert(false, "no line %s", id);
    return NULL;
}

static const struct spread_answer *spread_of(const char *text, struct spread_options options) {
    return spread_find(arena, frame_of_text(arena, text), &options);
}

/* By hand: I = 88.9 x 38.1^3 / 12 = 409 727 mm4, E = 1.4e6 psi = 9652.7 N/mm2, w = 230 / 2000
 * N/mm: 5 w L^4 / (384 E I) = 6.0575 mm, with creep 9.086 mm, limit 8.333 mm: r = 1.0904. With
 * V = 0.25, s = sqrt(ln 1.0625) = 0.24622; r / f passes 1 where ln f < ln r, which has the
 * probability Phi((ln r + s^2 / 2) / s) = Phi(0.4744) = 0.6824 (tables of the normal law). Of 2000
 * builds four standard deviations of the binomial law are 0.0417. */
Test(spread, sag_of_a_simple_beam_by_its_law) {
    const struct spread_answer *answer =
        spread_of(BEAM, (struct spread_options){.builds = 2000, .seed = 1});
    const struct result plain = judged_text(BEAM);
    NEAR(check_of(&plain, "sag/s/one")->ratio, 1.0904, 1e-3, 0.0);
    const struct spread_check *sag = line_of(answer, "sag/s/one");
    NEAR((double)sag->failed / 2000.0, 0.6824, 0.0, 0.0417);
    cr_assert_eq(answer->input_count, 4);
    cr_assert_eq(sag->matter_count, 1, "of the other board and the strength it knows nothing");
    cr_assert(answer->inputs[sag->matters[0].input].kind == SPREAD_STIFFNESS);
    cr_assert_str_eq(answer->inputs[sag->matters[0].input].of, "one");
    NEAR(sag->matters[0].rank_correlation, -1.0, 1e-12, 0.0);
}

/* Of E / f the mean is E[1 / f] = 1 + V^2 = 1.0625 for a lognormal f of mean 1; its standard
 * deviation over 2000 builds is 1.0625 x 0.25 / sqrt(2000) = 0.0059. */
Test(spread, mean_sag_is_that_of_the_lognormal_law) {
    const struct spread_answer *answer =
        spread_of(BEAM, (struct spread_options){.builds = 2000, .seed = 2});
    const struct spread_check *sag = line_of(answer, "sag/s/two");
    const struct result plain = judged_text(BEAM);
    double mean = 0.0;
    for (size_t b = 0; b < 2000; b++)
        mean += sag->ratios[b] / check_of(&plain, "sag/s/two")->ratio / 2000.0;
    NEAR(mean, 1.0625, 0.0, 4 * 0.0059);
}

/* A table strength is what 19 of 20 reach: 1 build in 20 is nearer to its limit than `check`
 * says. Four standard deviations: 4 sqrt(0.05 x 0.95 / 2000) = 0.0195. */
Test(spread, one_stick_in_twenty_is_weaker_than_its_table) {
    struct spread_options options = {
        .builds = 2000, .seed = 3, .held = {[SPREAD_STIFFNESS] = true}};
    const struct spread_answer *answer = spread_of(BEAM, options);
    const struct spread_check *bend = line_of(answer, "bend/one");
    const struct result plain = judged_text(BEAM);
    size_t worse = 0;
    for (size_t b = 0; b < 2000; b++)
        worse += bend->ratios[b] > check_of(&plain, "bend/one")->ratio;
    NEAR((double)worse / 2000.0, 0.05, 0.0, 0.0195);
}

/* Without anything that varies a build is what `check` says. */
Test(spread, nothing_varied_is_check) {
    const char *text = text_of_file(arena, "examples/seedling-stand.yaml");
    struct spread_options options = {.builds = 2, .seed = 1, .held = {true, true, true, true}};
    const struct spread_answer *answer = spread_of(text, options);
    const struct result plain = judged_text(text);
    cr_assert_eq(answer->checks.count, plain.checks.count);
    for (size_t k = 0; k < plain.checks.count; k++) {
        const struct check *check = &plain.checks.items[k];
        const struct spread_check *line = line_of(answer, check->id);
        if (check->verdict == VERDICT_NOT_COVERED)
            cr_assert_eq(line->not_covered, 2, "%s", check->id);
        else
            NEAR(line->ratios[1], check->ratio, 1e-12, 0.0);
        cr_assert_eq(line->failed, check->verdict == VERDICT_FAILS ? 2 : 0, "%s", check->id);
    }
}

/* Trays alone: no build has heavier ones than the 20 lb described, none under 8. Sag goes with the
 * weight, so it is no more than described and the trays of its own shelf matter most. */
Test(spread, lighter_trays_sag_less) {
    const char *text = text_of_file(arena, "examples/seedling-stand.yaml");
    struct spread_options options = {.builds = 40, .seed = 5, .held = {true, true, true, false}};
    const struct spread_answer *answer = spread_of(text, options);
    const struct result plain = judged_text(text);
    const struct spread_check *sag = line_of(answer, "sag/lower/front-1");
    double described = check_of(&plain, "sag/lower/front-1")->ratio;
    for (size_t b = 0; b < 40; b++)
        cr_assert(sag->ratios[b] <= described && sag->ratios[b] >= 0.4 * described);
    cr_assert(sag->matter_count > 0);
    cr_assert_str_eq(answer->inputs[sag->matters[0].input].of, "lower");
    cr_assert(sag->matters[0].rank_correlation > 0.9);
}

/* The ends of the range are the low and high of the format, its middle the middle. */
Test(spread, joints_go_from_low_to_high) {
    struct problems problems = problems_new(arena);
    const struct frame *frame =
        frame_of_text(arena, text_of_file(arena, "examples/seedling-stand.yaml"));
    static const double AT[STIFFNESS_COUNT] = {-1.0, 0.0, 1.0};
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        const struct model *plain = model_build(arena, frame, &problems);
        struct model *model = model_build(arena, frame, &problems);
        struct spread_inputs inputs = spread_inputs(arena, model);
        struct build build = {inputs.items, 0, ARENA_ARRAY(arena, double, inputs.count)};
        for (size_t k = 0; k < inputs.count; k++)
            if (inputs.items[k].kind == SPREAD_JOINTS) {
                build.values[build.count] = AT[s];
                inputs.items[build.count++] = inputs.items[k];
            }
        cr_assert_eq(build.count, 2, "lap and butt");
        build_vary(&build, model);
        for (size_t m = 0; m < model->member_count; m++)
            for (int k = 0; k < 6; k++) {
                double want = plain->members[m].ends[0].springs[s].k[k];
                double got = model->members[m].ends[0].springs[STIFFNESS_MIDDLE].k[k];
                if (isfinite(want))
                    NEAR(got, want, 1e-12, 0.0);
                else
                    cr_assert_eq(got, want);
            }
    }
}

Test(spread, same_seed_same_answer) {
    struct spread_options options = {.builds = 12, .seed = 7};
    const struct spread_answer *one = spread_of(BEAM, options), *two = spread_of(BEAM, options);
    options.builds = 1;
    const struct spread_answer *first = spread_of(BEAM, options);
    options.seed = 8;
    const struct spread_answer *other = spread_of(BEAM, options);
    for (size_t b = 0; b < 12; b++)
        cr_assert_eq(line_of(one, "sag/s/one")->ratios[b], line_of(two, "sag/s/one")->ratios[b]);
    cr_assert_eq(line_of(one, "sag/s/one")->ratios[0], line_of(first, "sag/s/one")->ratios[0]);
    cr_assert_neq(line_of(one, "sag/s/one")->ratios[0], line_of(other, "sag/s/one")->ratios[0]);
    cr_assert_eq(line_of(first, "sag/s/one")->matter_count, 0);
}

/* Ten numbers swapped two by two: 1 - 6 sum(d^2) / (n (n^2 - 1)) = 1 - 6 x 10 / 990 = 0.93939.
 * Each of them stands twice (ties share their rank): as n = 20 with 3 / sqrt(19) = 0.69 as what
 * chance could make; ranks 2k + 1.5 are those of the ten, stretched, so the number stays. */
Test(spread, rank_correlation_by_hand) {
    double rising[20], swapped[20], ratios[20];
    for (int k = 0; k < 20; k++) {
        rising[k] = k / 2;
        swapped[k] = (k / 2) ^ 1;
        ratios[k] = exp(k / 2);
    }
    const double *const values[] = {swapped, rising};
    struct spread_check check = {.changes = true, .ratios = ratios};
    rank_matters(arena, values, 2, 20, &check);
    cr_assert_eq(check.matter_count, 2);
    cr_assert_eq(check.matters[0].input, 1);
    NEAR(check.matters[0].rank_correlation, 1.0, 1e-12, 0.0);
    NEAR(check.matters[1].rank_correlation, 1.0 - 60.0 / 990.0, 1e-12, 0.0);
}

Test(spread, shares_in_words) {
    cr_assert_str_eq(share_in_words(arena, 3, 100), "in 3 of 100 builds");
    cr_assert_str_eq(share_in_words(arena, 1, 1), "in 1 of 1 build");
    cr_assert_str_eq(share_in_words(arena, 312, 10000), "in 3 of 100 builds");
    cr_assert_str_eq(share_in_words(arena, 1, 10000), "in fewer than 1 of 100 builds");
    cr_assert_str_eq(share_in_words(arena, 9999, 10000), "in more than 99 of 100 builds");
    cr_assert_str_eq(share_in_words(arena, 0, 500), "in 0 of 500 builds");
}
