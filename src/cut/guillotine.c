#include "cut/guillotine.h"

#include "cut/holders.h"

enum { SETS_MOST = 20000, PAIRS_MOST = 5000000, JOINS_MOST = 5000000 };

/* Sets are numbered: the number of each plate is a digit. */
struct guillotine {
    struct arena *arena;
    const struct plates *plates;
    size_t count;            /* of sets */
    size_t *weight;          /* of a plate's digit */
    struct holders *holders; /* per set; none: it does not fit */
    long joins;
};

static int digit(const struct guillotine *guillotine, size_t set, size_t plate) {
    return (int)(set / guillotine->weight[plate] %
                 (size_t)(guillotine->plates->items[plate].demand + 1));
}

static void join(struct guillotine *guillotine, size_t set, size_t first, size_t second) {
    const struct holders *a = &guillotine->holders[first], *b = &guillotine->holders[second];
    guillotine->joins += (long)(a->count * b->count) + 1;
    for (size_t i = 0; i < a->count; i++)
        for (size_t j = 0; j < b->count; j++)
            for (int above = 0; above < 2; above++)
                holders_offer(guillotine->arena, guillotine->plates, &guillotine->holders[set],
                              holder_of_two(a->items[i], b->items[j], above));
}

static bool area_fits(const struct guillotine *guillotine, size_t set) {
    const struct plates *plates = guillotine->plates;
    double area = 0.0, room = (double)plates->width * (double)plates->height;
    for (size_t p = 0; p < plates->count; p++)
        area += digit(guillotine, set, p) * (double)plates->items[p].width *
                (double)plates->items[p].height;
    return area <= room * (1.0 + 1e-12);
}

/* The next part of a set in the order of the numbers, from its digits; 0 after the last. */
static size_t next_part(const struct guillotine *guillotine, size_t set, size_t part) {
    for (size_t p = 0; p < guillotine->plates->count; p++) {
        int now = digit(guillotine, part, p);
        if (now < digit(guillotine, set, p))
            return part + guillotine->weight[p];
        part -= (size_t)now * guillotine->weight[p];
    }
    return 0;
}

static void hold(struct guillotine *guillotine, size_t set) {
    for (size_t part = next_part(guillotine, set, 0); part && part < set;
         part = next_part(guillotine, set, part)) {
        size_t rest = set - part;
        /* each pair once; a part that does not fit holds nothing */
        if (part <= rest && guillotine->holders[part].count && guillotine->holders[rest].count)
            join(guillotine, set, part, rest);
    }
}

struct guillotine *guillotine_new(struct arena *arena, const struct plates *plates) {
    struct guillotine *guillotine = ARENA_NEW(arena, struct guillotine);
    *guillotine = (struct guillotine){.arena = arena,
                                      .plates = plates,
                                      .count = 1,
                                      .weight = ARENA_ARRAY(arena, size_t, plates->count)};
    double pairs = 1.0; /* of a set and a part of it */
    for (size_t p = 0; p < plates->count; p++) {
        size_t numbers = (size_t)plates->items[p].demand + 1;
        guillotine->weight[p] = guillotine->count;
        guillotine->count *= numbers;
        pairs *= (double)(numbers * (numbers + 1)) / 2.0;
        if (guillotine->count > SETS_MOST || pairs > PAIRS_MOST)
            return NULL;
    }
    guillotine->holders = ARENA_ARRAY(arena, struct holders, guillotine->count);
    for (size_t p = 0; p < plates->count; p++)
        holders_of_plate(arena, plates, p, &guillotine->holders[guillotine->weight[p]]);
    for (size_t set = 1; set < guillotine->count; set++) {
        if (area_fits(guillotine, set))
            hold(guillotine, set);
        if (guillotine->joins > JOINS_MOST)
            return NULL;
    }
    return guillotine;
}

bool guillotine_fits(const struct guillotine *guillotine, const int *set) {
    size_t number = 0;
    for (size_t p = 0; p < guillotine->plates->count; p++)
        number += (size_t)set[p] * guillotine->weight[p];
    return number == 0 || guillotine->holders[number].count;
}

/* Fewest sheets of each set: one sheet with its first plate, and the fewest for the rest. */
struct sheets_layout guillotine_fewest(struct arena *arena, const struct guillotine *guillotine) {
    int *fewest = ARENA_ARRAY(arena, int, guillotine->count);
    size_t *sheet = ARENA_ARRAY(arena, size_t, guillotine->count);
    for (size_t set = 1; set < guillotine->count; set++) {
        size_t first = 0;
        while (!digit(guillotine, set, first))
            first++;
        for (size_t part = next_part(guillotine, set, 0); part;
             part = next_part(guillotine, set, part))
            if (digit(guillotine, part, first) && guillotine->holders[part].count &&
                (!fewest[set] || fewest[set - part] + 1 < fewest[set])) {
                fewest[set] = fewest[set - part] + 1;
                sheet[set] = part;
            }
    }
    struct sheets_layout layout = {0};
    for (size_t left = guillotine->count - 1; left; left -= sheet[left]) {
        const struct holder *holder = guillotine->holders[sheet[left]].items[0];
        ARRAY_PUSH(arena, &layout, holder_sheet(arena, holder));
    }
    return layout;
}
