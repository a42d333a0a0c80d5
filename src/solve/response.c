#include "solve/response.h"

#include "base/vector.h"
#include "solve/spins.h"
#include "solve/trust.h"

#include <math.h>
#include <string.h>

static void add_column(struct response *response, struct column column) {
    response->columns[response->column_count++] = column;
}

/* Columns of load sets: as they stand, and leaned. */
static void list_sets(struct response *response, bool out_of_plumb) {
    const struct loads *loads = response->loads;
    for (size_t s = 0; s < loads->set_count; s++) {
        if (!loads->sets[s].present)
            continue;
        add_column(response, (struct column){(int)s, LEAN_NONE, -1, -1, -1});
        for (int axis = LEAN_X; out_of_plumb && loads->sets[s].leans && axis <= LEAN_Y; axis++)
            if (axis == LEAN_X || !loads->model->frame->plane)
                add_column(response, (struct column){(int)s, axis, -1, -1, -1});
    }
}

/* One column a tie; a tie that runs through joints is taken as an ordinary stick. */
static void list_ties(struct response *response) {
    const struct model *model = response->loads->model;
    for (size_t m = 0; m < model->member_count; m++)
        if (model->frame->members.items[m].acts_as == ACTS_AS_TIE &&
            model->members[m].segment_count == 1)
            add_column(response, (struct column){-1, LEAN_NONE, (int)m, -1, -1});
}

/* Three columns a foot, two in a plane frame, where nothing moves across the plane. A hold-down
 * holds both ways. */
static void list_feet(struct response *response) {
    const struct frame *frame = response->loads->model->frame;
    for (size_t k = 0; k < frame->supports.count; k++)
        for (int axis = 0; support_lifts(&frame->supports.items[k]) && axis < 3; axis++)
            if (axis != 1 || !frame->plane)
                add_column(response, (struct column){-1, LEAN_NONE, -1, (int)k, axis});
}

static void list_columns(struct arena *arena, struct response *response, bool out_of_plumb) {
    const struct model *model = response->loads->model;
    response->columns = ARENA_ARRAY(arena, struct column,
                                    3 * response->loads->set_count + model->member_count +
                                        3 * model->frame->supports.count);
    list_sets(response, out_of_plumb);
    list_ties(response);
    list_feet(response);
}

int response_column(const struct response *response, int set, int lean) {
    for (size_t c = 0; c < response->live_count; c++)
        if (response->columns[c].set == set && response->columns[c].lean == lean)
            return (int)c;
    return -1;
}

/* A load of a set as its column has it: leaned copies turn weight into a level force. */
static void leaned(const double force[3], int lean, double out[3]) {
    if (lean == LEAN_NONE) {
        memcpy(out, force, 3 * sizeof *out);
        return;
    }
    out[0] = out[1] = out[2] = 0.0;
    out[lean] = -force[2];
}

/* One N that pulls a tie: its joints are drawn apart. */
static void pull_apart(const struct response *response, int tie, size_t joint, double out[6]) {
    const struct model_member *member = &response->loads->model->members[tie];
    for (int end = 0; end < 2; end++)
        for (int c = 0; c < 3 && member->ends[end].joint == (int)joint; c++)
            out[c] = (end ? 1.0 : -1.0) * member->axes[0][c];
}

void response_joint_load(const struct response *response, size_t column, size_t joint,
                         double out[6]) {
    const struct column *which = &response->columns[column];
    if (which->set < 0) {
        memset(out, 0, 6 * sizeof *out);
        if (which->tie >= 0)
            pull_apart(response, which->tie, joint, out);
        return;
    }
    const double *load = response->loads->sets[which->set].joints[joint];
    leaned(load, which->lean, out);
    for (int c = 3; c < 6; c++)
        out[c] = which->lean == LEAN_NONE ? load[c] : 0.0;
}

