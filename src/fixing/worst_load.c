#include "fixing/worst_load.h"

#include "base/vector.h"
#include "check/pattern.h"

#include <math.h>

#define PI 3.14159265358979323846

double fixing_angle_to_host(const struct fixing *fixing, double along, double across) {
    const struct model_member *ending = fixing->fastening.ending;
    double length = hypot(along, across), dot = 0.0;
    for (int i = 0; i < 3; i++)
        dot += (along * ending->axes[0][i] + across * ending->axes[fixing->plane.across][i]) *
               fixing->fastening.host->axes[0][i];
    return length > 0.0 ? acos(fmin(1.0, fabs(dot) / length)) : 0.0;
}

static struct fixing_load load_in_plane(const struct fixing *fixing, double along, double across,
                                        double pull) {
    return (struct fixing_load){.shear = hypot(along, across),
                                .pull = pull,
                                .angle_ending = atan2(fabs(across), fabs(along)),
                                .angle_host = fixing_angle_to_host(fixing, along, across)};
}

struct fixing_load fixing_across(double shear, double pull) {
    return (struct fixing_load){
        .shear = shear, .pull = pull, .angle_ending = PI / 2.0, .angle_host = PI / 2.0};
}

/* What pulls the stick's end away from its host, along the stick. */
static double pull_off(const struct fixing *fixing, const double ends[6]) {
    return not_below_zero(fixing->end ? ends[0] : -ends[0]);
}

/* A twist of the stick about its axis pries at the screws, over half its width. */
static double prying(const struct fixing *fixing, const double ends[6]) {
    double arm = fixing->plane.width_ending / 2.0;
    return arm > 0.0 ? fabs(ends[3]) / arm : 0.0;
}

/* Right-handed about the normal, from the stick's axis to the plane's other axis. */
static double moment_in_plane(const struct fixing *fixing, const double ends[6]) {
    double about = ends[3 + fixing->plane.normal];
    return fixing->plane.normal == 2 ? about : -about;
}

/* The load on one fastener of a line. */
static struct fixing_load load_on(const struct fixing *fixing, const double at[2],
                                  const double share[2], const double force[2], double moment,
                                  double pull) {
    struct fixing_load load = load_in_plane(fixing, share[0], share[1], pull);
    load.line.moment = moment;
    for (int i = 0; i < 2; i++) {
        load.line.force[i] = force[i];
        load.line.at[i] = at[i];
    }
    return load;
}

/* A line of fasteners: the one with most on it; all where the grain matters. Returns how many. */
static int line_loads(const struct fixing *fixing, double slope, const double force[2],
                      double moment, double pull, struct fixing_load *loads) {
    double at[CONNECTION_MOST_FASTENERS][2], shares[CONNECTION_MOST_FASTENERS][2];
    size_t count = (size_t)fixing->count, given = fixing->by_angle ? count : 1, worst = 0;
    const struct pattern pattern = {count, (const double(*)[2])at};
    pattern_line(count, fixing->line, slope, at);
    pattern_forces(&pattern, force, moment, shares);
    for (size_t k = 1; k < count; k++)
        if (ratio_worse(hypot(shares[k][0], shares[k][1]),
                        hypot(shares[worst][0], shares[worst][1])))
            worst = k;
    for (size_t k = 0; k < given; k++) {
        size_t which = fixing->by_angle ? k : worst;
        loads[k] = load_on(fixing, at[which], shares[which], force, moment, pull);
        loads[k].line.sum_r2 = pattern_sum_r2(&pattern);
    }
    return (int)given;
}

