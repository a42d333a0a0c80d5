/* What to mind in the workshop: points that come out, lead holes, rust. */
#include "fixing/fixing.h"
#include "judge/steps.h"

#include <math.h>
#include <string.h>

/* One kind of remark about a connection: the first place, and how many more there are. */
struct remark {
    size_t count;
    struct fixing first;
    double value; /* the largest, m */
};

struct remarks { /* per connection */
    struct remark *comes_out, *near_end;
};

static void note(struct remark *remark, const struct fixing *fixing, double value) {
    if (remark->count++ == 0)
        remark->first = *fixing;
    remark->value = fmax(remark->value, value);
}

static const char *places(const struct run *run, const struct remark *remark) {
    const char *first = fixing_place(run->arena, &remark->first);
    return remark->count == 1
               ? first
               : arena_print(run->arena, "%s and %zu more", first, remark->count - 1);
}

static double gravity_of(const struct fixing *fixing) {
    return fixing->fastening.ending->lumber.gravity.value;
}

/* Distance from the nearest screw of a lap to the end of the stick that ends there. */
static double end_distance(const struct fixing *fixing) {
    const struct model_member *ending = fixing->fastening.ending;
    return member_extent(fixing->fastening.host, ending->axes[0]) / 2.0 -
           fixing->line / 2.0 * fabs(cos(fixing->slopes[0]));
}

static void look(struct remarks *remarks, const struct fixing *fixing) {
    int connection = fixing->fastening.ending->ends[fixing->end].connection;
    const struct fixing_load load = {0};
    struct screw_input input = fixing_input(fixing, 0, &load, DURATION_TEN_YEARS);
    struct dowel_values values;
    dowel_values(input.dowel, &input.side, &input.main, &input.service, NULL, &values);
    if (values.out_by > 1e-6 && fixing->dowel.kind != DOWEL_BOLT)
        note(&remarks->comes_out[connection], fixing, values.out_by);
    if (fixing->connection->type != CONNECTION_SCREWED_LAP || fixing->dowel.kind == DOWEL_BOLT)
        return;
    struct dowel_spacing spacing = dowel_spacing(&fixing->dowel, false);
    if (end_distance(fixing) < spacing.end_pull)
        note(&remarks->near_end[connection], fixing, spacing.end_pull);
}

static void tell_comes_out(struct run *run, const struct remark *remark) {
    run_caution(run,
                arena_print(run->arena, "the screws of %s come out the other side by up to %s: %s",
                            remark->first.connection->name,
                            quantity_print_length(run->arena, remark->value, run->frame->units),
                            places(run, remark)));
}

static void tell_near_end(struct run *run, const struct remark *remark) {
    struct dowel_hole hole =
        dowel_lead_hole_lateral(&remark->first.dowel, gravity_of(&remark->first));
    run_caution(
        run, arena_print(run->arena,
                         "the fasteners of %s stand nearer than %s to the end of a stick (%s): "
                         "drill lead holes so that it does not split, %s for the thread and %s for "
                         "the shank",
                         remark->first.connection->name,
                         quantity_print_length(run->arena, remark->value, run->frame->units),
                         places(run, remark),
                         quantity_print_drill(run->arena, hole.thread_most, run->frame->units),
                         quantity_print_drill(run->arena, hole.shank, run->frame->units)));
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

static void tell_cleats(struct run *run) {
    for (size_t k = 0; k < run->frame->connections.count; k++)
        if (run->frame->connections.items[k].type == CONNECTION_CLEAT) {
            run_caution(run, "a stick on a cleat is taken as screwed down on its block with as "
                             "many screws as the block has");
            return;
        }
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
    tell_cleats(run);
    tell_rust(run);
}
