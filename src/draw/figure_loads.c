#include "draw/figure.h"

#include "base/vector.h"

#include <math.h>
#include <string.h>

/* The loads of the combination that is shown, without the frame's own weight: for each stick and
 * each joint arrows with what they come to together. */

enum { TOLD_EACH = 6 }; /* equal values in a view; more are told once */
#define ARROW 7.0       /* mm */
#define EVERY 9.0       /* mm between the arrows of one stick */
#define SEEN_LEAST 0.35 /* a load that points more towards the eye is left out */

struct on_stick {
    double force[3]; /* N, all of it */
    double from, to; /* m along the stick */
    bool any;
};

static double factor_in(const struct load_combination *in, int load_case, int set) {
    double factor = 0.0;
    for (size_t t = 0; t < in->term_count; t++)
        if (in->terms[t].load_case == load_case)
            factor += in->terms[t].factor * loads_set_share(in, set);
    return factor;
}

/* How often a set acts in the combination shown; without one (a frame that folds) once, but nobody
 * leans on it. */
static double factor_of(const struct drawing *drawing, size_t set) {
    const struct loads *loads = drawing->loads;
    const char *name = drawing->result->bent.combination;
    double factor = 0.0;
    if (set == SET_SELF)
        return 0.0;
    for (size_t c = 0; c < loads->case_count; c++)
        for (int k = 0; k < loads->cases[c].set_count; k++) {
            if (loads->cases[c].sets[k] != (int)set)
                continue;
            if (!name)
                factor += set == SET_PUSH_X || set == SET_PUSH_Y ? 0.0 : 1.0;
            for (size_t b = 0; name && b < loads->combination_count; b++)
                if (strcmp(loads->combinations[b].name, name) == 0)
                    factor += factor_in(&loads->combinations[b], (int)c, (int)set);
        }
    return factor;
}

static void gather_set(const struct drawing *drawing, size_t s, double factor,
                       struct on_stick *sticks, double (*joints)[3]) {
    const struct load_set *set = &drawing->loads->sets[s];
    for (size_t k = 0; k < set->on_segments.count; k++) {
        const struct segment_load *load = &set->on_segments.items[k];
        const struct segment *segment = &drawing->model->segments[load->segment];
        struct on_stick *on = &sticks[segment->member];
        double times = factor * (load->b > load->a ? load->b - load->a : 1.0);
        for (int c = 0; c < 3; c++)
            on->force[c] += times * load->force[c];
        double from = segment->start + load->a, to = segment->start + load->b;
        on->from = on->any ? fmin(on->from, from) : from;
        on->to = on->any ? fmax(on->to, to) : to;
        on->any = true;
    }
    for (size_t j = 0; j < drawing->frame->joints.count; j++)
        for (int c = 0; c < 3; c++)
            joints[j][c] += factor * set->joints[j][c];
}

static bool seen_from_here(const struct figure *figure, const double force[3], struct point *way) {
    double size = vector_length(force);
    if (!(size > 0.0))
        return false;
    *way = figure_direction(figure, force);
    double shown = hypot(way->x, way->y);
    bool seen = shown >= SEEN_LEAST * size * figure->scale;
    way->x /= shown > 0.0 ? shown : 1.0;
    way->y /= shown > 0.0 ? shown : 1.0;
    return seen;
}

static void arrow(struct figure *figure, struct point tip, struct point way) {
    struct point tail = {tip.x - ARROW * way.x, tip.y - ARROW * way.y};
    ink_arrow(figure->ink, PEN_LOAD, PEN_LOAD_HEAD, tail, tip);
    figure_take(figure, tail);
    labels_keep_off_line(&figure->labels, tail, tip);
}

/* Values to be written: equal ones are told once where there are many. */
struct value {
    const char *words;
    struct label_anchor anchors[ANCHORS];
    size_t count;
};
struct values {
    struct value *items;
    size_t count, capacity;
};

static void add_value(struct figure *figure, struct values *values, const double force[3],
                      const struct label_anchor *anchors, size_t count) {
    struct value value = {.words = quantity_print(figure->arena, vector_length(force),
                                                  QUANTITY_WEIGHT, figure->drawing->frame->units)};
    for (size_t k = 0; k < count && k < ANCHORS; k++)
        value.anchors[value.count++] = anchors[k];
    ARRAY_PUSH(figure->arena, values, value);
}

static size_t times_told(const struct values *values, const char *words) {
    size_t times = 0;
    for (size_t k = 0; k < values->count; k++)
        times += strcmp(values->items[k].words, words) == 0;
    return times;
}

static void write_values(struct figure *figure, const struct values *values) {
    for (size_t k = 0; k < values->count; k++) {
        const struct value *value = &values->items[k];
        struct values before = {values->items, k, k};
        size_t times = times_told(values, value->words);
        if (times <= TOLD_EACH)
            labels_ask(&figure->labels, WORDS_LOAD, value->words, value->anchors, value->count);
        else if (times_told(&before, value->words) == 0)
            labels_ask(&figure->labels, WORDS_LOAD,
                       arena_print(figure->arena, "%zu times %s", times, value->words),
                       value->anchors, value->count);
    }
}