size_t response_loads(const struct response *response, size_t column, size_t segment,
                      struct element_load *loads, size_t room) {
    const struct column *which = &response->columns[column];
    if (which->set < 0)
        return 0;
    const struct load_set *set = &response->loads->sets[which->set];
    const struct model *model = response->system->model;
    const struct model_member *member = &model->members[model->segments[segment].member];
    size_t count = set->first[segment + 1] - set->first[segment];
    for (size_t k = 0; k < count && k < room; k++) {
        const struct segment_load *load = &set->on_segments.items[set->first[segment] + k];
        double global[3];
        leaned(load->force, which->lean, global);
        loads[k].a = load->a;
        loads[k].b = load->b;
        for (int i = 0; i < 3; i++)
            loads[k].force[i] = vector_dot(member->axes[i], global);
    }
    return count;
}

/* Fixed-end forces of a column's loads on one segment, own ends, local axes. */
static bool fixed_ends(struct arena *arena, const struct response *response, size_t column,
                       size_t segment, const struct element *element, double f[ELEMENT_DOFS]) {
    memset(f, 0, ELEMENT_DOFS * sizeof *f);
    enum { FEW = 16 };
    struct element_load few[FEW], *loads = few;
    size_t count = response_loads(response, column, segment, few, FEW);
    if (count > FEW) {
        loads = ARENA_ARRAY(arena, struct element_load, count);
        response_loads(response, column, segment, loads, count);
    }
    for (size_t k = 0; k < count; k++)
        element_fixed_end(element, &loads[k], f);
    return count > 0;
}

static void add_to_slots(const struct segment *segment, const double global[ELEMENT_DOFS],
                         double sign, double *slots) {
    for (int end = 0; end < 2; end++)
        for (int c = 0; c < 3; c++) {
            slots[3 * segment->move[end] + c] += sign * global[6 * end + c];
            if (segment->turn[end] >= 0)
                slots[3 * segment->turn[end] + c] += sign * global[6 * end + 3 + c];
        }
}

static void gather_joints(const struct response *response, size_t column, double *slots) {
    const struct model *model = response->system->model;
    for (size_t j = 0; j < model->frame->joints.count; j++) {
        double load[6];
        response_joint_load(response, column, j, load);
        for (int c = 0; c < 3; c++) {
            slots[3 * model->move_slot[j] + c] += load[c];
            if (model->turn_slot[j] >= 0)
                slots[3 * model->turn_slot[j] + c] += load[3 + c];
        }
    }
}

/* The loads on one segment; `element` is found when the first column has one, and kept. */
static void gather_segment(struct arena *arena, const struct response *response, size_t column,
                           size_t s, struct element *room, const struct element **element,
                           double *slots) {
    if (response_loads(response, column, s, NULL, 0) == 0)
        return;
    if (!*element)
        *element = system_element(response->system, s, room);
    double f[ELEMENT_DOFS], local[ELEMENT_DOFS], global[ELEMENT_DOFS];
    if (!fixed_ends(arena, response, column, s, *element, f))
        return;
    element_to_joints(*element, f, local);
    element_to_global(*element, local, global);
    add_to_slots(&response->system->model->segments[s], global, -1.0, slots);
}

/* The loads of several columns, those with slots of their own. */
static void gather_all(struct arena *arena, const struct response *response, size_t count,
                       double *const *slots) {
    for (size_t c = 0; c < count; c++)
        if (slots[c])
            gather_joints(response, c, slots[c]);
    for (size_t s = 0; s < response->system->model->segment_count; s++) {
        struct element room;
        const struct element *element = NULL;
        for (size_t c = 0; c < count; c++)
            if (slots[c])
                gather_segment(arena, response, c, s, &room, &element, slots[c]);
    }
}

void response_gather(struct arena *arena, const struct response *response, size_t column,
                     double *slots) {
    gather_joints(response, column, slots);
    for (size_t s = 0; s < response->system->model->segment_count; s++) {
        struct element room;
        const struct element *element = NULL;
        gather_segment(arena, response, column, s, &room, &element, slots);
    }
}

/* Does the column work on a movement that nothing resists? */
static bool drives(const struct system *system, const struct mode *mode, const double *loads,
                   double largest) {
    double work = 0.0;
    for (size_t k = 0; k < 3 * system->model->slot_count; k++)
        if (system->unknown[k] >= 0)
            work += mode->slots[k] * loads[k];
    return !(fabs(work) <= 1e-9 * largest);
}

