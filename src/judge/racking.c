#include "bracing/panel_rack.h"
#include "check/dowel.h"
#include "judge/steps.h"
#include "solve/response.h"

#include <math.h>

/* Pull in one bar of a sheet under a mix, N. */
static double bar_force(const struct run *run, enum stiffness stiffness, const struct bar *bar,
                        const double *weights) {
    const struct response *response = run->responses[stiffness];
    double longer = 0.0;
    for (size_t c = 0; c < response->live_count; c++)
        if (weights[c] != 0.0)
            longer += weights[c] * bar_elongation(run->model, bar, response->slots[c]);
    return bar->stiffness * longer;
}

struct worst_racking {
    bool found;
    double forces[2];
    enum stiffness stiffness;
    int combination;
};

/* What one edge screw holds sideways. How long it is, no description says: it is taken to reach as
 * deep as the published values have it, ten diameters. NAN where nothing is published. */
static double edge_screw(const struct run *run, const struct bracing_sheet *sheet,
                         enum duration duration) {
    const struct panel *panel = &run->frame->panels.items[sheet->panel];
    const struct sheet *of = table_sheet(panel->sheet);
    struct cited gravity;
    struct dowel screw;
    struct dowel_values values;
    if (!table_value("sheet-gravity", of->name, &gravity) || isnan(sheet->gravity) ||
        !dowel_of_diameter(DOWEL_SCREW, NAIL_COMMON, panel->screw_diameter, &screw))
        return NAN;
    dowel_set_length(&screw, of->thickness + 10.0 * panel->screw_diameter);
    struct dowel_layer side = {.thickness = of->thickness, .gravity = gravity};
    struct dowel_layer main = {.thickness = INFINITY,
                               .gravity = {.value = sheet->gravity, .source = ""}};
    struct dowel_service service = {.wet = run->model->wet, .duration = duration};
    dowel_values(&screw, &side, &main, &service, NULL, &values);
    return values.lateral;
}

static struct panel_rack rate(const struct run *run, const struct bracing_sheet *sheet,
                              const struct worst_racking *worst, struct working *working) {
    enum duration duration = run->loads->combinations[worst->combination].duration;
    return panel_rack_rating(run->model, sheet, worst->stiffness, worst->forces,
                             edge_screw(run, sheet, duration), duration, working);
}

static void judge_sheet(struct run *run, size_t index) {
    const struct bracing_sheet *sheet = &run->sheets[index];
    const char *name = run->frame->panels.items[sheet->panel].name;
    const char *id = arena_print(run->arena, "panel-rack/%s", name);
    struct worst_racking worst = {0};
    double ratio = -1.0;
    for (int s = 0; s < STIFFNESS_COUNT; s++) {
        struct bar bars[2];
        if (!run_uses(run, s))
            continue;
        bracing_sheet_bars(run->model, sheet, s, bars);
        for (size_t x = 0; x < run->mix_count; x++) {
            const struct mix *mix = &run->mixes[x];
            if (!mix->solved || !run_wants_combination(run, id, mix->combination))
                continue;
            struct worst_racking now = {true,
                                        {bar_force(run, s, &bars[0], mix->weights[s]),
                                         bar_force(run, s, &bars[1], mix->weights[s])},
                                        s,
                                        mix->combination};
            struct panel_rack rack = rate(run, sheet, &now, NULL);
            double share = rack.covered ? rack.demand / rack.limit : rack.demand;
            if (!worst.found || ratio_worse(share, ratio)) {
                worst = now;
                ratio = share;
            }
        }
    }
    if (!worst.found)
        return;
    struct working *working = run_working(run, id);
    struct panel_rack rack = rate(run, sheet, &worst, working);
    struct rating rating = rack.covered ? rating_of(rack.demand, rack.limit, QUANTITY_WEIGHT,
                                                    rack.source, rack.governs)
                                        : rating_missing(rack.missing, rack.source);
    if (rack.screw_left_out)
        run_caution(run, arena_print(run->arena,
                                     "panel-rack of %s leaves out what each of its screws holds "
                                     "sideways, for which nothing is published: not checked",
                                     name));
    else
        run_caution(run, arena_print(run->arena,
                                     "the screws of %s are taken to go at least ten times their "
                                     "thickness into the sticks behind",
                                     name));
    run_add_check(run, "panel-rack", name, run->loads->combinations[worst.combination].name, rating,
                  arena_print(run->arena, "%s as bracing", name),
                  "set its screws closer, use a thicker sheet, or add a diagonal", working);
}

/* Racking force on every sheet that the verdict leans on. */
void judge_racking(struct run *run) {
    for (size_t k = 0; k < run->frame->panels.count; k++)
        if (run->sheets[k].braces && !run->sheets[k].clear)
            judge_sheet(run, k);
}