static void stick_loaded(struct figure *figure, struct values *values, size_t member,
                         const struct on_stick *on) {
    const struct model_member *stick = &figure->drawing->model->members[member];
    double way3[3] = {on->force[0], on->force[1], on->force[2]};
    struct point way;
    struct label_anchor tails[ANCHORS];
    if (!on->any || !figure_shows_stick(figure, member) || !seen_from_here(figure, on->force, &way))
        return;
    vector_unit(way3);
    struct point along = figure_direction(figure, stick->axes[0]);
    double shown = hypot(along.x, along.y) * (on->to - on->from);
    int count = (int)fmin(9.0, floor(shown / EVERY)) + 1;
    double half = member_extent(stick, way3) / 2.0;
    size_t tail_count = 0;
    for (int k = 0; k < count; k++) {
        double share = count > 1 ? (k + 0.5) / count : 0.5, at[3];
        double x = on->from + share * (on->to - on->from);
        for (int c = 0; c < 3; c++)
            at[c] = stick->from[c] + x * stick->axes[0][c] - half * way3[c] +
                    figure->drawing->woods[member].lapped[c];
        struct point tip = figure_point(figure, at);
        arrow(figure, tip, way);
        if (tail_count < ANCHORS && k >= (count - ANCHORS) / 2) {
            tails[tail_count] = (struct label_anchor){
                {tip.x - ARROW * way.x, tip.y - ARROW * way.y}, 0.3 * (double)tail_count};
            tail_count++;
        }
    }
    add_value(figure, values, on->force, tails, tail_count);
}

/* Loads of joints that lie behind one another in this view, added up. */
struct at_spot {
    struct point at;
    double force[3];
};

static size_t gather_spots(const struct figure *figure, double (*joints)[3],
                           struct at_spot *spots) {
    size_t count = 0;
    for (size_t j = 0; j < figure->drawing->frame->joints.count; j++) {
        struct point at = figure_point(figure, figure->drawing->frame->joints.items[j].at);
        size_t k = 0;
        if (!(vector_length(joints[j]) > 0.0))
            continue;
        while (k < count && hypot(spots[k].at.x - at.x, spots[k].at.y - at.y) > 0.5)
            k++;
        if (k == count)
            spots[count++] = (struct at_spot){.at = at};
        for (int c = 0; c < 3; c++)
            spots[k].force[c] += joints[j][c];
    }
    return count;
}

/* What hangs on a joint or leans against it: the arrow ends short of the joint. */
static void spot_loaded(struct figure *figure, struct values *values, const struct at_spot *spot) {
    struct point way;
    if (!seen_from_here(figure, spot->force, &way))
        return;
    struct point tip = {spot->at.x - 2.0 * way.x, spot->at.y - 2.0 * way.y};
    arrow(figure, tip, way);
    struct label_anchor tail = {{tip.x - ARROW * way.x, tip.y - ARROW * way.y}, 0.0};
    add_value(figure, values, spot->force, &tail, 1);
}

bool figure_has_loads(const struct drawing *drawing, const double along[3]) {
    for (size_t s = 0; s < drawing->loads->set_count; s++) {
        const struct load_set *set = &drawing->loads->sets[s];
        if (!set->present || factor_of(drawing, s) == 0.0)
            continue;
        for (size_t k = 0; k < set->on_segments.count; k++)
            if (!along || vector_dot(set->on_segments.items[k].force, along) != 0.0)
                return true;
        for (size_t j = 0; j < drawing->frame->joints.count; j++)
            if (vector_length(set->joints[j]) > 0.0 &&
                (!along || vector_dot(set->joints[j], along) != 0.0))
                return true;
    }
    return false;
}

void figure_loads(struct figure *figure) {
    struct values values = {0};
    const struct drawing *drawing = figure->drawing;
    struct on_stick *sticks =
        ARENA_ARRAY(figure->arena, struct on_stick, drawing->model->member_count);
    double(*joints)[3] = arena_take(figure->arena, drawing->frame->joints.count, sizeof *joints);
    for (size_t s = 0; s < drawing->loads->set_count; s++) {
        double factor = factor_of(drawing, s);
        if (drawing->loads->sets[s].present && factor != 0.0)
            gather_set(drawing, s, factor, sticks, joints);
    }
    for (size_t m = 0; m < drawing->model->member_count; m++)
        stick_loaded(figure, &values, m, &sticks[m]);
    struct at_spot *spots =
        ARENA_ARRAY(figure->arena, struct at_spot, drawing->frame->joints.count);
    size_t count = gather_spots(figure, joints, spots);
    for (size_t k = 0; k < count; k++)
        spot_loaded(figure, &values, &spots[k]);
    write_values(figure, &values);
}
