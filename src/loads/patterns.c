#include "loads/patterns.h"

#include "base/vector.h"
#include "loads/shelves.h"

#include <math.h>
#include <string.h>

enum { ALONE_MOST = 8 };
#define SAME_LEVEL 0.025 /* m */

static double height(const struct model *model, const struct shelf *shelf) {
    const struct model_member *rail = &model->members[shelf->rails[0]];
    return (rail->from[2] + rail->to[2]) / 2.0;
}

static double depth(const struct model *model, const struct shelf *shelf, size_t rail) {
    const struct model_member *stick = &model->members[shelf->rails[rail]];
    return (stick->from[1] + stick->to[1]) / 2.0;
}

/* A new pattern with its two sets, which are not there until something is put into them. */
static struct load_pattern *add_pattern(struct arena *arena, struct loads *loads,
                                        const char *words) {
    struct load_set *sets = ARENA_ARRAY(arena, struct load_set, loads->set_count + 2);
    memcpy(sets, loads->sets, loads->set_count * sizeof *sets);
    struct load_pattern *patterns =
        ARENA_ARRAY(arena, struct load_pattern, loads->pattern_count + 1);
    if (loads->pattern_count)
        memcpy(patterns, loads->patterns, loads->pattern_count * sizeof *patterns);
    struct load_pattern *made = &patterns[loads->pattern_count++];
    made->words = words;
    for (int k = 0; k < 2; k++) {
        made->sets[k] = (int)loads->set_count;
        struct load_set *set = &sets[loads->set_count++];
        set->joints = arena_take(arena, loads->model->frame->joints.count, sizeof *set->joints);
        set->leans = true;
    }
    loads->sets = sets;
    loads->patterns = patterns;
    return made;
}

static struct load_set *set_for(const struct loads *loads, const struct load_pattern *pattern,
                                const struct shelf *shelf) {
    struct load_set *set = &loads->sets[pattern->sets[shelf->short_standing]];
    set->present = true;
    return set;
}

static void fill_shelf(struct arena *arena, struct loads *loads, const struct load_pattern *pattern,
                       size_t shelf) {
    const struct shelf_loading *loading = &loads->shelves[shelf];
    shelves_spread(arena, loads->model, &loads->model->frame->shelves.items[shelf], loading,
                   loading->shares, loading->start, loading->end, loading->trays,
                   set_for(loads, pattern, &loads->model->frame->shelves.items[shelf]));
}

/* Shares of the rails where the load covers `from` to `to` metres across them (0 at the first):
 * the lever rule between neighbours. Sum 1. */
static double *shares_across(struct arena *arena, const struct shelf *shelf,
                             const struct shelf_loading *loading, double from, double to) {
    double *shares = ARENA_ARRAY(arena, double, shelf->rail_count), place = 0.0;
    for (size_t r = 0; r + 1 < shelf->rail_count; r++) {
        double gap = loading->gaps[r];
        double a = fmax(from, place), b = fmin(to, place + gap);
        if (b > a) {
            double far = ((a + b) / 2.0 - place) / gap;
            shares[r] += (1.0 - far) * (b - a) / (to - from);
            shares[r + 1] += far * (b - a) / (to - from);
        }
        place += gap;
    }
    return shares;
}

static void fill_half(struct arena *arena, struct loads *loads, const struct load_pattern *pattern,
                      size_t which, bool back) {
    const struct model *model = loads->model;
    const struct shelf *shelf = &model->frame->shelves.items[which];
    const struct shelf_loading *loading = &loads->shelves[which];
    double from = loading->start, to = loading->end, middle = (from + to) / 2.0;
    const double *shares = loading->shares;
    if (fabs(loading->direction[1]) > SINE_45) { /* rails from front to back */
        bool second = back == (loading->direction[1] > 0.0);
        from = second ? middle : from;
        to = second ? to : middle;
    } else {
        double wide = 0.0;
        for (size_t r = 0; r + 1 < shelf->rail_count; r++)
            wide += loading->gaps[r];
        bool backwards = depth(model, shelf, 0) > depth(model, shelf, shelf->rail_count - 1);
        bool second = back != backwards;
        shares = shares_across(arena, shelf, loading, second ? wide / 2.0 : 0.0,
                               second ? wide : wide / 2.0);
    }
    shelves_spread(arena, model, shelf, loading, shares, from, to, loading->trays / 2.0,
                   set_for(loads, pattern, shelf));
}

