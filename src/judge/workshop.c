/* What to mind in the workshop: points that come out, lead holes, rust. */
#include "fixing/fastener_input.h"
#include "judge/steps.h"
#include "units/decimal.h"

#include <math.h>
#include <string.h>

/* One kind of remark about a connection: the first place, and how many more there are. */
struct remark {
    size_t count;
    struct fixing first;
    double out;       /* m that points come out, the largest */
    double end, edge; /* m asked for to the end and the edge of a stick, where there is less */
};

struct remarks { /* per connection */
    struct remark *comes_out, *near_end;
};

static void note(struct remark *remark, const struct fixing *fixing, double out, double end,
                 double edge) {
    if (remark->count++ == 0)
        remark->first = *fixing;
    remark->out = fmax(remark->out, out);
    remark->end = fmax(remark->end, end);
    remark->edge = fmax(remark->edge, edge);
}

static const char *places(const struct run *run, const struct remark *remark) {
    const char *first = fixing_place(run->arena, &remark->first);
    return remark->count == 1
               ? first
               : arena_print(run->arena, "%s and %zu more", first, remark->count - 1);
}

/* Distance from the nearest screw of a lap to the end of the stick that ends there. */
static double end_distance(const struct fixing *fixing) {
    const struct model_member *ending = fixing->fastening.ending;
    return member_extent(fixing->fastening.host, ending->axes[0]) / 2.0 -
           fixing->line / 2.0 * fabs(cos(fixing->slopes[0]));
}

/* The same to an edge of either stick. */
static double edge_distance(const struct fixing *fixing) {
    double ending = fixing->plane.width_ending - fixing->line * fabs(sin(fixing->slopes[0]));
    double host = fixing->plane.width_host - fixing->line * fabs(cos(fixing->slopes[0]));
    return fmin(ending, host) / 2.0;
}

static void look(struct remarks *remarks, const struct fixing *fixing) {
    const double dust = 1e-6;
    int connection = fixing->fastening.ending->ends[fixing->end].connection;
    const struct fixing_load load = {0};
    struct screw_input input = fixing_input(fixing, 0, &load, DURATION_TEN_YEARS);
    struct dowel_values values;
    dowel_values(input.dowel, &input.side, &input.main, &input.service, NULL, &values);
    if (values.out_by > dust && fixing->dowel.kind != DOWEL_BOLT)
        note(&remarks->comes_out[connection], fixing, values.out_by, 0.0, 0.0);
    if (fixing->connection->type != CONNECTION_SCREWED_LAP)
        return;
    struct dowel_spacing spacing = dowel_spacing(&fixing->dowel, false);
    bool near_end = end_distance(fixing) < spacing.end_pull - dust;
    bool near_edge = edge_distance(fixing) < spacing.edge_loaded - dust;
    if (near_end || near_edge)
        note(&remarks->near_end[connection], fixing, 0.0, near_end ? spacing.end_pull : 0.0,
             near_edge ? spacing.edge_loaded : 0.0);
}

static const char *length(const struct run *run, double value) {
    return quantity_print_length(run->arena, value, run->frame->units);
}

static void tell_comes_out(struct run *run, const struct remark *remark) {
    run_caution(run,
                arena_print(run->arena, "the screws of %s come out the other side by up to %s: %s",
                            remark->first.connection->name, length(run, remark->out),
                            places(run, remark)));
}

static const char *lead_holes(const struct run *run, const struct fixing *fixing) {
    struct dowel_hole hole =
        dowel_lead_hole_lateral(&fixing->dowel, fixing->fastening.ending->lumber.gravity.value);
    const char *thread = quantity_print_drill(run->arena, hole.thread_most, run->frame->units);
    if (fixing->dowel.kind == DOWEL_NAIL)
        return arena_print(run->arena, "drill lead holes of at most %s so that it does not split",
                           thread);
    return arena_print(run->arena,
                       "drill lead holes so that it does not split, %s for the thread and %s for "
                       "the shank",
                       thread, quantity_print_drill(run->arena, hole.shank, run->frame->units));
}

