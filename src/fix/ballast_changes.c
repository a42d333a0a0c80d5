#include "fix/effort.h"
#include "units/decimal.h"
#include "units/unit.h"

#include <math.h>
#include <string.h>

/* In all, as bags of sand and blocks come. */
static const int WEIGHTS_US[] = {25, 50, 100, 200, 400}, WEIGHTS_SI[] = {10, 25, 50, 100, 200};
enum { WEIGHT_COUNT = 5, NAMED_MOST = 4 };

/* Level sticks this near to the lowest one lie as low. */
static const double SAME_HEIGHT = 0.025; /* m */
static const double LEVEL = 1e-6;        /* rise by length, as the format has it */

/* What the weight is shared over: evenly along low sticks, or alike on the feet. */
struct places {
    bool feet;
    struct {
        int *items; /* members, or joints */
        size_t count, capacity;
    } list;
    double length; /* m of all the sticks */
};

struct ballast { /* in all */
    int weight;
    const char *unit; /* "lb" */
    double newtons;
};

/* ---- where it goes ---- */

static bool carries_ballast(const struct work *work, int member) {
    return work->frame->members.items[member].acts_as == ACTS_AS_MEMBER &&
           fabs(work->model->members[member].axes[0][2]) < LEVEL;
}

static double height_of(const struct work *work, int member) {
    return work->model->members[member].from[2];
}

static void add_stick(struct work *work, struct places *places, int member) {
    ARRAY_PUSH(work->arena, &places->list, member);
    places->length += work->model->members[member].length;
}

/* Of a shelf that lies lowest its rails, which have no more than that to carry it; else every
 * level stick down there. */
static bool add_shelf_rails(struct work *work, struct places *places, double lowest) {
    for (size_t s = 0; s < work->frame->shelves.count; s++) {
        const struct shelf *shelf = &work->frame->shelves.items[s];
        bool low = shelf->rail_count > 0;
        for (size_t k = 0; k < shelf->rail_count; k++)
            low &= carries_ballast(work, shelf->rails[k]) &&
                   height_of(work, shelf->rails[k]) <= lowest + SAME_HEIGHT;
        for (size_t k = 0; low && k < shelf->rail_count; k++)
            add_stick(work, places, shelf->rails[k]);
    }
    return places->list.count > 0;
}

/* None where the lowest lie over half of the height: the weight would stand in the way there. */
static struct places low_sticks(struct work *work) {
    struct places places = {0};
    double lowest = INFINITY, bottom = INFINITY, top = -INFINITY;
    for (size_t j = 0; j < work->frame->joints.count; j++) {
        bottom = fmin(bottom, work->frame->joints.items[j].at[2]);
        top = fmax(top, work->frame->joints.items[j].at[2]);
    }
    for (size_t m = 0; m < work->model->member_count; m++)
        if (carries_ballast(work, (int)m))
            lowest = fmin(lowest, height_of(work, (int)m));
    if (!(lowest - bottom <= (top - bottom) / 2.0) || add_shelf_rails(work, &places, lowest))
        return places;
    for (size_t m = 0; m < work->model->member_count; m++)
        if (carries_ballast(work, (int)m) && height_of(work, (int)m) <= lowest + SAME_HEIGHT)
            add_stick(work, &places, (int)m);
    return places;
}

static struct places feet(struct work *work) {
    struct places places = {.feet = true};
    for (size_t k = 0; k < work->frame->supports.count; k++)
        if (work->frame->supports.items[k].foot)
            ARRAY_PUSH(work->arena, &places.list, work->frame->supports.items[k].joint);
    return places;
}

/* ---- in words ---- */

static const char *name_of(const struct work *work, const struct places *places, size_t k) {
    int number = places->list.items[k];
    return places->feet ? work->frame->joints.items[number].name
                        : work->frame->members.items[number].name;
}

/* "front-1 and back-1" */
static const char *names(const struct work *work, const struct places *places) {
    struct text text = text_new(work->arena);
    size_t count = places->list.count;
    if (count > NAMED_MOST)
        return arena_print(work->arena, "the %zu lowest level sticks", count);
    for (size_t k = 0; k < count; k++)
        text_print(&text, "%s%s",
                   !k              ? ""
                   : k + 1 < count ? ", "
                                   : " and ",
                   name_of(work, places, k));
    return text_string(&text);
}

