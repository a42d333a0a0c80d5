#include "fixing/fixing.h"

#include "base/vector.h"
#include "check/pattern.h"

#include <math.h>

#define QUARTER_INCH 0.00635
#define PI 3.14159265358979323846

static enum dowel_kind kind_of(enum fastener_kind kind) {
    switch (kind) {
    case FASTENER_NAIL:
        return DOWEL_NAIL;
    case FASTENER_LAG:
        return DOWEL_LAG;
    case FASTENER_BOLT:
        return DOWEL_BOLT;
    default:
        return DOWEL_SCREW;
    }
}

static struct dowel_layer wood_layer(const struct model_member *stick, double thickness) {
    return (struct dowel_layer){.thickness = thickness, .gravity = stick->lumber.gravity};
}

static struct dowel_layer steel_layer(double thickness) {
    return (struct dowel_layer){.thickness = thickness, .steel = true};
}

static struct dowel_layer plywood_layer(int sheet) {
    struct dowel_layer layer = {.thickness = table_sheet(sheet)->thickness};
    if (!table_value("sheet-gravity", table_sheet(sheet)->name, &layer.gravity))
        layer.gravity = (struct cited){.value = NAN, .source = ""};
    return layer;
}

/* The length that a bolt or a screw of unknown length has: a bolt goes through. */
static bool set_length(struct fixing *fixing) {
    const struct connection *connection = fixing->connection;
    const struct fixing_group *group = &fixing->groups[0];
    if (connection->length.given)
        dowel_set_length(&fixing->dowel, connection->length.value);
    else if (fixing->dowel.kind == DOWEL_BOLT)
        dowel_set_length(&fixing->dowel, group->side.thickness + group->main.thickness);
    else if (fixing->dowel.kind != DOWEL_NAIL)
        return false;
    return true;
}

static void lap_groups(struct fixing *fixing) {
    const struct model_member *ending = fixing->fastening.ending, *host = fixing->fastening.host;
    struct dowel_layer ending_layer = wood_layer(ending, fixing->plane.thick_ending);
    struct dowel_layer host_layer = wood_layer(host, fixing->plane.thick_host);
    bool heads_on_host = fixing->plane.thick_host < fixing->plane.thick_ending - 1e-9;
    fixing->groups[0] =
        heads_on_host ? (struct fixing_group){"", PART_HOST, PART_ENDING, host_layer, ending_layer}
                      : (struct fixing_group){"", PART_ENDING, PART_HOST, ending_layer, host_layer};
    fixing->group_count = 1;
}

/* The line of a lap lies on one diagonal or the other of the patch that the screws have. */
static void lap_line(struct fixing *fixing) {
    struct lap lap = fastening_lap(&fixing->fastening);
    double edge = 2.0 * table_constant("lap-edge-diameters").value * fixing->connection->diameter;
    double along = fmax(0.0, lap.plane.width_host - edge);
    double across = fmax(0.0, lap.plane.width_ending - edge);
    fixing->line = lap.line;
    fixing->slopes[0] = atan2(across, along);
    fixing->slopes[1] = -fixing->slopes[0];
}

static void butt_groups(struct fixing *fixing) {
    const struct model_member *ending = fixing->fastening.ending, *host = fixing->fastening.host;
    double through = member_extent(host, ending->axes[0]);
    struct dowel_layer main = wood_layer(ending, ending->length);
    main.end_grain = true;
    fixing->groups[0] =
        (struct fixing_group){"", PART_HOST, PART_ENDING, wood_layer(host, through), main};
    fixing->group_count = 1;
}

/* One plate over both sticks: the screws in each. */
static void plate_groups(struct fixing *fixing, struct dowel_layer plate) {
    fixing->groups[0] =
        (struct fixing_group){"in the stick", PART_PLATE, PART_ENDING, plate,
                              wood_layer(fixing->fastening.ending, fixing->plane.thick_ending)};
    fixing->groups[1] =
        (struct fixing_group){"in its host", PART_PLATE, PART_HOST, plate,
                              wood_layer(fixing->fastening.host, fixing->plane.thick_host)};
    fixing->group_count = 2;
}

static void cleat_groups(struct fixing *fixing) {
    const struct model_member *ending = fixing->fastening.ending, *host = fixing->fastening.host;
    struct dowel_layer block = wood_layer(ending, fixing->connection->block);
    fixing->groups[0] =
        (struct fixing_group){"in the block", PART_PLATE, PART_HOST, block,
                              wood_layer(host, member_extent(host, ending->axes[0]))};
    fixing->group_count = 1;
}