static void tell_near_end(struct run *run, const struct remark *remark) {
    const struct fixing *first = &remark->first;
    const char *end =
        remark->end > 0.0 ? arena_print(run->arena, "%s to the end", length(run, remark->end)) : "";
    const char *edge = remark->edge > 0.0
                           ? arena_print(run->arena, "%s to the edge", length(run, remark->edge))
                           : "";
    run_caution(run,
                arena_print(run->arena,
                            "the fasteners of %s stand nearer than %s%s%s of a stick "
                            "(%s): %s",
                            first->connection->name, end, *end && *edge ? " or " : "", edge,
                            places(run, remark),
                            first->by_angle ? "published values of that thickness ask for so much "
                                              "room, and what they carry is counted as if it were "
                                              "there"
                                            : lead_holes(run, first)));
}

static bool species_is(const struct stick *stick, const char *name) {
    return stick->species >= 0 && strstr(table_species_name(stick->species), name);
}

/* Rust, by what the wood does to plain steel. */
static void tell_rust(struct run *run) {
    const struct frame *frame = run->frame;
    bool treated = false, staining = false, plain = false, silent = false;
    for (size_t m = 0; m < frame->members.count; m++) {
        const struct stick *stick = &frame->sticks.items[frame->members.items[m].stick];
        treated |= stick->treated;
        staining |= species_is(stick, "cedar") || species_is(stick, "redwood");
    }
    bool any = false;
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            int k = run->model->members[m].ends[end].connection;
            const struct connection *connection = k < 0 ? NULL : &frame->connections.items[k];
            if (!connection || connection->fastener == FASTENER_NONE)
                continue;
            any = true;
            plain |= connection->metal == METAL_PLAIN;
            silent |= connection->metal == METAL_NOT_SAID;
        }
    if (!any || !(plain || silent))
        return;
    if (treated)
        run_caution(run, "treated wood eats plain and thinly plated steel: use hot-dip galvanized "
                         "or stainless screws and brackets there, and say so with metal:");
    if (run->model->wet && staining)
        run_caution(run, "cedar and redwood stain and eat plain steel where they get wet: use "
                         "stainless screws");
    if (run->model->wet && !treated)
        run_caution(run, plain ? "plain steel screws of the indoor kind rust and snap where it is "
                                 "damp: use hot-dip galvanized or stainless ones"
                               : "where it is damp use hot-dip galvanized or stainless screws; "
                                 "bright and yellow indoor ones rust and snap");
}

/* What is taken of cleats and bolts, once each. */
static void tell_taken(struct run *run) {
    bool cleat = false, bolt = false;
    for (size_t k = 0; k < run->frame->connections.count; k++) {
        cleat |= run->frame->connections.items[k].type == CONNECTION_CLEAT;
        bolt |= run->frame->connections.items[k].fastener == FASTENER_BOLT;
    }
    if (cleat)
        run_caution(run, "a stick on a cleat is taken as screwed down on its block with as many "
                         "screws as the block has");
    if (bolt)
        run_caution(run, arena_print(run->arena,
                                     "bolts are taken with washers under head and nut, at least %s "
                                     "times as wide as the bolt is thick",
                                     decimal_fixed(run->arena,
                                                   table_constant("washer-diameters").value, 1)));
}

void judge_workshop(struct run *run) {
    size_t count = run->frame->connections.count;
    struct remarks remarks = {ARENA_ARRAY(run->arena, struct remark, count),
                              ARENA_ARRAY(run->arena, struct remark, count)};
    for (size_t m = 0; m < run->model->member_count; m++)
        for (int end = 0; end < 2; end++) {
            struct fixing fixing;
            if (fixing_of(run->model, m, end, &fixing) && !*fixing.missing && fixing.group_count)
                look(&remarks, &fixing);
        }
    for (size_t k = 0; k < count; k++) {
        if (remarks.comes_out[k].count)
            tell_comes_out(run, &remarks.comes_out[k]);
        if (remarks.near_end[k].count)
            tell_near_end(run, &remarks.near_end[k]);
    }
    tell_taken(run);
    tell_rust(run);
}