/* "12.5 lb", as the part of one of so many. */
static const char *share_words(const struct work *work, const struct ballast *ballast, size_t count,
                               int decimals) {
    return arena_print(
        work->arena, "%s %s",
        decimal_fixed(work->arena, (double)ballast->weight / (double)count, decimals),
        ballast->unit);
}

static const char *words(const struct work *work, const struct places *places,
                         const struct ballast *ballast) {
    struct arena *arena = work->arena;
    size_t count = places->list.count;
    if (!places->feet)
        return arena_print(arena,
                           "lay %d %s of ballast (bags of sand, concrete blocks) on %s, spread "
                           "evenly along %s",
                           ballast->weight, ballast->unit, names(work, places),
                           count == 1 ? "it" : "them");
    const char *each = share_words(work, ballast, count, 2);
    if (count == 1)
        return arena_print(
            arena, "strap %s of ballast (a concrete block, a bag of sand) to its foot", each);
    return arena_print(arena,
                       "strap %s of ballast (a concrete block, a bag of sand) to each of its %zu "
                       "feet, %d %s in all",
                       each, count, ballast->weight, ballast->unit);
}

/* ---- as an edit ---- */

static const char *loads_text(const struct work *work, const struct places *places,
                              const struct ballast *ballast) {
    enum { DECIMALS = 5 };
    struct text text = text_new(work->arena);
    const struct unit *line = unit_default(QUANTITY_LINE_LOAD, work->frame->units);
    const char *each =
        places->feet ? share_words(work, ballast, places->list.count, DECIMALS)
                     : decimal_fixed(work->arena, ballast->newtons / places->length / line->factor,
                                     DECIMALS);
    for (size_t k = 0; k < places->list.count; k++)
        text_print(&text, "%s{case: self, %s: \"%s\", %s: [0, 0, -%s]}", k ? ", " : "",
                   places->feet ? "joint" : "member", name_of(work, places, k),
                   places->feet ? "force" : "line", each);
    return arena_print(work->arena, "loads: [%s]", text_string(&text));
}

/* Lists are replaced whole: the loads of the file come first in it. */
static void put_own_loads_first(const struct work *work, const struct node *edit) {
    const struct node *own = node_child(work->raw, "loads");
    struct node *list = edit->first, *added = list->first, **end = &list->first;
    for (const struct node *load = own ? own->first : NULL; load; load = load->next) {
        struct node *copy = ARENA_NEW(work->arena, struct node);
        *copy = *load;
        copy->parent = list;
        *end = copy;
        end = &copy->next;
        list->count++;
    }
    *end = added;
}

static void add(struct work *work, struct choice *slot, const struct places *places,
                const struct ballast *ballast) {
    const struct unit *pound = unit_find("lb", 2, QUANTITY_WEIGHT);
    double effort =
        effort_of("fix-change") + effort_of("fix-ballast") * ballast->newtons / pound->factor;
    if (places->feet)
        effort += effort_of("fix-ballast-foot") * (double)places->list.count;
    const struct option *option = choice_add(work, slot, words(work, places, ballast),
                                             loads_text(work, places, ballast), effort, 0);
    if (option)
        put_own_loads_first(work, option->edit);
}

void catalogue_ballast(struct work *work) {
    struct places on_feet = feet(work), low = low_sticks(work);
    if (!on_feet.list.count)
        return;
    bool us = work->frame->units == UNITS_US;
    struct choice *slot = choice_new(work, CHANGE_BALLAST, -1, -1);
    for (int k = 0; k < WEIGHT_COUNT; k++) {
        struct ballast ballast = {us ? WEIGHTS_US[k] : WEIGHTS_SI[k], us ? "lb" : "kg", 0.0};
        ballast.newtons =
            ballast.weight * unit_find(ballast.unit, strlen(ballast.unit), QUANTITY_WEIGHT)->factor;
        if (low.list.count)
            add(work, slot, &low, &ballast);
        add(work, slot, &on_feet, &ballast);
    }
}
