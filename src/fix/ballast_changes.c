#include "fix/ballast_places.h"
#include "fix/effort.h"
#include "units/decimal.h"
#include "units/unit.h"

#include <string.h>

/* In all, as bags of sand and blocks come. */
static const int WEIGHTS_US[] = {25, 50, 100, 200, 400}, WEIGHTS_SI[] = {10, 25, 50, 100, 200};
enum { WEIGHT_COUNT = 5, NAMED_MOST = 4 };

struct ballast { /* in all */
    int weight;
    const char *unit; /* "lb" */
    double newtons;
};

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
    struct places on_feet = all_feet(work), low = low_sticks(work);
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