static void add_halves(struct arena *arena, struct loads *loads) {
    const struct frame *frame = loads->model->frame;
    static const char *const words[] = {"trays on the front half of each shelf alone",
                                        "trays on the back half of each shelf alone"};
    for (int back = 0; back < 2; back++) {
        const struct load_pattern *pattern = add_pattern(arena, loads, words[back]);
        for (size_t k = 0; k < frame->shelves.count; k++)
            if (loads->shelves[k].trays > 0.0)
                fill_half(arena, loads, pattern, k, back);
    }
}

/* What the file itself puts into the case of the trays. */
static size_t explicit_trays(const struct frame *frame) {
    size_t count = 0;
    for (size_t k = 0; k < frame->loads.count; k++)
        count += frame->loads.items[k].load_case == CASE_TRAY;
    return count;
}

static void add_explicit_alone(struct arena *arena, struct loads *loads) {
    const struct frame *frame = loads->model->frame;
    const struct load_pattern *pattern =
        add_pattern(arena, loads, "no trays but the loads given for the case tray");
    for (size_t k = 0; k < frame->loads.count; k++)
        if (frame->loads.items[k].load_case == CASE_TRAY)
            loads_explicit(arena, loads->model, &loads->sets[pattern->sets[0]],
                           &frame->loads.items[k]);
}

struct level { /* shelves that are filled together, one by one where they are few */
    double height;
    const char *words;
};
struct levels {
    struct level *items;
    size_t count;
    int *of; /* per shelf; -1 where it has no trays */
};

static struct levels levels_of(struct arena *arena, const struct loads *loads, bool one_by_one) {
    const struct frame *frame = loads->model->frame;
    struct levels levels = {.items = ARENA_ARRAY(arena, struct level, frame->shelves.count),
                            .of = ARENA_ARRAY(arena, int, frame->shelves.count)};
    for (size_t k = 0; k < frame->shelves.count; k++) {
        const struct shelf *shelf = &frame->shelves.items[k];
        double z = height(loads->model, shelf);
        levels.of[k] = -1;
        if (!(loads->shelves[k].trays > 0.0))
            continue;
        for (size_t i = 0; !one_by_one && i < levels.count; i++)
            if (fabs(levels.items[i].height - z) <= SAME_LEVEL)
                levels.of[k] = (int)i;
        if (levels.of[k] >= 0)
            continue;
        levels.of[k] = (int)levels.count;
        levels.items[levels.count++] = (struct level){
            z, one_by_one
                   ? arena_print(arena, "trays on the %s shelf alone", shelf->name)
                   : arena_print(arena, "trays on the shelves level with %s alone", shelf->name)};
    }
    return levels;
}

/* Is it among the highest so many? */
static bool among_the_top(const struct levels *levels, size_t which, size_t most) {
    size_t above = 0;
    for (size_t i = 0; i < levels->count; i++)
        above += levels->items[i].height > levels->items[which].height;
    return above < most;
}

static void add_alone(struct arena *arena, struct loads *loads, const struct levels *levels) {
    for (size_t i = 0; i < levels->count; i++) {
        if (!among_the_top(levels, i, ALONE_MOST))
            continue;
        const struct load_pattern *pattern = add_pattern(arena, loads, levels->items[i].words);
        for (size_t k = 0; k < loads->model->frame->shelves.count; k++)
            if (levels->of[k] == (int)i)
                fill_shelf(arena, loads, pattern, k);
    }
}

void patterns_build(struct arena *arena, struct loads *loads) {
    const struct frame *frame = loads->model->frame;
    loads->first_pattern_set = (int)loads->set_count;
    size_t shelves = 0, others = explicit_trays(frame) > 0;
    for (size_t k = 0; k < frame->shelves.count; k++)
        shelves += loads->shelves[k].trays > 0.0;
    if (shelves == 0)
        return;
    if (shelves + others > 1) {
        struct levels levels = levels_of(arena, loads, shelves <= ALONE_MOST);
        add_alone(arena, loads, &levels);
        if (others)
            add_explicit_alone(arena, loads);
    }
    if (!frame->plane)
        add_halves(arena, loads);
}
