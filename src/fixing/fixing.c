#include "fixing/fixing.h"

#include <math.h>

#define QUARTER_INCH 0.00635

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
