#include "loads/loads.h"

#include "base/vector.h"
#include "loads/combinations.h"
#include "loads/panels.h"
#include "loads/patterns.h"
#include "loads/push.h"
#include "loads/shelves.h"
#include "loads/weather.h"

#include <math.h>
#include <stdlib.h>

void loads_on_member(struct arena *arena, const struct model *model, struct load_set *set,
                     int member, double from, double to, const double force[3]) {
    const struct model_member *stick = &model->members[member];
    from = fmax(from, 0.0);
    to = fmin(to, stick->length);
    bool point = !(to > from);
    for (size_t k = 0; k < stick->segment_count; k++) {
        size_t s = stick->first_segment + k;
        const struct segment *segment = &model->segments[s];
        double end = segment->start + segment->length;
        bool last = k + 1 == stick->segment_count;
        double a = fmax(from, segment->start), b = fmin(to, end);
        bool here = point ? from < end || last : b > a;
        if (!here)
            continue;
        struct segment_load load = {
            .segment = (int)s, .a = a - segment->start, .b = (point ? a : b) - segment->start};
        for (int c = 0; c < 3; c++)
            load.force[c] = force[c];
        ARRAY_PUSH(arena, &set->on_segments, load);
        double whole = vector_length(force) * (point ? 1.0 : b - a);
        set->largest = fmax(set->largest, whole);
        if (point)
            return;
    }
}

static void add_self_weight(struct arena *arena, const struct model *model, struct load_set *set) {
    for (size_t m = 0; m < model->member_count; m++) {
        const struct model_member *member = &model->members[m];
        if (member->weight > 0.0)
            loads_on_member(arena, model, set, (int)m, 0.0, member->length,
                            (double[3]){0.0, 0.0, -member->weight});
    }
}

void loads_explicit(struct arena *arena, const struct model *model, struct load_set *set,
                    const struct load *load) {
    set->present = true;
    if (load->type == LOAD_LINE) {
        loads_on_member(arena, model, set, load->member, 0.0, model->members[load->member].length,
                        load->force);
    } else if (load->type == LOAD_POINT) {
        loads_on_member(arena, model, set, load->member, load->at, load->at, load->force);
    } else {
        for (int c = 0; c < 3; c++) {
            set->joints[load->joint][c] += load->force[c];
            set->joints[load->joint][3 + c] += load->moment[c];
            set->largest = fmax(set->largest, fabs(load->force[c]));
            if (model->size > 0.0)
                set->largest = fmax(set->largest, fabs(load->moment[c]) / model->size);
        }
    }
}

static int compare_loads(const void *left, const void *right) {
    const struct segment_load *a = left, *b = right;
    if (a->segment != b->segment)
        return a->segment < b->segment ? -1 : 1;
    if (a->a != b->a)
        return a->a < b->a ? -1 : 1;
    if (a->b != b->b)
        return a->b < b->b ? -1 : 1;
    /* in one order however the C library sorts: sums keep their last bits */
    for (int c = 0; c < 3; c++)
        if (a->force[c] != b->force[c])
            return a->force[c] < b->force[c] ? -1 : 1;
    return 0;
}

/* Sort by segment and index. */
static void seal(struct arena *arena, const struct model *model, struct load_set *set) {
    set->first = ARENA_ARRAY(arena, size_t, model->segment_count + 1);
    if (set->on_segments.count)
        qsort(set->on_segments.items, set->on_segments.count, sizeof *set->on_segments.items,
              compare_loads);
    for (size_t k = 0; k < set->on_segments.count; k++)
        set->first[set->on_segments.items[k].segment + 1]++;
    for (size_t s = 0; s < model->segment_count; s++)
        set->first[s + 1] += set->first[s];
}