static bool groups_of(struct fixing *fixing) {
    const struct connection *connection = fixing->connection;
    switch (connection->type) {
    case CONNECTION_SCREWED_LAP:
        lap_groups(fixing);
        lap_line(fixing);
        return true;
    case CONNECTION_NOTCHED:
        lap_groups(fixing);
        return true;
    case CONNECTION_SCREWED_BUTT:
        butt_groups(fixing);
        return true;
    case CONNECTION_BRACKET:
    case CONNECTION_HINGE:
        plate_groups(fixing, steel_layer(connection->steel));
        return true;
    case CONNECTION_GUSSET:
        plate_groups(fixing, plywood_layer(connection->sheet));
        fixing->line = fastening_gusset_line(connection);
        return true;
    case CONNECTION_CLEAT:
        cleat_groups(fixing);
        return true;
    case CONNECTION_GLUED_LAP:
        return true;
    default:
        return false;
    }
}

static bool wood_is_known(const struct fixing *fixing) {
    for (int g = 0; g < fixing->group_count; g++) {
        const struct fixing_group *group = &fixing->groups[g];
        enum fixing_part parts[] = {group->side_part, group->main_part};
        for (int k = 0; k < 2; k++) {
            const struct model_member *stick =
                parts[k] == PART_HOST ? fixing->fastening.host : fixing->fastening.ending;
            if (parts[k] != PART_PLATE && !stick->lumber.has_gravity)
                return false;
        }
    }
    return fixing->connection->type != CONNECTION_CLEAT ||
           fixing->fastening.ending->lumber.has_gravity;
}

bool fixing_between(const struct fastening *fastening, struct fixing *fixing) {
    *fixing = (struct fixing){.fastening = *fastening,
                              .connection = fastening->connection,
                              .count = fastening->connection->count,
                              .missing = ""};
    fixing->plane = fastening_plane(fastening);
    if (!groups_of(fixing))
        return false;
    if (!fixing->group_count)
        return true;
    fixing->by_angle = fixing->connection->diameter >= QUARTER_INCH - 1e-9;
    fixing->own_material = !wood_is_known(fixing);
    if (!dowel_find(kind_of(fixing->connection->fastener), NAIL_COMMON,
                    fixing->connection->size_name, &fixing->dowel))
        fixing->missing = "no published values for this fastener";
    else if (fixing->own_material)
        fixing->missing = "no specific gravity of the user's own material";
    else if (fixing->plane.parallel && fixing->connection->type != CONNECTION_GUSSET)
        fixing->missing = "sticks that run the same way, with no overlap said";
    else if (!set_length(fixing))
        fixing->missing = "how long its screws are is not said";
    return true;
}

bool fixing_of(const struct model *model, size_t member, int end, struct fixing *fixing) {
    const struct member_end *at = &model->members[member].ends[end];
    if (at->host || at->connection < 0)
        return false;
    size_t host = (size_t)model->host[at->joint];
    struct fastening fastening = {.connection = &model->frame->connections.items[at->connection],
                                  .ending = &model->members[member],
                                  .host = &model->members[host],
                                  .wet = model->wet};
    if (!fixing_between(&fastening, fixing))
        return false;
    fixing->model = model;
    fixing->member = member;
    fixing->end = end;
    fixing->joint = at->joint;
    fixing->host = host;
    return true;
}

/* Angle between a direction in the plane (along the stick, across it) and the grain of the host. */
static double angle_to_host(const struct fixing *fixing, double along, double across) {
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
                                .angle_host = angle_to_host(fixing, along, across)};
}

/* Whatever its direction: across the grain of both. */
static struct fixing_load load_any_way(double shear, double pull) {
    return (struct fixing_load){shear, pull, PI / 2.0, PI / 2.0};
}

