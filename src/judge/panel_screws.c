#include "judge/panels.h"

#include "loads/weather.h"

#include <math.h>

/* Width of sheet that hangs on a line of screws: half of the gap to each side, and what reaches
 * beyond the last one. */
static double width_at(const struct panel_work *work, size_t k) {
    const struct cover *cover = work->cover;
    double run = panel_longest_run(work->run->model, work->panel), width = 0.0;
    if (k > 0)
        width += (cover->bearers[k].place - cover->bearers[k - 1].place) * run / 2.0;
    else
        width += work->panel->overhang;
    if (k + 1 < cover->bearer_count)
        width += (cover->bearers[k + 1].place - cover->bearers[k].place) * run / 2.0;
    else
        width += work->panel->overhang;
    return width;
}

/* Specific gravity of the stick; NAN where it is not known. */
static double wood_at(const struct panel_work *work, const struct bearer *bearer) {
    const struct lumber *lumber = &work->run->model->members[bearer->member].lumber;
    return lumber->has_gravity ? lumber->gravity.value : NAN;
}

/* Plastic and the like have no value under a screw's head. */
static struct dowel_layer sheet_layer(const struct sheet *sheet) {
    struct dowel_layer layer = {.thickness = sheet->thickness};
    layer.steel = !table_value("sheet-gravity", sheet->name, &layer.gravity);
    return layer;
}

struct worst_screw {
    struct rating rating;
    struct sheet_screw_input input;
    int combination;
};

static void look(const struct panel_work *work, const char *id, const struct sheet_screw_input *at,
                 struct worst_screw *worst) {
    struct run *run = work->run;
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        struct sheet_screw_input input = *at;
        input.service.duration = run->loads->combinations[c].duration;
        if (!run_wants_combination(run, id, (int)c) || !panel_press(work, (int)c, &input.press) ||
            !(sheet_screw_pull(&input) > 0.0))
            continue;
        struct rating rating = check_sheet_screw(&input, NULL);
        bool larger = worst->combination >= 0 && !rating.covered && !worst->rating.covered &&
                      rating.demand > worst->rating.demand * (1.0 + 1e-9);
        if (worst->combination < 0 || larger || rating_is_worse(&rating, &worst->rating))
            *worst = (struct worst_screw){rating, input, (int)c};
    }
}

static const char *advice_of(const struct rating *rating, bool wood) {
    if (rating->covered)
        return "set its screws closer, or take thicker and longer ones";
    return wood ? "take a thicker sheet and a common size of screw, or large washers under the "
                  "heads"
                : "nothing is published for a head in such a sheet: put 1 in washers with a soft "
                  "seal under the heads, set the screws closer (every 12 in where it blows), or "
                  "lay a batten over the sheet and screw through it";
}

/* True where a line is given from what its screws are taken to be. */
static bool judge_screwed(struct panel_work *work) {
    struct run *run = work->run;
    const struct panel *panel = work->panel;
    const struct sheet *sheet = table_sheet(panel->sheet);
    const char *id = arena_print(run->arena, "panel-screw/%s", panel->name);
    const char *place = arena_print(run->arena, "%s, each screw", panel->name);
    struct worst_screw worst = {.combination = -1};
    struct dowel screw;
    if (panel->screw_diameter == 0.0 || !panel->spacing.given ||
        !panel_screw(panel->screw_diameter, sheet->thickness, &screw)) {
        panel_not_covered(work, "panel-screw", "screws of a size and spacing that are not known",
                          place, "say screw: 8 and spacing: 12 in, as you will set them");
        return false;
    }
    struct sheet_screw_input input = {.spacing = panel->spacing.value,
                                      .dowel = &screw,
                                      .side = sheet_layer(sheet),
                                      .service = {.wet = run->model->wet}};
    for (size_t k = 0; k < work->cover->bearer_count; k++) {
        if (work->cover->bearers[k].member < 0) {
            panel_not_covered(work, "panel-screw", "screws along an end with no stick under it",
                              place, "put a stick under each end of it and screw it down there");
            return false;
        }
        input.width = width_at(work, k);
        input.main = (struct dowel_layer){
            .thickness = INFINITY, .gravity = {.value = wood_at(work, &work->cover->bearers[k])}};
        input.main.gravity.source = "";
        if (isnan(input.main.gravity.value)) {
            panel_not_covered(work, "panel-screw", "wood whose specific gravity is not known",
                              place, "name the species of the sticks under it");
            return false;
        }
        look(work, id, &input, &worst);
    }
    if (worst.combination < 0)
        return false;
    struct working *working = run_working(run, id);
    worst.rating = check_sheet_screw(&worst.input, working);
    run_add_check(run, "panel-screw", panel->name, run->loads->combinations[worst.combination].name,
                  worst.rating, place, advice_of(&worst.rating, !input.side.steel), working);
    return true;
}

/* Held by something else: nothing is published for it. */
static void judge_other(const struct panel_work *work) {
    static const char *const WAYS[] = {
        /* ORDER HELD */ "screws", "staples", "clips", "tape", "hinges", "a slide",
        "nothing but its weight"};
    struct run *run = work->run;
    struct sheet_screw_input input = {.spacing = 1.0, .width = 1.0};
    bool lifts = false;
    for (size_t c = 0; c < run->loads->combination_count; c++)
        lifts |= panel_press(work, (int)c, &input.press) && sheet_screw_pull(&input) > 0.0;
    if (lifts)
        panel_not_covered(
            work, "panel-screw",
            arena_print(run->arena, "%s against wind", WAYS[work->panel->held]),
            arena_print(run->arena, "%s, what holds it down", work->panel->name),
            "screw it down, with a batten over the edges of a film or thin sheet, or take it off "
            "before wind");
}

/* "roof, left" and one more. */
static const char *join(const struct run *run, const char *names, const char *name) {
    return *names ? arena_print(run->arena, "%s, %s", names, name) : name;
}

void judge_panel_screws(struct run *run) {
    const char *taken = "";
    for (size_t k = 0; k < run->frame->panels.count; k++) {
        struct panel_work work = panel_work(run, k);
        if (work.cover->kind == COVER_INSIDE || !run->loads->weather->wind.given)
            continue;
        if (work.panel->held == HELD_SCREWED && judge_screwed(&work))
            taken = join(run, taken, work.panel->name);
        else if (work.panel->held != HELD_SCREWED && work.panel->held != HELD_HINGED)
            judge_other(&work);
    }
    if (*taken)
        run_caution(run,
                    arena_print(run->arena,
                                "the screws of %s are taken to go at least ten times their "
                                "thickness into the sticks behind, and to stand along every stick "
                                "that bears the sheet",
                                taken));
}