/* Case of the file -> set that its explicit loads go to; -1 where the case does not occur. */
static int *number_sets(struct arena *arena, const struct frame *frame, size_t *set_count) {
    int *set_of = ARENA_ARRAY(arena, int, frame->cases.count);
    for (size_t c = 0; c < frame->cases.count; c++)
        set_of[c] = -1;
    set_of[CASE_SELF] = SET_SELF;
    set_of[CASE_TRAY] = SET_TRAY_LONG;
    set_of[CASE_PUSH_X] = SET_PUSH_X;
    set_of[CASE_PUSH_Y] = SET_PUSH_Y;
    *set_count = SET_FIRST_OTHER;
    for (size_t k = 0; k < frame->loads.count; k++)
        if (set_of[frame->loads.items[k].load_case] < 0)
            set_of[frame->loads.items[k].load_case] = -2;
    for (size_t c = 0; c < frame->cases.count; c++)
        if (set_of[c] == -2)
            set_of[c] = (int)(*set_count)++;
    return set_of;
}

/* One case of the file, or a variant of it: the weather set, then what else belongs to it. */
static void add_case(struct loads *loads, struct load_case made, int set, int other) {
    if (set >= 0 && loads->sets[set].present)
        made.sets[made.set_count++] = set;
    if (other >= 0 && loads->sets[other].present)
        made.sets[made.set_count++] = other;
    if (made.set_count)
        loads->cases[loads->case_count++] = made;
}

/* `set_of` as number_sets() gives it; the sets of the weather follow from `first_weather`. */
static void build_cases(struct arena *arena, struct loads *loads, const int *set_of,
                        size_t first_weather) {
    const struct frame *frame = loads->model->frame;
    const struct weather *weather = loads->weather;
    loads->cases = ARENA_ARRAY(arena, struct load_case, frame->cases.count + weather->cases.count);
    for (size_t c = 0; c < frame->cases.count; c++) {
        struct load_case made = {
            .name = frame->cases.items[c], .variant = "", .frame_case = (int)c};
        size_t before = loads->case_count;
        for (size_t w = 0; w < weather->cases.count; w++) {
            if (weather->cases.items[w].frame_case != (int)c)
                continue;
            made.name = weather->cases.items[w].name;
            made.variant = weather->cases.items[w].variant;
            add_case(loads, made, (int)(first_weather + w), set_of[c]);
        }
        if (loads->case_count == before)
            add_case(loads, made, set_of[c], c == CASE_TRAY ? SET_TRAY_SHORT : -1);
    }
}

static void measure_shelves(struct arena *arena, struct loads *loads) {
    const struct frame *frame = loads->model->frame;
    loads->shelves = ARENA_ARRAY(arena, struct shelf_loading, frame->shelves.count);
    for (size_t k = 0; k < frame->shelves.count; k++)
        loads->shelves[k] = shelves_measure(arena, loads->model, &frame->shelves.items[k]);
}

static void load_shelves(struct arena *arena, struct loads *loads) {
    const struct frame *frame = loads->model->frame;
    for (size_t k = 0; k < frame->shelves.count; k++) {
        const struct shelf *shelf = &frame->shelves.items[k];
        struct load_set *trays =
            &loads->sets[shelf->short_standing ? SET_TRAY_SHORT : SET_TRAY_LONG];
        shelves_load(arena, loads->model, shelf, &loads->shelves[k],
                     frame->self_weight ? &loads->sets[SET_SELF] : NULL, trays);
        if (shelf->trays != TRAYS_NONE)
            trays->present = true;
    }
}

/* More or fewer trays than described. */
static void share_trays(struct loads *loads) {
    const struct frame *frame = loads->model->frame;
    double share = frame->tray_share;
    for (int set = SET_TRAY_LONG; set <= SET_TRAY_SHORT; set++) {
        struct load_set *trays = &loads->sets[set];
        for (size_t k = 0; k < trays->on_segments.count; k++)
            for (int i = 0; i < 3; i++)
                trays->on_segments.items[k].force[i] *= share;
        for (size_t j = 0; j < frame->joints.count; j++)
            for (int i = 0; i < 6; i++)
                trays->joints[j][i] *= share;
    }
    for (size_t k = 0; k < frame->shelves.count; k++)
        loads->shelves[k].trays *= share;
}