static void find_twist(struct response *response, size_t column, const double *x, double largest) {
    const struct system *system = response->system;
    for (size_t k = 0; k < system->spin_count; k++) {
        double held = fabs(system->spin_springs[k] * x[system->spins[k]]);
        if (held <= 1e-8 * largest * system->model->size)
            continue;
        response->twisted_column = (int)column;
        for (size_t i = 0; i < 3 * system->model->slot_count; i++)
            if (system->unknown[i] == (int)system->spins[k])
                response->twisted_slot = (int)(i / 3);
    }
}

/* Largest single load of a column, N. */
static double response_largest(const struct response *response, size_t column) {
    int set = response->columns[column].set;
    return set < 0 ? 1.0 : response->loads->sets[set].largest;
}

/* Scratch of one solution: the columns that can be solved. */
struct solving {
    size_t count;
    size_t *columns;
    double **loads, **x, **slots, **products;
};

static bool driven(const struct response *response, size_t column, const double *loads) {
    const struct system *system = response->system;
    double largest = response_largest(response, column);
    for (size_t m = 0; m < system->mode_count; m++)
        if (drives(system, &system->modes[m], loads, largest))
            return true;
    return false;
}

bool response_folds(struct arena *arena, const struct system *system, const struct loads *loads,
                    bool out_of_plumb) {
    struct response response = {.system = system, .loads = loads};
    size_t all = 3 * system->model->slot_count;
    if (system->mode_count == 0)
        return false;
    list_columns(arena, &response, out_of_plumb);
    double *gathered = ARENA_ARRAY(arena, double, all);
    for (size_t c = 0; c < response.column_count; c++) {
        int set = response.columns[c].set;
        if (set < 0 || set >= loads->first_pattern_set)
            continue;
        memset(gathered, 0, all * sizeof *gathered);
        response_gather(arena, &response, c, gathered);
        if (driven(&response, c, gathered))
            return true;
    }
    return false;
}

static struct solving solve_columns(struct arena *arena, struct response *response) {
    const struct system *system = response->system;
    size_t all = 3 * system->model->slot_count, columns = response->column_count;
    struct solving solving = {.columns = ARENA_ARRAY(arena, size_t, columns),
                              .loads = ARENA_ARRAY(arena, double *, columns),
                              .x = ARENA_ARRAY(arena, double *, columns),
                              .slots = ARENA_ARRAY(arena, double *, columns),
                              .products = ARENA_ARRAY(arena, double *, columns)};
    double *still = ARENA_ARRAY(arena, double, all); /* of feet until they are solved */
    double **loads = ARENA_ARRAY(arena, double *, columns);
    for (size_t c = 0; c < columns; c++)
        loads[c] = response->columns[c].foot >= 0 ? NULL : ARENA_ARRAY(arena, double, all);
    gather_all(arena, response, response->live_count, loads);
    for (size_t c = 0; c < columns; c++) {
        response->slots[c] = still;
        response->solvable[c] = !loads[c];
        if (response->solvable[c])
            continue;
        response->slots[c] = ARENA_ARRAY(arena, double, all);
        response->solved[c] = true;
        response->solvable[c] = !driven(response, c, loads[c]);
        if (!response->solvable[c])
            continue;
        size_t k = solving.count++;
        solving.columns[k] = c;
        solving.loads[k] = loads[c];
        solving.slots[k] = response->slots[c];
        solving.x[k] = ARENA_ARRAY(arena, double, system->count);
        solving.products[k] = ARENA_ARRAY(arena, double, all);
    }
    response->backward_error = trust_solve(arena, system, solving.count, solving.loads, solving.x,
                                           solving.slots, solving.products);
    struct spins spins = spins_find(arena, system);
    for (size_t k = 0; k < solving.count; k++) {
        find_twist(response, solving.columns[k], solving.x[k],
                   response_largest(response, solving.columns[k]));
        spins_unwind(system, &spins, solving.slots[k]);
    }
    return solving;
}