void fixing_note_load(const struct fixing *fixing, const struct fixing_load *load,
                      struct working *working) {
    if (!(load->line.sum_r2 > 0.0))
        return;
    working_heading(working, "The load on the group, and the worst fastener's share");
    working_given(working, "n", "fasteners", fixing->count, QUANTITY_NUMBER);
    working_given(working, "Fx", "force on them along the stick", load->line.force[0],
                  QUANTITY_WEIGHT);
    working_given(working, "Fy", "force across it", load->line.force[1], QUANTITY_WEIGHT);
    working_given(working, "M", "moment about their middle", load->line.moment, QUANTITY_MOMENT);
    working_given(working, "x", "where it stands, from the middle: along the stick",
                  load->line.at[0], QUANTITY_LENGTH);
    working_given(working, "y", "across it", load->line.at[1], QUANTITY_LENGTH);
    working_given(working, "S", "sum of the squared distances of all", load->line.sum_r2,
                  QUANTITY_AREA);
    working_step(working, "Vx", "its share along the stick", "Fx / n - M * y / S",
                 load->line.force[0] / fixing->count -
                     load->line.moment * load->line.at[1] / load->line.sum_r2,
                 QUANTITY_WEIGHT, "");
    working_step(working, "Vy", "across it", "Fy / n + M * x / S",
                 load->line.force[1] / fixing->count +
                     load->line.moment * load->line.at[0] / load->line.sum_r2,
                 QUANTITY_WEIGHT, "");
    working_step(working, "Vs", "both", "sqrt(Vx^2 + Vy^2)", load->shear, QUANTITY_WEIGHT, "");
}

static int lap_loads(const struct fixing *fixing, const double ends[6],
                     struct fixing_load loads[FIXING_LOADS]) {
    const double force[2] = {ends[0], ends[fixing->plane.across]};
    double pull = (fabs(ends[fixing->plane.normal]) + prying(fixing, ends)) / fixing->count;
    int count = 0;
    for (int k = 0; k < 2; k++)
        count += line_loads(fixing, fixing->slopes[k], force, moment_in_plane(fixing, ends), pull,
                            &loads[count]);
    return count;
}

/* Screws through the host: sideways from both shears and the twist, pull along the stick. */
static int butt_loads(const struct fixing *fixing, const double ends[6],
                      struct fixing_load loads[FIXING_LOADS]) {
    const struct model_member *ending = fixing->fastening.ending;
    double wide = fmax(ending->size_y, ending->size_z);
    double edge = 2.0 * table_constant("lap-edge-diameters").value * fixing->connection->diameter;
    double line = fixing->count > 1 ? fmax(0.0, wide - edge) : 0.0;
    double twist = line > 0.0 ? fabs(ends[3]) / line * 2.0 / fixing->count : 0.0;
    double shear = hypot(ends[1], ends[2]) / fixing->count + twist;
    loads[0] = fixing_across(shear, pull_off(fixing, ends) / fixing->count);
    return 1;
}

/* A leg flat on the stick: the force along it shears, the force across it pulls; a leg flat on the
 * host the other way about. What bends the angle lifts its legs with the screws' distance from the
 * corner as lever. */
static int bracket_loads(const struct fixing *fixing, int group, const double ends[6],
                         struct fixing_load loads[FIXING_LOADS]) {
    double pries = hypot(ends[4], ends[5]) / table_constant("bracket-elbow").value;
    double across = hypot(ends[1], ends[2]), n = fixing->count;
    loads[0] = group == 0 ? fixing_across(fabs(ends[0]) / n, (across + pries) / n)
                          : fixing_across(across / n, (pull_off(fixing, ends) + pries) / n);
    if (group == 1)
        return 1;
    loads[1] = fixing_across(hypot(ends[0], across) / n, pries / n);
    return 2;
}

/* The force may shear the screws of a leaf or pull at them. */
static int hinge_loads(const struct fixing *fixing, const double ends[6],
                       struct fixing_load loads[FIXING_LOADS]) {
    double force = hypot(ends[0], hypot(ends[1], ends[2])) / fixing->count;
    loads[0] = fixing_across(force, 0.0);
    loads[1] = fixing_across(0.0, force);
    return 2;
}