/* A push that the file does not give itself. */
static void add_pushes(struct arena *arena, struct loads *loads) {
    const struct frame *frame = loads->model->frame;
    int *joints;
    size_t count = push_joints(arena, loads->model, &joints);
    double force = push_force(loads);
    if (count == 0)
        ARRAY_PUSH(arena, &loads->cautions,
                   "no stick is steeper than 45 degrees, so nobody is taken to lean on the frame");
    for (int axis = 0; axis < (frame->plane ? 1 : 2); axis++) {
        struct load_set *set = &loads->sets[axis ? SET_PUSH_Y : SET_PUSH_X];
        if (set->present || count == 0)
            continue;
        set->present = true;
        set->largest = force / (double)count;
        for (size_t k = 0; k < count; k++)
            set->joints[joints[k]][axis] += force / (double)count;
    }
}

struct loads *loads_build(struct arena *arena, const struct model *model) {
    const struct frame *frame = model->frame;
    struct loads *loads = ARENA_NEW(arena, struct loads);
    loads->model = model;
    measure_shelves(arena, loads);
    struct weather *weather = weather_build(arena, model, loads->shelves);
    loads->weather = weather;
    int *set_of = number_sets(arena, frame, &loads->set_count);
    size_t first_weather = loads->set_count;
    loads->set_count += weather->cases.count;
    loads->sets = ARENA_ARRAY(arena, struct load_set, loads->set_count);
    for (size_t s = 0; s < first_weather; s++) {
        loads->sets[s].joints = arena_take(arena, frame->joints.count, sizeof(double[6]));
        loads->sets[s].leans = s <= SET_TRAY_SHORT || (int)s == set_of[CASE_SNOW];
    }
    for (size_t w = 0; w < weather->cases.count; w++)
        loads->sets[first_weather + w] = weather->cases.items[w].set;
    for (size_t k = 0; k < weather->cautions.count; k++)
        ARRAY_PUSH(arena, &loads->cautions, weather->cautions.items[k]);
    if (frame->self_weight) {
        loads->sets[SET_SELF].present = true;
        add_self_weight(arena, model, &loads->sets[SET_SELF]);
        panels_weigh(arena, model, &loads->sets[SET_SELF]);
    }
    load_shelves(arena, loads);
    for (size_t k = 0; k < frame->loads.count; k++)
        loads_explicit(arena, model, &loads->sets[set_of[frame->loads.items[k].load_case]],
                       &frame->loads.items[k]);
    share_trays(loads);
    add_pushes(arena, loads);
    patterns_build(arena, loads);
    for (size_t s = 0; s < loads->set_count; s++)
        seal(arena, model, &loads->sets[s]);
    build_cases(arena, loads, set_of, first_weather);
    combinations_build(arena, loads);
    return loads;
}

double loads_weight(const struct loads *loads, int set) {
    const struct load_set *of = &loads->sets[set];
    double weight = 0.0;
    for (size_t k = 0; k < of->on_segments.count; k++) {
        const struct segment_load *load = &of->on_segments.items[k];
        weight -= load->force[2] * (load->b > load->a ? load->b - load->a : 1.0);
    }
    for (size_t j = 0; j < loads->model->frame->joints.count; j++)
        weight -= of->joints[j][2];
    return weight;
}

double loads_case_factor(const struct loads *loads, int combination, int frame_case) {
    const struct load_combination *in = &loads->combinations[combination];
    double factor = 0.0;
    for (size_t t = 0; t < in->term_count; t++)
        if (loads->cases[in->terms[t].load_case].frame_case == frame_case)
            factor += in->terms[t].factor;
    return factor;
}

double loads_set_share(const struct load_combination *in, int set) {
    return set == SET_TRAY_SHORT ? in->short_trays : 1.0;
}

double loads_tray_factor(const struct loads *loads, int combination, bool short_standing) {
    double share = loads_set_share(&loads->combinations[combination],
                                   short_standing ? SET_TRAY_SHORT : SET_TRAY_LONG);
    return share * loads_case_factor(loads, combination, CASE_TRAY);
}

double loads_shelf_snow(const struct loads *loads, int combination, size_t shelf) {
    return loads_case_factor(loads, combination, CASE_SNOW) * loads->weather->shelf_snow[shelf];
}