void response_recover_ends(struct arena *arena, struct response *response, size_t first,
                           size_t last) {
    const struct model *model = response->system->model;
    for (size_t c = first; c < last; c++) {
        response->ends[c] = ARENA_ARRAY(arena, double, ELEMENT_DOFS * model->segment_count);
        response->own[c] = ARENA_ARRAY(arena, double, ELEMENT_DOFS * model->segment_count);
    }
    for (size_t s = 0; s < model->segment_count; s++) {
        const struct segment *segment = &model->segments[s];
        struct element room;
        const struct element *element = system_element(response->system, s, &room);
        for (size_t c = first; c < last; c++) {
            double u[ELEMENT_DOFS], f[ELEMENT_DOFS];
            double *own = &response->own[c][ELEMENT_DOFS * s];
            double *ends = &response->ends[c][ELEMENT_DOFS * s];
            fixed_ends(arena, response, c, s, element, f);
            segment_movements(segment, element, response->slots[c], u);
            element_own_ends(element, u, f, own);
            for (int i = 0; i < ELEMENT_DOFS; i++) {
                ends[i] = f[i];
                for (int j = 0; j < ELEMENT_DOFS; j++)
                    ends[i] += element->k[i][j] * own[j];
            }
        }
    }
}

void response_room_for_reactions(struct arena *arena, struct response *response, size_t column) {
    response->reactions[column] =
        arena_take(arena, response->loads->model->frame->supports.count, sizeof(double[6]));
}

/* What the supports add: forces of the joints on all sticks, less the loads on the joint. */
void response_recover_reactions(struct response *response, size_t column, const double *sums,
                                const double *loads) {
    const struct model *model = response->system->model;
    const struct frame *frame = model->frame;
    for (size_t k = 0; k < frame->supports.count; k++)
        for (int part = 0; part < 2; part++) {
            int joint = frame->supports.items[k].joint;
            int slot = part ? model->turn_slot[joint] : model->move_slot[joint];
            for (int c = 0; slot >= 0 && c < 3; c++)
                if (frame->supports.items[k].held[3 * part + c])
                    response->reactions[column][k][3 * part + c] =
                        sums[3 * slot + c] - loads[3 * slot + c];
        }
}

/* Columns whose sticks are wanted in any case: few ask for those of patterns, but ties do. */
static size_t without_patterns(const struct response *response, size_t count) {
    if (count > 0 && response->columns[count - 1].tie >= 0)
        return count;
    while (count > 0 && response->columns[count - 1].set >= response->loads->first_pattern_set)
        count--;
    return count;
}

void response_need_ends(struct arena *arena, struct response *response, const double *weights) {
    for (size_t c = 0; c < response->live_count; c++)
        if (weights[c] != 0.0 && !response->ends[c])
            response_recover_ends(arena, response, c, c + 1);
}

struct response *response_solve(struct arena *arena, const struct system *system,
                                const struct loads *loads, bool out_of_plumb) {
    struct response *response = ARENA_NEW(arena, struct response);
    *response = (struct response){
        .system = system, .loads = loads, .twisted_column = -1, .twisted_slot = -1};
    list_columns(arena, response, out_of_plumb);
    size_t columns = response->column_count, others = columns; /* than feet */
    response->solvable = ARENA_ARRAY(arena, bool, columns);
    response->solved = ARENA_ARRAY(arena, bool, columns);
    response->slots = ARENA_ARRAY(arena, double *, columns);
    response->ends = ARENA_ARRAY(arena, double *, columns);
    response->own = ARENA_ARRAY(arena, double *, columns);
    response->reactions = arena_take(arena, columns, sizeof *response->reactions);
    while (others > 0 && response->columns[others - 1].foot >= 0)
        others--;
    response->live_count = others;
    for (size_t c = 0; c < others; c++)
        response_room_for_reactions(arena, response, c);
    size_t usual = without_patterns(response, others);
    struct solving solving = solve_columns(arena, response);
    response_recover_ends(arena, response, 0, usual);
    for (size_t k = 0; k < solving.count; k++) {
        size_t c = solving.columns[k];
        response_recover_reactions(response, c, solving.products[k], solving.loads[k]);
        double error = c < usual ? trust_equilibrium(response, c) : 0.0;
        if (!(error <= response->equilibrium_error))
            response->equilibrium_error = error;
    }
    return response;
}
