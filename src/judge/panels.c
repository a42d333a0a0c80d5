#include "judge/panels.h"

#include "loads/weather.h"
#include "weather/units.h"

#include <math.h>

struct panel_work panel_work(struct run *run, size_t index) {
    const struct weather *weather = run->loads->weather;
    const struct cover *cover = &weather->covers[index];
    struct cover_wind wind = wind_worst_on_cover(&weather->box, cover);
    struct panel_work work = {run,
                              index,
                              cover,
                              cover->panel,
                              {.weight = run->frame->self_weight
                                             ? panel_weight(run->model, cover->panel) / cover->area
                                             : 0.0,
                               .slope = cover->slope,
                               .in = wind.in,
                               .out = wind.out,
                               .edge = wind.edge}};
    if (weather->snow.given)
        work.press.snow = weather_most_snow(weather, index);
    if (weather->wind.given)
        work.press.wind = weather->wind.q;
    struct cited open = weather_row("wind-factors", "lid-open");
    if (cover->panel->opens && open.value > work.press.in.value)
        work.press.in = open;
    if (cover->panel->opens && open.value > work.press.out.value)
        work.press.out = open;
    return work;
}

bool panel_press(const struct panel_work *work, int combination, struct sheet_press *press) {
    const struct loads *loads = work->run->loads;
    *press = work->press;
    press->with_weight = loads_case_factor(loads, combination, CASE_SELF);
    press->with_snow = loads_case_factor(loads, combination, CASE_SNOW);
    for (int side = CASE_WIND_LEFT; side <= CASE_WIND_BACK; side++)
        press->with_wind += fabs(loads_case_factor(loads, combination, side));
    return press->with_snow * press->snow > 0.0 || press->with_wind * press->wind > 0.0;
}

bool panel_screw(double diameter, double through, struct dowel *screw) {
    if (!dowel_of_diameter(DOWEL_SCREW, NAIL_COMMON, diameter, screw))
        return false;
    dowel_set_length(screw, through + 10.0 * diameter);
    return true;
}

double panel_wood(const struct run *run, int joint) {
    const struct model *model = run->model;
    double least = INFINITY;
    for (size_t m = 0; m < model->member_count; m++)
        for (size_t k = model->along.first[m]; k < model->along.first[m + 1]; k++)
            if (model->along.joints[k].joint == joint)
                least = model->members[m].lumber.has_gravity
                            ? fmin(least, model->members[m].lumber.gravity.value)
                            : -INFINITY;
    return isfinite(least) ? least : NAN;
}

void panel_not_covered(const struct panel_work *work, const char *kind, const char *what,
                       const char *place, const char *advice) {
    struct run *run = work->run;
    struct sheet_press press;
    const char *id = arena_print(run->arena, "%s/%s", kind, work->panel->name);
    for (size_t c = 0; c < run->loads->combination_count; c++)
        if (panel_press(work, (int)c, &press) && run_wants_combination(run, id, (int)c)) {
            run_add_check(run, kind, work->panel->name, run->loads->combinations[c].name,
                          rating_missing(what, "no published value"), place, advice,
                          run_working(run, id));
            return;
        }
}

/* The widest gap between sticks that bear it, m; NAN where one end has none. */
static double span_of(const struct panel_work *work) {
    const struct cover *cover = work->cover;
    double widest = 0.0;
    for (size_t k = 0; k < cover->bearer_count; k++) {
        if (cover->bearers[k].member < 0)
            return NAN;
        if (k > 0)
            widest = fmax(widest, cover->bearers[k].place - cover->bearers[k - 1].place);
    }
    return widest * panel_longest_run(work->run->model, work->panel);
}

static const char *advice_of(const struct rating *rating) {
    if (rating->covered)
        return "put a stick under its middle, across its flutes, or take a thicker sheet";
    return "no published span covers it: put sticks closer under it or take a thicker sheet that "
           "its maker gives a span for";
}

static void judge_span(struct run *run, size_t index) {
    struct panel_work work = panel_work(run, index);
    const char *name = work.panel->name;
    const char *id = arena_print(run->arena, "panel/%s", name);
    const char *place = arena_print(run->arena, "%s, between its sticks", name);
    struct sheet_span_input input = {.sheet = table_sheet(work.panel->sheet)->name,
                                     .span = span_of(&work),
                                     .height =
                                         work.cover->kind == COVER_ROOF ? work.cover->top : 0.0};
    struct sheet_span_input worst_input = input;
    struct rating worst = {0};
    int combination = -1;
    if (isnan(input.span)) {
        panel_not_covered(&work, "panel", "a sheet with no stick under one of its ends", place,
                          "put a stick under each end of it, across its flutes");
        return;
    }
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        if (!run_wants_combination(run, id, (int)c) || !panel_press(&work, (int)c, &input.press))
            continue;
        struct rating rating = check_sheet_span(&input, NULL);
        if (combination < 0 || rating_is_worse(&rating, &worst)) {
            worst = rating;
            worst_input = input;
            combination = (int)c;
        }
    }
    if (combination < 0)
        return;
    struct working *working = run_working(run, id);
    worst = check_sheet_span(&worst_input, working);
    run_add_check(run, "panel", name, run->loads->combinations[combination].name, worst, place,
                  advice_of(&worst), working);
}

void judge_panels(struct run *run) {
    for (size_t k = 0; k < run->frame->panels.count; k++)
        if (run->loads->weather->covers[k].kind != COVER_INSIDE)
            judge_span(run, k);
}
