#include "fixing/fixing.h"

#include "frame/fastener_size.h"

#include <math.h>

#define QUARTER_INCH 0.00635

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

/* Face on face; `thick_host` is what is left of the host there. */
static void lap_groups(struct fixing *fixing, double thick_host) {
    const struct model_member *ending = fixing->fastening.ending, *host = fixing->fastening.host;
    struct dowel_layer ending_layer = wood_layer(ending, fixing->plane.thick_ending);
    struct dowel_layer host_layer = wood_layer(host, thick_host);
    bool heads_on_host = thick_host < fixing->plane.thick_ending - 1e-9;
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

/* A plate on both sticks: the screws in each, so thick where they go in. */
static void plate_groups(struct fixing *fixing, struct dowel_layer plate, double thick_ending,
                         double thick_host) {
    fixing->groups[0] = (struct fixing_group){"in the stick", PART_PLATE, PART_ENDING, plate,
                                              wood_layer(fixing->fastening.ending, thick_ending)};
    fixing->groups[1] = (struct fixing_group){"in its host", PART_PLATE, PART_HOST, plate,
                                              wood_layer(fixing->fastening.host, thick_host)};
    fixing->group_count = 2;
}

/* Steel in the corner of two sticks or flat on their sides: the thinner way through each. */
static void steel_groups(struct fixing *fixing) {
    const struct lap_plane *plane = &fixing->plane;
    plate_groups(fixing, steel_layer(fixing->connection->steel),
                 fmin(plane->width_ending, plane->thick_ending),
                 fmin(plane->width_host, plane->thick_host));
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
        lap_groups(fixing, fixing->plane.thick_host);
        lap_line(fixing);
        return true;
    case CONNECTION_NOTCHED:
        lap_groups(fixing, fixing->plane.thick_host - connection->depth);
        return true;
    case CONNECTION_SCREWED_BUTT:
        butt_groups(fixing);
        return true;
    case CONNECTION_BRACKET:
    case CONNECTION_HINGE:
        steel_groups(fixing);
        return true;
    case CONNECTION_GUSSET:
        plate_groups(fixing, plywood_layer(connection->sheet), fixing->plane.thick_ending,
                     fixing->plane.thick_host);
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
    return fixing->fastening.ending->lumber.has_gravity &&
           fixing->fastening.host->lumber.has_gravity;
}

/* By its size as named; of a lag or bolt by its diameter, which has many spellings. */
static bool find_dowel(struct fixing *fixing) {
    const struct connection *connection = fixing->connection;
    enum dowel_kind kind = fastener_dowel_kind(connection->fastener);
    return kind == DOWEL_NAIL || kind == DOWEL_SCREW
               ? dowel_find(kind, NAIL_COMMON, connection->size_name, &fixing->dowel)
               : dowel_of_diameter(kind, NAIL_COMMON, connection->diameter, &fixing->dowel);
}

static bool overlap_not_said(const struct fixing *fixing) {
    return fixing->plane.parallel && fixing->connection->type != CONNECTION_GUSSET;
}

static bool bolt_in_end_grain(const struct fixing *fixing) {
    return fixing->connection->type == CONNECTION_SCREWED_BUTT &&
           fixing->connection->fastener == FASTENER_BOLT;
}

/* Why nothing can be said of it, if so. */
static void find_missing(struct fixing *fixing) {
    fixing->own_material = !wood_is_known(fixing);
    if (fixing->own_material) {
        fixing->missing = "no specific gravity of the user's own material";
        fixing->remedy = "name the species, or ask who knows the wood what its screws hold";
    } else if (overlap_not_said(fixing)) {
        fixing->missing = "sticks that run the same way, with no overlap said";
        fixing->remedy =
            "join them with a gusset on each side, or use one stick that is long enough";
    } else if (bolt_in_end_grain(fixing)) {
        fixing->missing = "a bolt into end grain";
        fixing->remedy = "lap the sticks and bolt through both, or use lags or screws";
    } else if (fixing->group_count && !find_dowel(fixing)) {
        fixing->missing = "no published values for this fastener";
        fixing->remedy = "use a size that batten table lists";
    } else if (fixing->group_count && !set_length(fixing)) {
        fixing->missing = "how long its screws are is not said";
        fixing->remedy = "say how long they are in its entry under connections";
    }
}

bool fixing_between(const struct fastening *fastening, struct fixing *fixing) {
    *fixing = (struct fixing){.fastening = *fastening,
                              .connection = fastening->connection,
                              .count = fastening->connection->count,
                              .missing = "",
                              .remedy = ""};
    fixing->plane = fastening_plane(fastening);
    if (!groups_of(fixing))
        return false;
    fixing->by_angle = fixing->connection->diameter >= QUARTER_INCH - 1e-9;
    find_missing(fixing);
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
