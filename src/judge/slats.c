#include "check/slat.h"
#include "judge/steps.h"
#include "model/sections.h"

#include <math.h>

static double widest_gap(const struct shelf *shelf, const struct shelf_loading *loading,
                         double *sum) {
    double widest = 0.0;
    *sum = 0.0;
    for (size_t r = 0; r + 1 < shelf->rail_count; r++) {
        widest = fmax(widest, loading->gaps[r]);
        *sum += loading->gaps[r];
    }
    return widest;
}

static struct slat_input slat_input(const struct run *run, size_t shelf_index,
                                    const struct lumber *lumber) {
    const struct shelf *shelf = &run->frame->shelves.items[shelf_index];
    const struct shelf_loading *loading = &run->loads->shelves[shelf_index];
    const struct stick *stick = &run->frame->sticks.items[shelf->slat];
    const struct limit *limit = &run->frame->limits.shelf_sag;
    struct slat_input input = {.lumber = lumber, .conditions = {.wet = run->model->wet}};
    double sum;
    input.span = widest_gap(shelf, loading, &sum);
    /* a slat lies flat unless its stick says otherwise: the weaker way */
    input.on_edge = stick->stands == STANDS_ON_EDGE;
    input.section = stick->has_section
                        ? section_own(stick->section.A, fmax(stick->section.Iy, stick->section.Iz),
                                      fmin(stick->section.Iy, stick->section.Iz), stick->thickness,
                                      stick->width)
                        : section_rectangle(stick->thickness, stick->width);
    input.can = table_tray(table_tray_find("can-2gal-full"))->weight;
    input.sag_divisor = limit->divisor > 0.0 ? limit->divisor : input.span / limit->length;
    return input;
}

static void set_load(const struct run *run, size_t shelf_index, int combination,
                     struct slat_input *input) {
    const struct shelf *shelf = &run->frame->shelves.items[shelf_index];
    const struct shelf_loading *loading = &run->loads->shelves[shelf_index];
    const struct load_combination *in = &run->loads->combinations[combination];
    double sum;
    widest_gap(shelf, loading, &sum);
    double spread = sum * shelf->slat_count;
    double trays =
        loads_tray_factor(run->loads, combination, shelf->short_standing) * loading->trays / spread;
    double snow = loads_shelf_snow(run->loads, combination, shelf_index) / spread;
    input->own_weight = loads_case_factor(run->loads, combination, CASE_SELF) *
                        (run->frame->self_weight ? loading->deck : 0.0) /
                        (loading->width * shelf->slat_count);
    input->standing = shelf->short_standing ? 0.0 : trays;
    input->brief = snow + (shelf->short_standing ? trays : 0.0);
    input->conditions.duration = in->duration;
}

static void judge_shelf(struct run *run, size_t shelf_index) {
    const struct shelf *shelf = &run->frame->shelves.items[shelf_index];
    struct lumber lumber = sections_lumber(&run->frame->sticks.items[shelf->slat]);
    const char *id = arena_print(run->arena, "slat/%s", shelf->name);
    struct slat_input input = slat_input(run, shelf_index, &lumber);
    struct rating worst = {0};
    int worst_combination = -1;
    for (size_t c = 0; c < run->loads->combination_count; c++) {
        if (run_pushes(run, (int)c) || !run_wants_combination(run, id, (int)c))
            continue;
        set_load(run, shelf_index, (int)c, &input);
        struct rating rating = check_slat(&input, NULL);
        if (worst_combination < 0 || rating_is_worse(&rating, &worst)) {
            worst = rating;
            worst_combination = (int)c;
        }
    }
    if (worst_combination < 0)
        return;
    struct working *working = run_working(run, id);
    set_load(run, shelf_index, worst_combination, &input);
    if (lumber_unfit_finger_joints(&lumber, true, false))
        worst = rating_missing("finger-jointed, with long-standing bending",
                               "engineering practice [trade]");
    else
        worst = check_slat(&input, working);
    run_add_check(run, "slat", shelf->name, run->loads->combinations[worst_combination].name, worst,
                  arena_print(run->arena, "%s shelf, each slat", shelf->name),
                  "use more or thicker slats, or a rail under their middle", working);
}

void judge_slats(struct run *run) {
    for (size_t k = 0; k < run->frame->shelves.count; k++)
        if (run->frame->shelves.items[k].deck == DECK_SLATS)
            judge_shelf(run, k);
}
