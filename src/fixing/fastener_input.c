#include "fixing/fastener_input.h"

#include <math.h>

#define PI 3.14159265358979323846

static double angle_in(enum fixing_part part, const struct fixing_load *load) {
    return part == PART_HOST     ? load->angle_host
           : part == PART_ENDING ? load->angle_ending
                                 : PI / 2.0;
}

/* The wood that a part of the joint presses with; NULL of steel and of a plate. */
static const struct lumber *wood_of(const struct fixing *fixing, enum fixing_part part) {
    bool block = part == PART_PLATE && fixing->connection->type == CONNECTION_CLEAT;
    if (part == PART_PLATE && !block)
        return NULL;
    return part == PART_HOST ? &fixing->fastening.host->lumber : &fixing->fastening.ending->lumber;
}

/* A washer under the head and one under the nut, on wood. A plywood plate has no value for it, so
 * that a bolt through one has none where it is pulled. */
static void add_washers(const struct fixing *fixing, const struct fixing_group *group,
                        struct screw_input *input) {
    enum fixing_part parts[] = {group->side_part, group->main_part};
    double hole = dowel_lead_hole_lateral(&fixing->dowel, 0.0).thread_most;
    double wide = table_constant("washer-diameters").value * fixing->dowel.D.value;
    double area = PI / 4.0 * (wide * wide - hole * hole);
    for (int k = 0; k < 2; k++) {
        const struct lumber *wood = wood_of(fixing, parts[k]);
        if (wood)
            input->washers[input->washer_count++] = (struct bearing_input){
                .lumber = wood, .wet = input->service.wet, .along = wide, .across = area / wide};
    }
}

struct screw_input fixing_input(const struct fixing *fixing, int group,
                                const struct fixing_load *load, enum duration duration) {
    const struct fixing_group *of = &fixing->groups[group];
    struct screw_input input = {.dowel = &fixing->dowel,
                                .side = of->side,
                                .main = of->main,
                                .service = {.wet = fixing->fastening.wet, .duration = duration},
                                .shear = load->shear,
                                .pull = load->pull,
                                .little = table_constant("little-pull").value};
    input.side.angle = angle_in(of->side_part, load);
    input.main.angle = angle_in(of->main_part, load);
    if (fixing->dowel.kind == DOWEL_BOLT && fixing->connection->type != CONNECTION_GUSSET)
        add_washers(fixing, of, &input);
    return input;
}

double fixing_holds_along(const struct fixing *fixing, enum duration duration) {
    bool sideways = fixing->connection->type == CONNECTION_SCREWED_LAP ||
                    fixing->connection->type == CONNECTION_GUSSET;
    double least = INFINITY;
    if (!sideways || *fixing->missing)
        return NAN;
    const struct fixing_load load = {.angle_host = fixing_angle_to_host(fixing, 1.0, 0.0)};
    for (int g = 0; g < fixing->group_count; g++) {
        struct screw_input input = fixing_input(fixing, g, &load, duration);
        struct dowel_values values;
        dowel_values(input.dowel, &input.side, &input.main, &input.service, NULL, &values);
        if (isnan(values.lateral))
            return NAN;
        least = fmin(least, values.lateral);
    }
    return least * fixing->count * fmax(1, fixing->connection->plates);
}
