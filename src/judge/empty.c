#include "judge/ground.h"

#include <math.h>

/* One way of pushing, and the least of such a push that tips the frame; INFINITY: none does. */
struct least_push {
    double force; /* N */
    enum side side;
};

static double level_of(const struct resultant *resultant) {
    return hypot(resultant->force[0], resultant->force[1]);
}

/* Moments about the edge: what own weight holds over what the whole push overturns. */
static void try_edge(const struct run *run, const struct tip_edge *edge, size_t self, size_t push,
                     struct least_push *least) {
    const double *middle = run->model->middle;
    double holds = -edge_moment(edge, &run->resultants[self], middle);
    double overturns = fabs(edge_moment(edge, &run->resultants[push], middle));
    double force = level_of(&run->resultants[push]) * fmax(0.0, holds) / overturns;
    if (!edge->held_down && overturns > 0.0 && force < least->force)
        *least = (struct least_push){force, edge->side};
}

/* Friction on the most slippery ground that a foot stands on. */
static double least_friction(const struct frame *frame) {
    double least = INFINITY;
    for (size_t k = 0; k < frame->supports.count; k++) {
        const struct support *support = &frame->supports.items[k];
        if (support->foot)
            least = fmin(least, support->ground < 0 ? table_constant("friction-not-given").value
                                                    : table_ground_friction(support->ground).value);
    }
    return least;
}

/* Where the push acts: at the top, unless the file puts it somewhere itself. */
static const char *place_of_push(const struct frame *frame) {
    for (size_t k = 0; k < frame->loads.count; k++)
        if (frame->loads.items[k].load_case == CASE_PUSH_X ||
            frame->loads.items[k].load_case == CASE_PUSH_Y)
            return "where the file has it";
    return "at its top";
}

static bool only_feet(const struct frame *frame) {
    for (size_t k = 0; k < frame->supports.count; k++)
        if (!frame->supports.items[k].foot)
            return false;
    return true;
}

void judge_empty(struct ground_work *work) {
    struct run *run = work->run;
    const struct response *response = run->responses[STIFFNESS_MIDDLE];
    int self = response_column(response, SET_SELF, LEAN_NONE);
    const int pushes[] = {response_column(response, SET_PUSH_X, LEAN_NONE),
                          response_column(response, SET_PUSH_Y, LEAN_NONE)};
    struct least_push least = {.force = INFINITY};
    bool pushed = false;
    for (int k = 0; k < 2 && self >= 0; k++)
        for (size_t e = 0; pushes[k] >= 0 && e < run->footprint->edge_count; e++) {
            pushed = true;
            try_edge(run, &run->footprint->edges[e], (size_t)self, (size_t)pushes[k], &least);
        }
    if (!pushed)
        return;
    const char *tips = "";
    if (isfinite(least.force))
        tips =
            arena_print(run->arena, "a push of %s %s tips it to the %s",
                        quantity_print(run->arena, least.force, QUANTITY_WEIGHT, run->frame->units),
                        place_of_push(run->frame), side_name(least.side));
    const char *slides = "";
    if (only_feet(run->frame))
        slides = arena_print(
            run->arena, "%s moves it along the ground",
            quantity_print(run->arena,
                           least_friction(run->frame) * fmax(0.0, -run->resultants[self].force[2]),
                           QUANTITY_WEIGHT, run->frame->units));
    if (*tips || *slides)
        run_caution(run, arena_print(run->arena, "with nothing on it, %s%s%s", tips,
                                     *tips && *slides ? ", and " : "", slides));
}