/* Of the host's axis in the plane, from local x to the plane's other axis, rad. */
static double slope_of_host(const struct fixing *fixing) {
    const struct model_member *ending = fixing->fastening.ending;
    const double *along = fixing->fastening.host->axes[0];
    return atan2(vector_dot(along, ending->axes[fixing->plane.across]),
                 vector_dot(along, ending->axes[0]));
}

/* The middle of a group lies beside the joint: the force across gains by that arm. */
static int gusset_loads(const struct fixing *fixing, int group, const double ends[6],
                        struct fixing_load loads[FIXING_LOADS]) {
    double plates = fixing->connection->plates;
    double beside = group == 0 ? fixing->plane.width_host / 2.0 : fixing->plane.width_ending / 2.0;
    double arm = beside + table_constant("gusset-spacing").value / 2.0 + fixing->line / 2.0;
    const double force[2] = {ends[0] / plates, ends[fixing->plane.across] / plates};
    double moment = fabs(moment_in_plane(fixing, ends)) / plates + hypot(force[0], force[1]) * arm;
    double pull = (fabs(ends[fixing->plane.normal]) + prying(fixing, ends)) / fixing->count;
    double slope = group == 0 ? 0.0 : slope_of_host(fixing);
    int count = line_loads(fixing, slope, force, moment, pull / plates, loads);
    return count + line_loads(fixing, slope, force, -moment, pull / plates, &loads[count]);
}

/* The block's screws take all: down the post and sideways as shear, away from it as pull. */
static int cleat_loads(const struct fixing *fixing, const double ends[6],
                       struct fixing_load loads[FIXING_LOADS]) {
    loads[0] = fixing_across(hypot(ends[1], ends[2]) / fixing->count,
                             pull_off(fixing, ends) / fixing->count);
    return 1;
}

/* What presses into the notch sits on wood; the screws take the rest. */
static int notched_loads(const struct fixing *fixing, const double ends[6],
                         struct fixing_load loads[FIXING_LOADS]) {
    int across = fixing->plane.across;
    double up = ends[across] * fixing->fastening.ending->axes[across][2];
    double lifting = up > 0.0 ? 0.0 : ends[across];
    double pull = (fabs(ends[fixing->plane.normal]) + prying(fixing, ends)) / fixing->count;
    loads[0] = load_in_plane(fixing, ends[0] / fixing->count, lifting / fixing->count, pull);
    return 1;
}

int fixing_loads(const struct fixing *fixing, int group, const double ends[6],
                 struct fixing_load loads[FIXING_LOADS]) {
    switch (fixing->connection->type) {
    case CONNECTION_SCREWED_LAP:
        return lap_loads(fixing, ends, loads);
    case CONNECTION_SCREWED_BUTT:
        return butt_loads(fixing, ends, loads);
    case CONNECTION_BRACKET:
        return bracket_loads(fixing, group, ends, loads);
    case CONNECTION_HINGE:
        return hinge_loads(fixing, ends, loads);
    case CONNECTION_GUSSET:
        return gusset_loads(fixing, group, ends, loads);
    case CONNECTION_CLEAT:
        return cleat_loads(fixing, ends, loads);
    case CONNECTION_NOTCHED:
        return notched_loads(fixing, ends, loads);
    default:
        return 0;
    }
}

struct glue_input fixing_glue(const struct fixing *fixing, const double ends[6]) {
    return (struct glue_input){.along = fixing->plane.width_host,
                               .across = fixing->plane.width_ending,
                               .force = {ends[0], ends[fixing->plane.across]},
                               .moment = moment_in_plane(fixing, ends),
                               .pull = fabs(ends[fixing->plane.normal]) + prying(fixing, ends),
                               .wet = fixing->fastening.wet};
}

double fixing_moment(const struct fixing *fixing, const double ends[6]) {
    switch (fixing->connection->type) {
    case CONNECTION_SCREWED_LAP:
    case CONNECTION_GUSSET:
    case CONNECTION_GLUED_LAP:
        return fabs(moment_in_plane(fixing, ends));
    default:
        return hypot(ends[4], ends[5]);
    }
}
