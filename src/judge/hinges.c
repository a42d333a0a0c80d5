#include "base/vector.h"
#include "check/hinge.h"
#include "judge/panels.h"
#include "loads/weather.h"
#include "weather/units.h"

#include <math.h>
#include <string.h>

/* What a pair of hinges is taken to have where no description says. */
enum { LEAF_SCREWS = 2 };

static const double *joint_at(const struct run *run, int joint) {
    return run->frame->joints.items[joint].at;
}

/* Shape of the panel round its hinges, which stand a little inward of the corners. */
static void measure(const struct panel_work *work, struct hinge_input *input) {
    const struct run *run = work->run;
    const struct panel *panel = work->panel;
    double line[3], other[3] = {0}, across[3], along[3];
    double length =
        vector_between(joint_at(run, panel->hinge[0]), joint_at(run, panel->hinge[1]), line);
    for (int k = 0; k < 4; k++)
        if (panel->corners[k] != panel->hinge[0] && panel->corners[k] != panel->hinge[1])
            for (int c = 0; c < 3; c++)
                other[c] += joint_at(run, panel->corners[k])[c] / 2.0;
    vector_between(joint_at(run, panel->hinge[0]), other, across);
    memcpy(along, line, sizeof along);
    vector_unit(along);
    double beside = vector_dot(across, along);
    input->deep = sqrt(fmax(0.0, vector_dot(across, across) - beside * beside));
    input->apart = length * table_constant("hinges-apart").value;
    input->incline = asin(fmin(1.0, fabs(along[2])));
}

static double diameter_of(const struct panel *panel) {
    return panel->screw_diameter > 0.0 ? panel->screw_diameter
                                       : table_constant("hinge-screw").value;
}

static double least_wood(const struct panel_work *work) {
    double wood = INFINITY;
    for (int k = 0; k < 2; k++) {
        double at = panel_wood(work->run, work->panel->hinge[k]);
        wood = isnan(at) || at < wood ? at : wood;
    }
    if (work->panel->framed < 0)
        return wood;
    const struct stick *stick = &work->run->frame->sticks.items[work->panel->framed];
    struct cited own;
    if (stick->species < 0 || !table_specific_gravity(stick->species, &own))
        return NAN;
    return isnan(wood) || wood < own.value ? wood : own.value;
}

static bool make_input(const struct panel_work *work, struct dowel *dowel,
                       struct hinge_input *input) {
    const struct run *run = work->run;
    const struct weather *weather = run->loads->weather;
    struct cover_wind wind = wind_worst_on_cover(&weather->box, work->cover);
    double leaf = table_constant("hinge-thickness").value;
    *input = (struct hinge_input){
        .weight = run->frame->self_weight ? panel_weight(run->model, work->panel) : 0.0,
        .area = work->cover->area,
        .wind = weather->wind.given && work->cover->kind != COVER_INSIDE ? weather->wind.q : 0.0,
        .shut = wind.out,
        .open = weather_row("wind-factors", "lid-open"),
        .opens = work->panel->opens,
        .count = LEAF_SCREWS,
        .screw = {
            .dowel = dowel,
            .side = {.thickness = leaf, .steel = true},
            .main = {.thickness = INFINITY, .gravity = {.value = least_wood(work), .source = ""}},
            .service = {.wet = run->model->wet}}};
    measure(work, input);
    return panel_screw(diameter_of(work->panel), leaf, dowel) &&
           !isnan(input->screw.main.gravity.value);
}

static void set_combination(const struct panel_work *work, int combination,
                            struct hinge_input *input) {
    struct sheet_press press;
    panel_press(work, combination, &press);
    input->with_weight = press.with_weight;
    input->with_wind = press.with_wind;
    input->screw.service.duration = work->run->loads->combinations[combination].duration;
}

static void say_what_is_taken(const struct panel_work *work, bool wind) {
    struct run *run = work->run;
    const struct panel *panel = work->panel;
    run_caution(run,
                arena_print(run->arena,
                            "%s is taken to hang on two hinges with two screws in each leaf, %s, "
                            "that go ten times their thickness into the wood%s",
                            panel->name,
                            panel->screw_diameter > 0.0 ? "of the size said"
                                                        : "No.6 (screw: 8 says another size)",
                            wind ? ", and to be hooked shut in wind" : ""));
    if (panel->framed < 0 && !wind)
        run_caution(run, arena_print(run->arena,
                                     "not checked: what holds the hinges of %s in its sheet; a "
                                     "frame of sticks round it holds screws (framed: STICK)",
                                     panel->name));
    if (panel->opens && !panel->stay && wind)
        run_caution(run, arena_print(run->arena,
                                     "%s opens outdoors and nothing stops it: give it a stay or a "
                                     "chain (stay: yes), or wind throws it over",
                                     panel->name));
}

struct worst_hinge {
    struct rating rating;
    struct hinge_input input;
    int combination; /* -1: none is asked for */
};

static struct rating rate(const struct hinge_input *input, bool known, struct working *working) {
    return known ? check_hinge(input, working)
                 : rating_missing("screws or wood that have no published value", "NDS 2018 12");
}

static struct worst_hinge find_worst(const struct panel_work *work, const char *id,
                                     struct hinge_input input, bool known) {
    struct run *run = work->run;
    struct worst_hinge worst = {.combination = -1};
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        if (run_pushes(run, (int)c) || !run_wants_combination(run, id, (int)c))
            continue;
        set_combination(work, (int)c, &input);
        struct rating rating = rate(&input, known, NULL);
        if (worst.combination < 0 || rating_is_worse(&rating, &worst.rating))
            worst = (struct worst_hinge){rating, input, (int)c};
    }
    return worst;
}

/* The leaf on the sheet: without sticks round it, nothing is known of what holds there. */
static bool bare_in_wind(const struct panel_work *work, const struct worst_hinge *worst) {
    return worst->rating.covered && worst->rating.ratio <= 1.0 && worst->input.wind > 0.0 &&
           work->panel->framed < 0;
}

static void judge_pair(struct run *run, size_t index) {
    struct panel_work work = panel_work(run, index);
    const char *name = work.panel->name;
    const char *id = arena_print(run->arena, "hinge/%s", name);
    const char *advice = "take a third hinge, or longer and thicker screws";
    struct dowel dowel;
    struct hinge_input input;
    bool known = make_input(&work, &dowel, &input);
    struct worst_hinge worst = find_worst(&work, id, input, known);
    if (worst.combination < 0)
        return;
    struct working *working = run_working(run, id);
    worst.rating = rate(&worst.input, known, working);
    if (bare_in_wind(&work, &worst)) {
        worst.rating = rating_missing("what holds the hinges in the sheet itself", "NDS 2018 12");
        advice = "screw the hinges to sticks that frame the sheet (framed: STICK)";
    }
    say_what_is_taken(&work, input.wind > 0.0);
    run_add_check(run, "hinge", name, run->loads->combinations[worst.combination].name,
                  worst.rating, arena_print(run->arena, "hinges of %s, each screw", name), advice,
                  working);
}

void judge_hinges(struct run *run) {
    for (size_t k = 0; k < run->frame->panels.count; k++)
        if (run->frame->panels.items[k].held == HELD_HINGED)
            judge_pair(run, k);
}