/* What pulls the stick's end away from its host, along the stick. */
static double pull_off(const struct fixing *fixing, const double ends[6]) {
    double out = fixing->end ? ends[0] : -ends[0];
    return isnan(out) ? NAN : fmax(0.0, out);
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

/* Of a line of fasteners, the one with most on it. */
static struct fixing_load worst_of_line(const struct fixing *fixing, double slope,
                                        const double force[2], double moment, double pull) {
    enum { MOST = 100 };
    double at[MOST][2], forces[MOST][2];
    size_t count = fixing->count > MOST ? MOST : (size_t)fixing->count, worst = 0;
    pattern_line(count, fixing->line, slope, at);
    pattern_forces(&(struct pattern){count, (const double(*)[2])at}, force, moment, forces);
    for (size_t k = 1; k < count; k++)
        if (ratio_worse(hypot(forces[k][0], forces[k][1]),
                        hypot(forces[worst][0], forces[worst][1])))
            worst = k;
    return load_in_plane(fixing, forces[worst][0], forces[worst][1], pull);
}

static int lap_loads(const struct fixing *fixing, const double ends[6],
                     struct fixing_load loads[FIXING_LOADS]) {
    const double force[2] = {ends[0], ends[fixing->plane.across]};
    double pull = (fabs(ends[fixing->plane.normal]) + prying(fixing, ends)) / fixing->count;
    for (int k = 0; k < 2; k++)
        loads[k] =
            worst_of_line(fixing, fixing->slopes[k], force, moment_in_plane(fixing, ends), pull);
    return 2;
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
    loads[0] = load_any_way(shear, pull_off(fixing, ends) / fixing->count);
    return 1;
}

/* A leg flat on the stick: the force along it shears, the force across it pulls; a leg flat on the
 * host the other way about. The angle itself pries open over the screws nearest to its corner. */
static int bracket_loads(const struct fixing *fixing, int group, const double ends[6],
                         struct fixing_load loads[FIXING_LOADS]) {
    double pries = hypot(ends[4], ends[5]) / (2.0 * table_constant("bracket-elbow").value);
    double across = hypot(ends[1], ends[2]), n = fixing->count;
    loads[0] = group == 0 ? load_any_way(fabs(ends[0]) / n, (across + pries) / n)
                          : load_any_way(across / n, (pull_off(fixing, ends) + pries) / n);
    if (group == 1)
        return 1;
    loads[1] = load_any_way(hypot(ends[0], across) / n, pries / n);
    return 2;
}

/* The force may shear the screws of a leaf or pull at them. */
static int hinge_loads(const struct fixing *fixing, const double ends[6],
                       struct fixing_load loads[FIXING_LOADS]) {
    double force = hypot(ends[0], hypot(ends[1], ends[2])) / fixing->count;
    loads[0] = load_any_way(force, 0.0);
    loads[1] = load_any_way(0.0, force);
    return 2;
}

/* The middle of a group lies beside the joint: the force across gains by that arm. */
static int gusset_loads(const struct fixing *fixing, int group, const double ends[6],
                        struct fixing_load loads[FIXING_LOADS]) {
    double plates = fixing->connection->plates;
    double beside = group == 0 ? fixing->plane.width_host / 2.0 : fixing->plane.width_ending / 2.0;
    double arm = beside + table_constant("gusset-spacing").value / 2.0 + fixing->line / 2.0;
    const double force[2] = {ends[0] / plates, ends[fixing->plane.across] / plates};
    double moment =
        (fabs(moment_in_plane(fixing, ends)) / plates + hypot(force[0], force[1]) * arm);
    double pull = (fabs(ends[fixing->plane.normal]) + prying(fixing, ends)) / fixing->count;
    double slope = group == 0 ? 0.0 : angle_to_host(fixing, 1.0, 0.0);
    loads[0] = worst_of_line(fixing, slope, force, moment, pull / plates);
    loads[1] = worst_of_line(fixing, slope, force, -moment, pull / plates);
    return 2;
}

/* The block's screws take all: down the post and sideways as shear, away from it as pull. */
static int cleat_loads(const struct fixing *fixing, const double ends[6],
                       struct fixing_load loads[FIXING_LOADS]) {
    loads[0] = load_any_way(hypot(ends[1], ends[2]) / fixing->count,
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

const char *fixing_place(struct arena *arena, const struct fixing *fixing) {
    const struct frame *frame = fixing->model->frame;
    return arena_print(arena, "%s on %s at %s", frame->members.items[fixing->member].name,
                       frame->members.items[fixing->host].name,
                       frame->joints.items[fixing->joint].name);
}

const char *fixing_where(struct arena *arena, const struct fixing *fixing) {
    const struct frame *frame = fixing->model->frame;
    return arena_print(arena, "%s/%s", frame->joints.items[fixing->joint].name,
                       frame->members.items[fixing->member].name);
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

static double angle_in(enum fixing_part part, const struct fixing_load *load) {
    return part == PART_HOST     ? load->angle_host
           : part == PART_ENDING ? load->angle_ending
                                 : PI / 2.0;
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
    return input;
}

double fixing_holds_along(const struct fixing *fixing, enum duration duration) {
    bool sideways = fixing->connection->type == CONNECTION_SCREWED_LAP ||
                    fixing->connection->type == CONNECTION_GUSSET;
    double least = INFINITY;
    if (!sideways || *fixing->missing)
        return NAN;
    const struct fixing_load load = {.angle_host = angle_to_host(fixing, 1.0, 0.0)};
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
